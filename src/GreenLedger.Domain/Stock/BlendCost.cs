using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>A component of a blend.</summary>
/// <param name="Share">By green weight.</param>
/// <param name="CostPerKilogram">Of the coffee that serves it; null where nothing in stock has a cost.</param>
/// <param name="Points">Of the coffee that serves it; null where none was cupped.</param>
public sealed record BlendPart(string Name, Percent Share, decimal? CostPerKilogram, decimal? Points);

/// <summary>
/// What a kilogram of a blend costs green, and the score that its components' mean by share lets expect. That mean is common practice, no source: only a
/// cup of the blend says how it tastes.
/// </summary>
/// <param name="CostPerKilogram">Null while a component has no cost.</param>
/// <param name="Points">Null while a component has no score.</param>
public sealed record BlendCost(IReadOnlyList<BlendPart> Parts, Percent Together, decimal? CostPerKilogram, decimal? Points)
{
    /// <summary>The shares add up to the whole; otherwise figures are of the shares as they stand to each other.</summary>
    public bool IsWhole => Together.Points == 100m;

    /// <exception cref="RuleBrokenException">There is no component, or a share is not above 0 %.</exception>
    public static BlendCost Of(IReadOnlyList<BlendPart> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        Rule.Require(parts.Count > 0 && parts.All(part => part.Share.Points > 0m), "A blend has components, each with a share above 0 %.", nameof(BlendPart.Share));
        var together = parts.Sum(part => part.Share.Points);
        return new BlendCost(parts, Percent.Of(together), Mean(parts, together, part => part.CostPerKilogram), Mean(parts, together, part => part.Points));
    }

    /// <summary>The blend with another coffee in place of a component.</summary>
    /// <exception cref="RuleBrokenException">No component has that name.</exception>
    public BlendCost With(string component, decimal? costPerKilogram, decimal? points)
    {
        Rule.Require(Parts.Any(part => part.Name == component), "Choose a component of this blend.", nameof(BlendPart.Name));
        return Of([.. Parts.Select(part => part.Name == component ? part with { CostPerKilogram = costPerKilogram, Points = points } : part)]);
    }

    private static decimal? Mean(IReadOnlyList<BlendPart> parts, decimal together, Func<BlendPart, decimal?> figure) =>
        parts.All(part => figure(part) is not null) ? parts.Sum(part => part.Share.Points * figure(part)!.Value) / together : null;
}

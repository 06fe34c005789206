using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Summaries;

/// <summary>A quarter of what was cupped in a season.</summary>
public enum SeasonQuarter
{
    Upper = 0,
    UpperMiddle = 1,
    LowerMiddle = 2,
    Lower = 3,
}

/// <summary>A lot of another supplier that was cupped in the season.</summary>
public readonly record struct SeasonLot(Id<Supplier> SupplierId, Score Score);

/// <summary>
/// Where a score stands among lots of other suppliers cupped on the same form in the twelve months up to its day: a quarter, never
/// a rank, and only among at least five lots of at least three suppliers, so that nobody is recognised. Our own choice, no source.
/// </summary>
public static class SeasonStanding
{
    public const int LeastLots = 5;
    public const int LeastSuppliers = 3;
    public const int SeasonMonths = 12;

    /// <summary>Null where the others are too few to stay unknown. Equal scores count half.</summary>
    /// <param name="own">The score that is told.</param>
    /// <param name="others">Each lot once, with its newest score; none of the supplier who is told.</param>
    public static SeasonQuarter? Of(Score own, IReadOnlyCollection<SeasonLot> others)
    {
        ArgumentNullException.ThrowIfNull(others);
        if (others.Count < LeastLots || others.Select(other => other.SupplierId).Distinct().Count() < LeastSuppliers)
        {
            return null;
        }

        var below = others.Count(other => other.Score < own) + others.Count(other => other.Score == own) / 2m;
        return (below / others.Count) switch
        {
            >= 0.75m => SeasonQuarter.Upper,
            >= 0.5m => SeasonQuarter.UpperMiddle,
            >= 0.25m => SeasonQuarter.LowerMiddle,
            _ => SeasonQuarter.Lower,
        };
    }
}

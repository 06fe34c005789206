using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Costs;

/// <summary>What of a posting falls on a lot.</summary>
public sealed record CostPart(CostPosting Posting, Money Part);

/// <summary>A stage of the way as it was reckoned before buying and as it was billed, each per kilogram landed; unrounded.</summary>
/// <param name="Stage">Null for the coffee itself.</param>
/// <param name="Estimated">Null where there was no estimate.</param>
public sealed record CostVariance(CostStage? Stage, decimal? Estimated, decimal Actual, Money Billed)
{
    /// <summary>Actual less estimated: above zero where it became dearer.</summary>
    public decimal? Difference => Actual - Estimated;
}

/// <summary>
/// What a lot truly cost by its postings, in the house currency: all of it (the commercial landed cost), and without finance
/// and storage after receipt (the accounting cost; IAS 2.10 to 2.16, from memory; handbook, trade 3.3 and 9.1).
/// </summary>
public sealed record LotCost(IReadOnlyList<CostPart> Parts, Money Total, Money Accounting, Weight Landed, IReadOnlyList<CostVariance> Stages)
{
    /// <summary>Per kilogram landed, unrounded; null before anything landed.</summary>
    public decimal? PerKilogram => Landed > Weight.Zero ? Total.Amount / Landed.Kilograms : null;

    /// <summary>Accounting cost per kilogram landed, unrounded; null before anything landed.</summary>
    public decimal? AccountingPerKilogram => Landed > Weight.Zero ? Accounting.Amount / Landed.Kilograms : null;

    /// <summary>Whether the coffee itself is billed: a cost without it is a part of one.</summary>
    public bool HasCoffee => Parts.Any(part => part.Posting.Stage is null && part.Part.MinorUnits > 0);

    /// <summary>What was reckoned per kilogram before buying; null without an estimate.</summary>
    public decimal? EstimatedPerKilogram => Stages.Any(stage => stage.Estimated is not null) ? Stages.Sum(stage => stage.Estimated ?? 0m) : null;

    /// <param name="parts">The lot's part of every posting that counts.</param>
    /// <param name="landed">The weight that the cost stands on: as weighed on arrival.</param>
    /// <param name="estimate">What its landed cost was reckoned to be; null or unknown where it was not.</param>
    /// <param name="house">The house currency.</param>
    public static LotCost Of(IReadOnlyList<CostPart> parts, Weight landed, LandedCost? estimate, Currency house)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var counting = parts.Where(part => !part.Posting.IsWithdrawn).ToList();
        return new LotCost(
            counting,
            Sum(counting, house),
            Sum(counting.Where(part => part.Posting.IsInventoryCost), house),
            landed,
            Variances(counting, landed, estimate is { IsKnown: true } ? estimate : null, house));
    }

    private static List<CostVariance> Variances(List<CostPart> parts, Weight landed, LandedCost? estimate, Currency house)
    {
        var stages = new CostStage?[] { null }.Concat(CostStages.All.Select(stage => (CostStage?)stage));
        return [.. stages.Select(stage =>
        {
            var billed = Sum(parts.Where(part => part.Posting.Stage == stage), house);
            var estimated = estimate?.Lines.Where(line => line.Stage == stage && line.Counts).Sum(line => line.Amount.Amount) / estimate?.Landed.Kilograms;
            return new CostVariance(stage, estimated, landed > Weight.Zero ? billed.Amount / landed.Kilograms : 0m, billed);
        }).Where(stage => stage.Billed.MinorUnits != 0 || stage.Estimated is > 0m)];
    }

    private static Money Sum(IEnumerable<CostPart> parts, Currency house) => parts.Aggregate(Money.Zero(house), (sum, part) => sum + part.Part);
}

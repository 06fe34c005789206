using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Costs;

/// <summary>What of a posting falls on a lot.</summary>
/// <param name="Coming">What of the part lies on kilograms that are still to come where others have landed: it is in the cost of no landed kilogram yet.</param>
/// <param name="Accounting">What of the rest belongs to the accounting cost.</param>
/// <param name="Late">What of the part fell on coffee that was gone by the day of the bill (handbook, trade 9.2).</param>
/// <param name="LateAccounting">What of the accounting cost did.</param>
/// <param name="Issued">What of the accounting cost left with coffee that was there when the bill came, or came later.</param>
public sealed record CostPart(CostPosting Posting, Money Part, Money Coming, Money Accounting, Money Late, Money LateAccounting, Money Issued)
{
    /// <summary>What re-values coffee that was there on the day of the bill, or still to come.</summary>
    public Money Staying => Part - Late;

    /// <summary>What lies on what landed; all of it while nothing landed.</summary>
    public Money Landed => Part - Coming;

    /// <param name="coming">What of the part is for kilograms that are still to come; none where it is left out.</param>
    public static CostPart Of(CostPosting posting, Money part, LotFlow flow, Money? coming = null)
    {
        ArgumentNullException.ThrowIfNull(posting);
        ArgumentNullException.ThrowIfNull(flow);
        var later = coming ?? Money.Zero(part.Currency);
        var accounting = flow.AccountingOf(part - later, posting);
        var late = flow.LateOf(accounting, posting.On);
        return new CostPart(posting, part, later, accounting, flow.LateOf(part - later, posting.On), late, flow.LateOf(accounting, DateOnly.MaxValue) - late);
    }
}

/// <summary>A stage of the way as it was reckoned before buying and as it was billed, each per kilogram landed; unrounded.</summary>
/// <param name="Stage">Null for the coffee itself.</param>
/// <param name="Estimated">Null where there was no estimate.</param>
/// <param name="Why">Where the difference comes from; null where there was no estimate, nothing landed or nothing is billed yet.</param>
public sealed record CostVariance(CostStage? Stage, decimal? Estimated, decimal Actual, Money Billed, CostDifference? Why)
{
    /// <summary>Actual less estimated: above zero where it became dearer.</summary>
    public decimal? Difference => Actual - Estimated;
}

/// <summary>
/// What a lot truly cost by its postings, in the house currency: all of it (the commercial landed cost), and without finance
/// and storage after it landed (the accounting cost; IAS 2.10 to 2.16, from memory; handbook, trade 3.3 and 9.1).
/// </summary>
/// <param name="Reckoned">What the estimate stands on; null where there was none.</param>
public sealed record LotCost(IReadOnlyList<CostPart> Parts, Money Total, Money Accounting, Weight Landed, IReadOnlyList<CostVariance> Stages, ReckonedCost? Reckoned)
{
    /// <summary>Per kilogram landed, unrounded; null before anything landed.</summary>
    public decimal? PerKilogram => Landed > Weight.Zero ? (Total - Coming).Amount / Landed.Kilograms : null;

    /// <summary>What is billed for kilograms that are still to come, where others have landed.</summary>
    public Money Coming => Sum(Parts, part => part.Coming, Total.Currency);

    /// <summary>Accounting cost per kilogram landed, unrounded; null before anything landed.</summary>
    public decimal? AccountingPerKilogram => Landed > Weight.Zero ? Accounting.Amount / Landed.Kilograms : null;

    /// <summary>Whether the coffee itself is billed: a cost without it is a part of one.</summary>
    public bool HasCoffee => Parts.Any(part => part.Posting.Stage is null && part.Part.MinorUnits > 0);

    /// <summary>What of all bills fell on coffee that was gone when they came.</summary>
    public Money Late => Sum(Parts, part => part.Late, Total.Currency);

    /// <summary>What of the accounting cost did: no value of stock any more.</summary>
    public Money LateAccounting => Sum(Parts, part => part.LateAccounting, Total.Currency);

    /// <summary>What of the accounting cost left with the coffee that is gone, as it was known on the day each kilogram left.</summary>
    public Money Issued => Sum(Parts, part => part.Issued, Total.Currency);

    /// <summary>What was reckoned per kilogram before buying; null without an estimate.</summary>
    public decimal? EstimatedPerKilogram => Stages.Any(stage => stage.Estimated is not null) ? Stages.Sum(stage => stage.Estimated ?? 0m) : null;

    /// <summary>Where the difference comes from, over the stages that are billed; null where none can say.</summary>
    public CostDifference? Why => Stages.Select(stage => stage.Why).OfType<CostDifference>()
        .Aggregate((CostDifference?)null, (sum, why) => sum is null ? why : new CostDifference(sum.Price + why.Price, sum.Rate + why.Rate, sum.Weight + why.Weight, sum.Claims + why.Claims));

    /// <summary>What was reckoned per kilogram for stages of which nothing is billed yet; with the reason of the rest it makes the whole difference.</summary>
    public decimal NotBilledPerKilogram => Stages.Where(stage => stage.Why is null).Sum(stage => stage.Estimated ?? 0m);

    /// <param name="parts">The lot's part of every posting that counts.</param>
    /// <param name="landed">The weight that the cost stands on: as weighed on arrival.</param>
    /// <param name="reckoned">What its landed cost was reckoned to be; null or unknown where it was not.</param>
    /// <param name="house">The house currency.</param>
    public static LotCost Of(IReadOnlyList<CostPart> parts, Weight landed, ReckonedCost? reckoned, Currency house)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var counting = parts.Where(part => !part.Posting.IsWithdrawn).ToList();
        var known = reckoned is { Cost.IsKnown: true } ? reckoned : null;
        return new LotCost(
            counting,
            Sum(counting, part => part.Part, house),
            Sum(counting, part => part.Accounting, house),
            landed,
            Variances(counting, landed, known, house),
            known);
    }

    private static List<CostVariance> Variances(List<CostPart> all, Weight landed, ReckonedCost? reckoned, Currency house)
    {
        var stages = new CostStage?[] { null }.Concat(CostStages.All.Select(stage => (CostStage?)stage));
        return [.. stages.Select(stage =>
        {
            var parts = all.Where(part => part.Posting.Stage == stage).ToList();
            var estimated = reckoned?.Cost.Lines.Where(line => line.Stage == stage && line.Counts).Sum(line => line.Amount.Amount) / reckoned?.Cost.Landed.Kilograms;
            var why = reckoned is not null && parts.Count > 0 && landed > Weight.Zero ? CostDifference.Of(parts, landed, estimated!.Value, reckoned) : null;
            var billed = Sum(parts, part => part.Part, house);
            var actual = landed > Weight.Zero ? Sum(parts, part => part.Landed, house).Amount / landed.Kilograms : 0m;
            return new CostVariance(stage, estimated, actual, billed, why);
        }).Where(stage => stage.Billed.MinorUnits != 0 || stage.Estimated is > 0m)];
    }

    private static Money Sum(IEnumerable<CostPart> parts, Func<CostPart, Money> of, Currency house) => parts.Aggregate(Money.Zero(house), (sum, part) => sum + of(part));
}

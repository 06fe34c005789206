using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Summaries;

/// <summary>How many of how many.</summary>
public readonly record struct ShareOf(int Count, int Of)
{
    /// <summary>Null of nothing.</summary>
    public Percent? Percent => Of == 0 ? null : Measures.Percent.Of(Math.Round(Count * 100m / Of, 4, MidpointRounding.AwayFromZero));
}

/// <summary>Arrival less approved sample over all arrivals that were cupped, in points.</summary>
/// <param name="Mean">Null of none.</param>
/// <param name="Deviation">Sample standard deviation; null below two.</param>
/// <param name="Chart">Single values in order of time with limits from the mean moving range; null below <see cref="ControlChart.LeastValues"/>.</param>
public sealed record ArrivalDifferences(IReadOnlyList<CuppedFact> Arrivals, double? Mean, double? Deviation, ControlChart? Chart)
{
    /// <summary>An arrival more than a point below what was approved (handbook, trade 11).</summary>
    private const decimal Far = -1.0m;

    public int Number => Arrivals.Count;

    public ShareOf FarBelow => new(Arrivals.Count(fact => fact.Difference < Far), Arrivals.Count);

    internal static ArrivalDifferences Of(IEnumerable<CuppedFact> facts)
    {
        var ordered = facts.OrderBy(fact => fact.On).ThenBy(fact => fact.ArrivalId.Value).ToList();
        var values = ordered.ConvertAll(fact => (double)fact.Difference);
        double? mean = values.Count == 0 ? null : values.Average();
        double? deviation = values.Count < 2 ? null : Math.Sqrt(values.Sum(value => Math.Pow(value - mean!.Value, 2)) / (values.Count - 1));
        return new ArrivalDifferences(ordered, mean, deviation, ControlChart.Of(values));
    }
}

/// <summary>What was shipped and what landed, over all parts that were received.</summary>
public sealed record WeightRecord(int Number, Weight Shipped, Weight Landed)
{
    /// <summary>Σ landed ÷ Σ shipped − 1 (handbook, trade 11); null of nothing.</summary>
    public Percent? Difference => Shipped == Weight.Zero ? null : Percent.Of(Math.Round((Landed - Shipped).Kilograms * 100m / Shipped.Kilograms, 4, MidpointRounding.AwayFromZero));
}

/// <summary>Claims and how they ended.</summary>
/// <param name="OfReceived">Claims that were not withdrawn, of the parts received; one part may have several.</param>
/// <param name="OnMissing">Claims that were not withdrawn, on goods that did not come.</param>
/// <param name="Open">Those without an outcome.</param>
/// <param name="Outcomes">How many ended in each way.</param>
/// <param name="Settled">What sellers paid or credited, by currency.</param>
public sealed record ClaimRecord(ShareOf OfReceived, int OnMissing, int Open, IReadOnlyList<(ClaimOutcome Outcome, int Count)> Outcomes, IReadOnlyList<Money> Settled)
{
    internal static ClaimRecord Of(IReadOnlyList<ClaimedFact> claims, int received) => new(
        new ShareOf(claims.Count(claim => claim.IsReceived && claim.Outcome != ClaimOutcome.Withdrawn), received),
        claims.Count(claim => !claim.IsReceived && claim.Outcome != ClaimOutcome.Withdrawn),
        claims.Count(claim => claim.Outcome is null),
        [.. claims.Where(claim => claim.Outcome is not null).GroupBy(claim => claim.Outcome!.Value).OrderBy(group => group.Key).Select(group => (group.Key, group.Count()))],
        [.. claims.Select(claim => claim.Settled).OfType<Money>().GroupBy(money => money.Currency).OrderBy(group => group.Key.Code, StringComparer.Ordinal)
            .Select(group => group.Aggregate((sum, money) => sum + money))]);
}

/// <summary>
/// How one supplier, producer or origin has kept what was agreed (handbook, trade 11). Each figure carries its number: below the
/// house's least number it is too few to be ranked.
/// </summary>
/// <param name="Bought">Of the coffees offered, those with a standing decision to buy.</param>
/// <param name="ApprovedSamples">Of the pre-shipment samples judged, those approved.</param>
/// <param name="FirstTime">Of the lots whose first sample was judged, those approved at once.</param>
/// <param name="InTheEnd">Of the same lots, those approved in some round.</param>
/// <param name="InTime">Of the parts on board, those within the shipment period.</param>
/// <param name="Unapproved">Of the parts on board, those that shipped without the approval that was asked for.</param>
public sealed record SupplierRecord(
    ShareOf Bought, ShareOf ApprovedSamples, ShareOf FirstTime, ShareOf InTheEnd, ShareOf InTime, ShareOf Unapproved, ArrivalDifferences Differences, WeightRecord Weight, ClaimRecord Claims)
{
    /// <summary>Lots that were received before this ledger began, counted in none of the figures.</summary>
    public int LotsBefore { get; init; }

    /// <summary>As weighed on arrival.</summary>
    public Measures.Weight ReceivedBefore { get; init; }

    public static SupplierRecord Of(RecordFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var judged = facts.Judged.Where(fact => fact.Rounds.Count > 0).ToList();
        return new SupplierRecord(
            new ShareOf(facts.Offered.Sum(fact => fact.Bought), facts.Offered.Sum(fact => fact.Offered)),
            new ShareOf(judged.Sum(fact => fact.Rounds.Count(approved => approved)), judged.Sum(fact => fact.Rounds.Count)),
            new ShareOf(judged.Count(fact => fact.Rounds[0]), judged.Count),
            new ShareOf(judged.Count(fact => fact.Rounds.Any(approved => approved)), judged.Count),
            new ShareOf(facts.Shipped.Count(fact => fact.DaysLate == 0), facts.Shipped.Count),
            new ShareOf(facts.Shipped.Count(fact => fact.IsUnapproved), facts.Shipped.Count),
            ArrivalDifferences.Of(facts.Cupped),
            new WeightRecord(
                facts.Landed.Count,
                facts.Landed.Aggregate(Measures.Weight.Zero, (sum, fact) => sum + fact.Shipped),
                facts.Landed.Aggregate(Measures.Weight.Zero, (sum, fact) => sum + fact.Landed)),
            ClaimRecord.Of(facts.Claimed, facts.Landed.Count))
        {
            LotsBefore = facts.Before.Count,
            ReceivedBefore = facts.Before.Aggregate(Measures.Weight.Zero, (sum, fact) => sum + fact.Received),
        };
    }
}

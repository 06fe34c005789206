using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>The rules that a decision was made on.</summary>
public sealed record RulesSnapshot(string Name, int Revision, RuleTerms Terms)
{
    public static RulesSnapshot Of(BuyingRules rules) => new(rules.Name, rules.Revision, rules.Terms);
}

/// <summary>
/// A lot's figures at the time of a decision, as the page showed them. Amounts are in <paramref name="Currency"/>;
/// chances and the price difference are shares (0.25 is 25 %).
/// </summary>
public sealed record FiguresSnapshot(
    string Ref,
    string Name,
    string? Supplier,
    string? Process,
    string? Origin,
    Weight Quantity,
    Currency Currency,
    int Rank,
    int Ranked,
    double? WeightedScore,
    Score? Score,
    Score? Low,
    Score? High,
    bool IsStatedScore,
    decimal? CostPerKilogram,
    double? CostPerPoint,
    bool IsOnFront,
    double? ChanceBest,
    double? ChanceFirstThree,
    double? PredictedPerKilogram,
    double? PriceDifference,
    IReadOnlyList<string> FailedGates,
    IReadOnlyList<string> Reasons)
{
    public static FiguresSnapshot Of(ShortlistEntry entry, Shortlist shortlist)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(shortlist);
        var (lot, score) = (entry.Candidate, entry.Score);
        return new FiguresSnapshot(
            lot.Ref,
            lot.Name,
            lot.Supplier,
            lot.Process,
            lot.Origin,
            lot.Quantity,
            shortlist.Currency,
            entry.Rank,
            shortlist.Ranked.Count,
            entry.Standing == Standing.Ranked ? entry.Terms.Total : null,
            score?.Score,
            score?.Low,
            score?.High,
            score?.Origin == ScoreOrigin.Stated,
            lot.CostPerKilogram,
            entry.CostPerPoint,
            entry.IsOnFront,
            entry.Chance?.Best,
            entry.Chance?.FirstThree,
            entry.PriceCheck?.PredictedPerKilogram,
            entry.PriceCheck?.Difference,
            ShortlistWords.Names(entry.FailedGates),
            new ShortlistWords(shortlist).Reasons(entry));
    }
}

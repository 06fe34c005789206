using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>The rules that a decision was made on.</summary>
/// <param name="TriesWeights">Whether the buyer ranked by other weights than the rules' own, which then stand in the terms.</param>
public sealed record RulesSnapshot(string Name, int Revision, RuleTerms Terms, bool TriesWeights = false)
{
    public static RulesSnapshot Of(BuyingRules rules) => Of(rules, rules.Terms);

    /// <param name="rules">The rule set that was chosen.</param>
    /// <param name="terms">What the offers were ranked by: the rules' terms, perhaps with other weights.</param>
    public static RulesSnapshot Of(BuyingRules rules, RuleTerms terms) =>
        new(rules.Name, rules.Revision, terms, terms.Weights != rules.Terms.Weights);
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
    IReadOnlyList<string> Reasons,
    HoldsFor? HoldsFor = null)
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
            new ShortlistWords(shortlist).Reasons(entry),
            score?.HoldsFor);
    }
}

using GreenLedger.Data.Choosing;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.Choosing;

namespace GreenLedger.Web.Api;

/// <summary>A rule set by its name, with what weighs how much.</summary>
internal sealed record RulesReply(
    Guid Id,
    string Name,
    int Revision,
    string Currency,
    decimal WeightScore,
    decimal WeightCost,
    decimal WeightCostPerPoint,
    decimal WeightProcess,
    decimal? LeastScore,
    CostPerPointRule CostPerPoint,
    bool RanksStatedScores)
{
    public static RulesReply Of(BuyingRules rules)
    {
        var (terms, weights) = (rules.Terms, rules.Terms.Weights);
        return new RulesReply(
            rules.Id.Value,
            rules.Name,
            rules.Revision,
            terms.Currency.Code,
            weights.Score,
            weights.Cost,
            weights.CostPerPoint,
            weights.Process,
            terms.Gates.LeastScore?.Points,
            terms.CostPerPoint,
            terms.RanksStatedScores);
    }
}

/// <summary>One row of the shortlist. Rank 0 is not ranked; chances are shares; a stated score is the seller's.</summary>
internal sealed record ShortlistReply(
    int Rank,
    Standing Standing,
    Guid OfferId,
    string Ref,
    string Name,
    string? Supplier,
    string? Origin,
    decimal Kg,
    decimal? Score,
    decimal? Low,
    decimal? High,
    HoldsFor? HoldsFor,
    ScoreOrigin? ScoreFrom,
    decimal? StatedScore,
    string? Process,
    MoneyReply? LandedCostPerKg,
    MoneyReply? CostPerPoint,
    double? WeightedScore,
    bool OnFront,
    double? ChanceBest,
    double? ChanceTopThree,
    MoneyReply? PredictedCostPerKg,
    IReadOnlyList<string> FailedGates,
    IReadOnlyList<string> Reasons)
{
    public static IEnumerable<ShortlistReply> AllOf(Shortlist shortlist)
    {
        var words = new ShortlistWords(shortlist);
        return shortlist.Entries.Select(entry => Of(entry, shortlist.Currency, words));
    }

    private static ShortlistReply Of(ShortlistEntry entry, Currency currency, ShortlistWords words)
    {
        var (lot, score) = (entry.Candidate, entry.Score);
        return new ShortlistReply(
            entry.Rank,
            entry.Standing,
            lot.OfferId.Value,
            lot.Ref,
            lot.Name,
            lot.Supplier,
            lot.Origin,
            lot.Quantity.Kilograms / 1.000000000m,
            score?.Score.Points,
            score?.Low.Points,
            score?.High.Points,
            score is { Origin: ScoreOrigin.Cupped } ? score.Value.HoldsFor : null,
            score?.Origin,
            lot.StatedScore?.Points,
            lot.Process,
            Amounts.Of(lot.CostPerKilogram, currency),
            Amounts.Of((decimal?)entry.CostPerPoint, currency),
            entry.Standing == Standing.Ranked ? entry.Terms.Total : null,
            entry.IsOnFront,
            entry.Chance?.Best,
            entry.Chance?.FirstThree,
            Amounts.Of((decimal?)entry.PriceCheck?.PredictedPerKilogram, currency),
            ShortlistWords.Names(entry.FailedGates),
            words.Reasons(entry));
    }
}

/// <summary>A decision on an offer by the rules of that name, or by the first by name; weights given here are tried in place of the rules' own.</summary>
internal sealed record DecisionRequest(
    Guid OfferId,
    Outcome Outcome,
    string? Rules = null,
    decimal? QuantityKg = null,
    string? Reason = null,
    string? Note = null,
    decimal? WeightScore = null,
    decimal? WeightCost = null,
    decimal? WeightCostPerPoint = null,
    decimal? WeightProcess = null)
{
    public RankingWish Wish() => new()
    {
        Rules = Rules,
        WeightScore = WeightScore,
        WeightCost = WeightCost,
        WeightCostPerPoint = WeightCostPerPoint,
        WeightProcess = WeightProcess,
    };

    public Choice Choice() => new(Outcome, QuantityKg is { } kilograms ? Weight.FromKilograms(kilograms) : null, Reason, Note);
}

internal sealed record WithdrawRequest(string Reason);

/// <summary>A decision with the figures as they stood when it was taken.</summary>
internal sealed record DecisionReply(
    Guid Id,
    Guid OfferId,
    string Ref,
    string Name,
    Outcome Outcome,
    Outcome Advised,
    decimal? QuantityKg,
    string? Reason,
    string? Note,
    string By,
    DateTimeOffset At,
    string Rules,
    int RulesRevision,
    int Rank,
    decimal? Score,
    decimal? Low,
    decimal? High,
    HoldsFor? HoldsFor,
    bool ScoreIsStated,
    MoneyReply? LandedCostPerKg,
    MoneyReply? CostPerPoint,
    bool OnFront,
    double? ChanceBest,
    double? ChanceTopThree,
    MoneyReply? PredictedCostPerKg,
    IReadOnlyList<string> FailedGates,
    IReadOnlyList<string> Reasons,
    string? WithdrawnBy,
    DateTimeOffset? WithdrawnAt,
    string? WithdrawnBecause)
{
    public static DecisionReply Of(DecisionRow row)
    {
        var (decision, figures, rules) = (row.Decision, row.Figures, row.Rules);
        return new DecisionReply(
            decision.Id.Value,
            decision.OfferId.Value,
            figures.Ref,
            figures.Name,
            decision.Outcome,
            decision.Advised,
            decision.Quantity?.Kilograms / 1.000000000m,
            decision.Reason,
            decision.Note,
            row.By,
            decision.At,
            rules.Name,
            rules.Revision,
            figures.Rank,
            figures.Score?.Points,
            figures.Low?.Points,
            figures.High?.Points,
            figures.HoldsFor,
            figures.IsStatedScore,
            Amounts.Of(figures.CostPerKilogram, figures.Currency),
            Amounts.Of((decimal?)figures.CostPerPoint, figures.Currency),
            figures.IsOnFront,
            figures.ChanceBest,
            figures.ChanceFirstThree,
            Amounts.Of((decimal?)figures.PredictedPerKilogram, figures.Currency),
            figures.FailedGates,
            figures.Reasons,
            row.WithdrawnBy,
            decision.WithdrawnAt,
            decision.WithdrawnBecause);
    }
}

/// <summary>Unrounded amounts with their currency; null stays null.</summary>
internal static class Amounts
{
    public static MoneyReply? Of(decimal? amount, Currency currency) => amount is { } known ? new MoneyReply(known, currency.Code) : null;
}

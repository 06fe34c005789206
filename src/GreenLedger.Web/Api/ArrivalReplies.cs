using GreenLedger.Domain.Arrivals;

namespace GreenLedger.Web.Api;

/// <summary>
/// The verdict on the cup. The difference is arrival less approved, in points; bounds and p are one-sided at 95 %, and null
/// where the error is not known. Sheets and cuppers are those of a fresh session that would likely decide.
/// </summary>
internal sealed record CupReply(
    ArrivalOutcome Outcome,
    Meeting Meeting,
    double Approved,
    double Arrival,
    double Difference,
    decimal Tolerance,
    double? StandardError,
    double? DegreesOfFreedom,
    double? Lower,
    double? Upper,
    double? MatchesP,
    double? ShortP,
    double? Shift,
    int? CuppersNeeded,
    int? SheetsNeeded,
    IReadOnlyList<string> Sentences)
{
    public static CupReply Of(QualityVerdict verdict) => new(
        verdict.Outcome,
        verdict.Difference.Meeting,
        verdict.Difference.Approved,
        verdict.Difference.Arrival,
        verdict.Difference.Points,
        verdict.Tolerance.Points,
        verdict.Difference.StandardError,
        verdict.Difference.DegreesOfFreedom,
        verdict.Lower,
        verdict.Upper,
        verdict.MatchesP,
        verdict.ShortP,
        verdict.Difference.Shift,
        verdict.CuppersNeeded,
        verdict.SheetsNeeded,
        verdict.Sentences);
}

/// <summary>The whole verdict: the cup, each limit on its own, and what they come to.</summary>
internal sealed record VerdictReply(ArrivalOutcome Outcome, string Sentence, CupReply Cup, IReadOnlyList<LimitVerdict> Limits);

/// <summary>The last day is null while none of its events has happened; it is firm when all of them have.</summary>
internal sealed record DeadlineReply(string What, DateOnly? Start, DateOnly? LastDay, bool IsFirm);

/// <summary>The loss is below zero where more landed than was shipped; what was shipped beyond the tolerance is below zero where too little was; the sentences are the arithmetic.</summary>
internal sealed record WeightClaimReply(
    decimal LossKg,
    decimal LossPercent,
    decimal FranchiseKg,
    decimal RefundedKg,
    MoneyReply Worth,
    bool? ShippedAsAgreed,
    decimal? LeastAgreedKg,
    decimal? MostAgreedKg,
    decimal? BeyondAgreedKg,
    MoneyReply? BeyondAgreedWorth,
    decimal? DryingKg,
    IReadOnlyList<DeadlineReply> Deadlines,
    IReadOnlyList<string> Sentences);

using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>Verdicts on an arrival that is nowhere stored.</summary>
internal static class ArrivalCalculators
{
    [StoresNothing]
    public static Ok<VerdictReply> Verdict(VerdictRequest request)
    {
        var cup = QualityVerdict.Of(request.Difference(), Score.Of(request.Tolerance));
        var limits = request.Limits ?? new LimitsRequest();
        var verdict = ArrivalVerdict.Of(cup, limits.Limits(), request.ApprovedMeasured?.Grade(limits.Screen), request.ArrivalMeasured?.Grade(limits.Screen));
        return TypedResults.Ok(new VerdictReply(verdict.Outcome, verdict.Sentence, CupReply.Of(cup), verdict.Limits));
    }

    [StoresNothing]
    public static Ok<WeightClaimReply> WeightClaim(WeightClaimRequest request)
    {
        Rule.Require(request.MoistureShippedPercent is null == request.MoistureLandedPercent is null, "Send both moistures or neither.", nameof(request.MoistureLandedPercent));
        var verdict = request.Verdict();
        var happened = request.Happened ?? new Dictionary<ClaimEvent, DateOnly>();
        return TypedResults.Ok(new WeightClaimReply(
            verdict.Loss.Kilograms,
            verdict.LossShare.Points,
            verdict.FranchiseWeight.Kilograms,
            verdict.Refunded.Kilograms,
            MoneyReply.Of(verdict.Worth!.Value),
            verdict.Agreed?.Allows(verdict.Shipped),
            verdict.Agreed?.Least.Kilograms,
            verdict.Agreed?.Most.Kilograms,
            verdict.BeyondAgreed?.Kilograms,
            verdict.BeyondWorth is { } beyond ? MoneyReply.Of(beyond) : null,
            request is { MoistureShippedPercent: { } before, MoistureLandedPercent: { } after } ? verdict.Drying(Percent.Of(before), Percent.Of(after)).Kilograms : null,
            [.. (request.Deadlines ?? []).Select(deadline => Reply(ClaimDeadline.Of(deadline.ClaimRule(), happened)))],
            verdict.Sentences));
    }

    private static DeadlineReply Reply(ClaimDeadline deadline) => new(deadline.Rule.What, deadline.Start, deadline.LastDay, deadline.IsFirm);
}

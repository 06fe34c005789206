using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;

namespace GreenLedger.Web.Api;

/// <summary>A word and how many cuppers said it.</summary>
internal sealed record SaidWordReply(string Word, int Cuppers);

/// <summary>What the cup said of a sample; low and high are the ends of the 95 % interval, in points.</summary>
internal sealed record SampleCupReply(Guid SessionId, DateOnly HeldOn, string Form, decimal Score, decimal Low, decimal High, int Cuppers, IReadOnlyList<SaidWordReply> Words)
{
    public static SampleCupReply Of(SampleCup cup) => new(
        cup.Result.SessionId.Value,
        cup.Result.HeldOn,
        cup.Form,
        cup.Result.Fitted.Points,
        cup.Result.Low.Points,
        cup.Result.High.Points,
        cup.Result.Cuppers,
        [.. cup.Profile.Words.Concat(cup.Profile.DefectNames).Select(word => new SaidWordReply(word.Word, word.Cuppers))]);
}

/// <summary>The newest grade of a sample; what was not measured is null.</summary>
/// <param name="Screens">Percent of the mass kept by each screen, "pan" for the rest.</param>
internal sealed record SampleGradeReply(
    DateOnly GradedOn, decimal? MoisturePercent, decimal? WaterActivity, int? DensityGramsPerLitre, decimal? Category1, decimal? Category2, int? Quakers, IReadOnlyDictionary<string, decimal> Screens)
{
    public static SampleGradeReply Of(GreenGrade grade) => new(
        grade.GradedOn,
        grade.Moisture?.Points,
        grade.WaterActivity?.Ratio,
        grade.DensityGramsPerLitre,
        grade.Category1?.Count,
        grade.Category2?.Count,
        grade.Quakers,
        grade.Screens.ToDictionary(share => share.Screen == ScreenShare.Pan ? "pan" : FormattableString.Invariant($"{share.Screen}"), share => share.Retained.Points));
}

/// <summary>What is known of one sample; cup and grade are null where there is none.</summary>
internal sealed record SampleFindingsReply(Guid SampleId, string LabelCode, DateOnly ReceivedOn, decimal LeftGrams, SampleCupReply? Cup, SampleGradeReply? Grade)
{
    public static SampleFindingsReply Of(SampleFindings found) => new(
        found.Sample.Id.Value,
        found.Sample.LabelCode,
        found.Sample.ReceivedOn!.Value,
        found.Left.Grams,
        found.Cup is { } cup ? SampleCupReply.Of(cup) : null,
        found.Grade is { } grade ? SampleGradeReply.Of(grade) : null);
}

/// <summary>A pre-shipment sample that waits for a verdict, beside the offer sample of its lot.</summary>
/// <param name="Offer">Null where none came, or an open session keeps it from you.</param>
/// <param name="InOneTable">The two to be cupped together; empty where nothing is left for it.</param>
internal sealed record SampleToJudgeReply(
    Guid LotId, string Lot, int Round, SampleFindingsReply Sample, SampleFindingsReply? Offer, IReadOnlyList<string> Sentences, IReadOnlyList<Guid> InOneTable)
{
    public static SampleToJudgeReply Of(ApprovalCase waiting, Contract contract) => new(
        waiting.Sample.Sample.LotId.Value,
        waiting.Lot,
        contract.RoundsOf(waiting.Sample.Sample.LotId) + 1,
        SampleFindingsReply.Of(waiting.Sample),
        waiting.Offer is { } offer ? SampleFindingsReply.Of(offer) : null,
        waiting.Sentences(),
        waiting.Kept is { } kept && !waiting.IsSealed ? [kept.Sample.Id.Value, waiting.Sample.Sample.Id.Value] : []);
}

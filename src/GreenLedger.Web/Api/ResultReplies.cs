using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Cupping;

namespace GreenLedger.Web.Api;

/// <summary>A score that cuppers agreed on in talk, for the sample under this code.</summary>
internal sealed record DiscussRequest(string Code, decimal Score, string? Reason);

/// <summary>A discussed score; the last of a sample that was not withdrawn stands, earlier ones stay.</summary>
internal sealed record DiscussedReply(Guid Id, string Code, decimal Score, string Reason, string By, DateTimeOffset At, WithdrawnReply? Withdrawn);

internal sealed record AttributeReply(string Key, string Name, decimal Mean, decimal Lowest, decimal Highest);

/// <summary>What the sheets of one sample say beyond the total; words with the number of cuppers who said them.</summary>
internal sealed record ProfileReply(
    string Code,
    int Sheets,
    int Cuppers,
    IReadOnlyList<AttributeReply> Attributes,
    IReadOnlyList<SaidWord> Words,
    IReadOnlyList<NotedDefect> Defects,
    IReadOnlyList<SaidWord> DefectNames);

/// <summary>One cupper's scores of one coffee under more than one code, in the order of the codes.</summary>
internal sealed record RepeatedReply(IReadOnlyList<string> Codes, string Cupper, IReadOnlyList<decimal> Scores, decimal Range);

internal sealed record WeightReply(string Cupper, double Weight, string? Reason);

/// <summary>The rule by which cuppers who repeat badly counted less in this result, and what each counted.</summary>
internal sealed record WeighingReply(string Rule, IReadOnlyList<WeightReply> Cuppers);

/// <summary>
/// What a closed session shows. The fitted scores are what the shortlist ranks by; discussed scores stand beside them.
/// Weighing is null where all cuppers counted alike, pairwise for more than 60 samples.
/// </summary>
internal sealed record ResultReply(
    Guid Id,
    string Title,
    string Form,
    Blindness Blindness,
    IReadOnlyList<string> NotBlind,
    IReadOnlyList<string> References,
    IReadOnlyList<SampleResultReply> Samples,
    IReadOnlyList<ProfileReply> Profiles,
    IReadOnlyList<DiscussedReply> Discussed,
    decimal? ResidualDeviation,
    AgreementReply Agreement,
    PairwiseReply? Pairwise,
    IReadOnlyList<RepeatedReply> HiddenDuplicates,
    Repeatability? Repeatability,
    WeighingReply? Weighing,
    IReadOnlyList<string> Notes)
{
    public static ResultReply Of(ClosedSession found)
    {
        var session = found.Session;
        var result = session.Result!;
        var detail = ResultDetail.Of(session, found.Descriptive);
        var key = found.Key.Where(row => row.Repeat == 0).ToDictionary(row => row.SampleId);
        return new ResultReply(
            session.Id.Value,
            session.Title,
            session.Form.Code,
            detail.Blindness,
            [.. found.NotBlind.Values],
            [.. session.Samples.Where(sample => sample.IsReference && !sample.IsDuplicate).Select(sample => sample.Code)],
            [.. result.Samples.Select(sample => SampleResultReply.Of(sample, key[sample.SampleId]))],
            [.. detail.Profiles.Select(profile => Profile(profile, key))],
            [.. found.Discussed.Select(row => new DiscussedReply(
                row.Score.Id.Value, key[row.Score.SampleId].Code, row.Score.Points.Points, row.Score.Reason, row.By, row.Score.At, WithdrawnReply.Of(row.Score.WithdrawnAt, row.Score.WithdrawnBecause)))],
            result.ResidualDeviation?.Points,
            CuppingCalculators.Agreed(detail.Agreement),
            detail.Differences is { } differences ? PairwiseReply.Of(differences, [.. detail.Scores.Samples.Select(sample => key[sample].Code)]) : null,
            [.. detail.Repeated.Select(repeated => new RepeatedReply(
                [.. found.Key.Where(row => row.SampleId == repeated.SampleId).OrderBy(row => row.Repeat).Select(row => row.Code)], repeated.CupperName, repeated.Points, repeated.Range))],
            detail.Repeatability,
            WeighingOf(result),
            [.. PanelNotes.Of(result)]);
    }

    private static ProfileReply Profile(SampleProfile profile, Dictionary<Id<Sample>, TableSampleRow> key) => new(
        key[profile.SampleId].Code,
        profile.Sheets,
        profile.Cuppers,
        [.. profile.Attributes.Select(attribute => new AttributeReply(attribute.Line.Key, attribute.Line.Name, attribute.Mean, attribute.Lowest, attribute.Highest))],
        profile.Words,
        profile.Defects,
        profile.DefectNames);

    private static WeighingReply? WeighingOf(PanelResult result) => result.WeightRule is { } rule
        ? new WeighingReply(rule, [.. result.Cuppers.Select(cupper => new WeightReply(cupper.CupperName, cupper.Weight, cupper.WeightReason))])
        : null;
}

internal sealed record CupperListReply(Guid Id, string Name, int Sessions, int Sheets, DateOnly LastHeldOn);

internal sealed record RecordSessionReply(
    Guid SessionId, string Title, DateOnly HeldOn, int Cuppers, double? Bias, bool? IsOutside, double? Repeatability, int Repeats, double? Slope);

/// <summary>Control limits of the bias in points, from the first sessions; they move until the base period is full.</summary>
internal sealed record LimitsReply(double Mean, double Lower, double Upper, int BasePeriod, bool IsFrozen);

internal sealed record CuppedFormReply(Guid Id, string Name, int Revision, int Sessions);

/// <summary>
/// A cupper's record on one form, the oldest session first. Figures are null where there is too little to compute them;
/// the sentences say what is too little to judge.
/// </summary>
internal sealed record RecordReply(
    CuppedFormReply Form,
    IReadOnlyList<CuppedFormReply> Forms,
    MeanBias? Bias,
    LimitsReply? Limits,
    Repeatability? Repeatability,
    double? DiscriminationF,
    double? DiscriminationP,
    double? Slope,
    double? DeviationRatio,
    double? Correlation,
    IReadOnlyList<string> Sentences,
    IReadOnlyList<RecordSessionReply> Sessions)
{
    public static RecordReply Of(CupperRecordView found)
    {
        var record = found.Record;
        return new RecordReply(
            FormOf(found.Form),
            [.. found.Forms.Select(FormOf)],
            record.Bias,
            record.BiasChart is { } chart ? new LimitsReply(chart.Mean, chart.Lower, chart.Upper, chart.BasePeriod, chart.IsFrozen) : null,
            record.Repeatability,
            CuppingCalculators.Finite(record.Discrimination?.F),
            CuppingCalculators.Finite(record.Discrimination?.P),
            CuppingCalculators.Finite(record.Scale?.Slope),
            CuppingCalculators.Finite(record.Scale?.DeviationRatio),
            CuppingCalculators.Finite(record.Scale?.Correlation),
            [CupperRecordWords.OfBias(record), CupperRecordWords.OfChart(record), CupperRecordWords.OfRepeatability(record), CupperRecordWords.OfDiscrimination(record), CupperRecordWords.OfScale(record)],
            [.. record.Sessions.Select(session => new RecordSessionReply(
                session.Session.Id.Value,
                session.Session.Title,
                session.Session.HeldOn,
                session.Cuppers,
                session.Bias,
                found.IsOutside(session),
                session.Repeatability?.Deviation,
                session.Repeatability?.DegreesOfFreedom ?? 0,
                CuppingCalculators.Finite(session.Scale?.Slope)))]);
    }

    private static CuppedFormReply FormOf(CuppedFormRow row) => new(row.Id.Value, row.Name, row.Revision, row.Sessions);
}

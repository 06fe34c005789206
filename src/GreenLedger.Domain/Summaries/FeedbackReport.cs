using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Summaries;

/// <summary>What was tasted of one sample in one closed session.</summary>
/// <param name="Low">Lower end of the panel's 95 % interval.</param>
public sealed record FeedbackCup(DateOnly HeldOn, string Form, Score Score, Score Low, Score High, SampleProfile Profile);

/// <summary>What was found on the green coffee.</summary>
/// <param name="Defects">Codes of the kinds with the beans counted, the most first.</param>
public sealed record FeedbackGreen(
    DateOnly GradedOn, Weight SampleWeight, Percent? Moisture, WaterActivity? WaterActivity, int? DensityGramsPerLitre, FullDefects? Category1, FullDefects? Category2, int? Quakers,
    IReadOnlyList<(string Kind, string Name, int Beans)> Defects);

/// <summary>What was decided about the lot, which gates it failed, and what the rules asked at those.</summary>
public sealed record FeedbackDecision(DateOnly On, Outcome Outcome, Gate Failed, Gates Asked);

/// <summary>One sample that a supplier is told of. Nothing in it is of anybody else.</summary>
public sealed record FeedbackSample(
    Id<Sample> SampleId, string LotRef, string LotName, string? CropYear, string LabelCode, SampleKind Kind, DateOnly? ReceivedOn,
    FeedbackCup? Cup, FeedbackGreen? Green, FeedbackDecision? Decision, SeasonQuarter? Quarter);

/// <summary>What a supplier or producer hears back about samples of theirs.</summary>
/// <param name="Language">ISO 639-1: en, es, pt or fr; another is answered in English.</param>
/// <param name="Message">What the buyer adds, in the reader's language; null for nothing.</param>
public sealed record FeedbackReport(string House, string Supplier, string? Language, DateOnly On, string By, string? Message, IReadOnlyList<FeedbackSample> Samples)
{
    public const int MostSamples = 40;

    /// <summary>For the file, without the ending: names nobody but the house's own day.</summary>
    public string FileName => FormattableString.Invariant($"feedback-{On:yyyy-MM-dd}");
}

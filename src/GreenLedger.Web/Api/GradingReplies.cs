using GreenLedger.Data.Grading;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Api;

/// <summary>What was found on a sample; what is left out was not measured. Beans left out altogether were not counted.</summary>
internal sealed record GradeRequest(
    string LabelCode,
    DateOnly? GradedOn = null,
    decimal? SampleWeightGrams = null,
    decimal? MoisturePercent = null,
    string? MoistureMethod = null,
    decimal? WaterActivity = null,
    int? DensityGramsPerLitre = null,
    IReadOnlyDictionary<string, int>? Beans = null,
    DefectFractions Fractions = DefectFractions.Dropped,
    decimal? ExportDefects = null,
    int? Quakers = null,
    decimal? RoastedGrams = null,
    IReadOnlyDictionary<int, decimal>? ScreensPercent = null,
    string? Note = null)
{
    public GreenGrade Onto(GreenGrade grade)
    {
        grade.Measure(
                MoisturePercent is { } moisture ? Percent.Of(moisture) : null,
                MoistureMethod,
                WaterActivity is { } activity ? Domain.Measures.WaterActivity.Of(activity) : null,
                DensityGramsPerLitre)
            .Sieve((ScreensPercent ?? new Dictionary<int, decimal>()).ToDictionary(share => share.Key, share => Percent.Of(share.Value)))
            .StateExportDefects(ExportDefects is { } full ? FullDefects.Of(full) : null)
            .Roast(Quakers, RoastedGrams is { } grams ? Weight.FromGrams(grams) : null);
        return Beans is null ? grade : grade.CountDefects(DefectScheme.WashedArabica, Beans, Fractions);
    }
}

/// <summary>A grade of a list; the categories are full defects.</summary>
internal sealed record GradeReply(
    Guid Id,
    Guid SampleId,
    string LabelCode,
    string LotRef,
    string LotName,
    DateOnly GradedOn,
    decimal? MoisturePercent,
    decimal? WaterActivity,
    decimal? Category1,
    decimal? Category2,
    int? Quakers)
{
    public static GradeReply Of(GradeRow row) => new(
        row.Id.Value,
        row.SampleId.Value,
        row.LabelCode,
        row.LotRef,
        row.LotName,
        row.GradedOn,
        row.Moisture?.Points,
        row.WaterActivity?.Ratio,
        row.Category1?.Count,
        row.Category2?.Count,
        row.Quakers);
}

/// <summary>A limit held against the grade; passed is null where nothing was measured.</summary>
internal sealed record LimitReply(string Limits, string Name, string? Found, string Limit, bool? Passed);

/// <summary>A grade with its counts, in both habits of counting, and the published limits for the lot's species.</summary>
internal sealed record WholeGradeReply(
    Guid Id,
    Guid SampleId,
    string LabelCode,
    DateOnly GradedOn,
    decimal SampleWeightGrams,
    decimal? MoisturePercent,
    string? MoistureMethod,
    decimal? WaterActivity,
    int? DensityGramsPerLitre,
    string? Scheme,
    DefectFractions Fractions,
    IReadOnlyDictionary<string, int> Beans,
    decimal? Category1,
    decimal? Category2,
    decimal? Category1WithFractions,
    decimal? Category2WithFractions,
    decimal? ExportDefects,
    int? Quakers,
    decimal? RoastedGrams,
    IReadOnlyDictionary<int, decimal> ScreensPercent,
    string? Note,
    IReadOnlyList<LimitReply> Limits)
{
    public static WholeGradeReply Of(GreenGrade grade, string label, string? varieties)
    {
        var tally = grade.Tally();
        return new WholeGradeReply(
            grade.Id.Value,
            grade.SampleId.Value,
            label,
            grade.GradedOn,
            grade.SampleWeight.Grams,
            grade.Moisture?.Points,
            grade.MoistureMethod,
            grade.WaterActivity?.Ratio,
            grade.DensityGramsPerLitre,
            grade.Scheme,
            grade.Fractions,
            grade.Defects.ToDictionary(count => count.Kind, count => count.Beans),
            grade.Category1?.Count,
            grade.Category2?.Count,
            tally?.Category1Kept.Count,
            tally?.Category2Kept.Count,
            grade.ExportDefects?.Count,
            grade.Quakers,
            grade.RoastedWeight?.Grams,
            grade.Screens.ToDictionary(share => share.Screen, share => share.Retained.Points),
            grade.Note,
            [.. PhysicalLimits.For(varieties).SelectMany(limits => limits.Check(grade).Select(check => new LimitReply(limits.Name, check.Name, check.Found, check.Limit, check.Passed)))]);
    }
}

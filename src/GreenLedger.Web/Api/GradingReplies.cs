using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Api;

/// <summary>
/// What was found on a sample; what is left out was not measured. Beans left out altogether were not counted. The version
/// is that of the grade to be corrected, as it was read.
/// </summary>
internal sealed record GradeRequest(
    string? LabelCode = null,
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
    string? Note = null,
    string? Scheme = null,
    int? StatedScreen = null,
    string? Colour = null,
    string? Odour = null,
    bool? HasForeignOdour = null,
    string? Varieties = null,
    int? Version = null)
{
    /// <summary>Writes the request onto a stored grade and gives what it then says, on the version that was sent.</summary>
    public WholeGradeReply Onto(GreenGrade grade, string label, string? varieties, GradingStandards standards)
    {
        Rule.Require(Version is not null, "Send the version of the grade that you read, so that nobody's change is lost.", nameof(Version));
        Rule.Require(
            LabelCode is null || string.Equals(LabelCode.Trim(), label, StringComparison.OrdinalIgnoreCase),
            $"This grade is of sample {label}: leave the label code out, or write a grade of the other sample.", nameof(LabelCode));
        grade.Correct(GradedOn ?? grade.GradedOn, SampleWeightGrams is { } grams ? Weight.FromGrams(grams) : grade.SampleWeight, Note);
        Draft().Onto(grade, varieties, standards);
        return WholeGradeReply.Of(grade, label, standards) with { Version = Version.Value };
    }

    /// <summary>What the request says of the green coffee.</summary>
    public GradeDraft Draft() => new()
    {
        SampleGrams = SampleWeightGrams,
        MoisturePercent = MoisturePercent,
        MoistureMethod = MoistureMethod,
        WaterActivity = WaterActivity,
        DensityGramsPerLitre = DensityGramsPerLitre,
        Scheme = Scheme,
        Beans = Beans,
        Fractions = Fractions,
        ExportDefects = ExportDefects,
        Quakers = Quakers,
        RoastedGrams = RoastedGrams,
        Screens = ScreensPercent ?? new Dictionary<int, decimal>(),
        StatedScreen = StatedScreen,
        Colour = Colour,
        Odour = Odour,
        HasForeignOdour = HasForeignOdour,
    };
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
/// <param name="FullDefects">What the beans of each kind make in full defects, fractions kept and unrounded.</param>
internal sealed record WholeGradeReply(
    Guid Id,
    int Version,
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
    IReadOnlyDictionary<string, decimal> FullDefects,
    decimal? Category1,
    decimal? Category2,
    decimal? Category1WithFractions,
    decimal? Category2WithFractions,
    decimal? ExportDefects,
    int? Quakers,
    decimal? RoastedGrams,
    decimal? QuakersIn100Grams,
    IReadOnlyDictionary<int, decimal> ScreensPercent,
    int? StatedScreen,
    string? Colour,
    string? Odour,
    bool? HasForeignOdour,
    string? Class,
    IReadOnlyList<string> Reasons,
    string? Note,
    IReadOnlyList<LimitReply> Limits,
    WithdrawnReply? Withdrawn)
{
    public static WholeGradeReply Of(GreenGrade grade, string label, GradingStandards standards)
    {
        var tally = grade.Tally(standards);
        return new WholeGradeReply(
            grade.Id.Value,
            grade.Version,
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
            FullOf(grade, standards.Find(grade.Scheme)),
            grade.Category1?.Count,
            grade.Category2?.Count,
            tally?.Category1Kept.Count,
            tally?.Category2Kept.Count,
            grade.ExportDefects?.Count,
            grade.Quakers,
            grade.RoastedWeight?.Grams,
            grade.QuakersIn100Grams,
            grade.Screens.ToDictionary(share => share.Screen, share => share.Retained.Points),
            grade.StatedScreen,
            grade.Colour,
            grade.Odour,
            grade.HasForeignOdour,
            grade.QualityClass,
            grade.Verdict(standards)?.Reasons ?? [],
            grade.Note,
            [.. grade.Limits.OrderBy(limit => limit.Position).Select(limit => new LimitReply(limit.Limits, limit.Name, limit.Found, limit.Limit, limit.Passed))],
            WithdrawnReply.Of(grade.WithdrawnAt, grade.WithdrawnBecause));
    }

    private static Dictionary<string, decimal> FullOf(GreenGrade grade, DefectScheme? scheme) => scheme is null
        ? []
        : grade.Defects.Join(scheme.Kinds, count => count.Kind, kind => kind.Code, (count, kind) => (kind, count.Beans))
            .ToDictionary(one => one.kind.Code, one => DefectTally.FullOf(scheme, one.kind, one.Beans, grade.SampleWeight.Grams));
}

/// <summary>What was sent and what is stored, where somebody was faster.</summary>
internal sealed record GradeConflictReply(string Detail, WholeGradeReply Yours, WholeGradeReply Stored);

using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain.Grading;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>A page that shows the fields of a grade: the model of the partial <c>_GradeFields</c>.</summary>
public interface IGradePage
{
    GradeForm Input { get; }

    /// <summary>The table that beans are counted by.</summary>
    DefectScheme Scheme { get; }
}

/// <summary>What was found on a sample, when it is written down and when it is corrected.</summary>
public class GradeForm
{
    /// <summary>From the largest screen down to the pan.</summary>
    public static IReadOnlyList<int> ScreensAsked { get; } = [20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, ScreenShare.Pan];

    public int Version { get; set; }

    [Required(ErrorMessage = "Give the day of grading.")]
    [Display(Name = "Graded on")]
    public DateOnly? GradedOn { get; set; }

    [Required(ErrorMessage = "How many grams were searched?")]
    [Display(Name = "Graded sample (g)")]
    public decimal? SampleWeightGrams { get; set; } = GreenGrade.UsualSample.Grams;

    [Display(Name = "Moisture (%)")]
    public decimal? MoisturePercent { get; set; }

    [Display(Name = "Measured by")]
    public string? MoistureMethod { get; set; }

    [Display(Name = "Water activity")]
    public decimal? WaterActivity { get; set; }

    [Display(Name = "Bulk density (g/L)")]
    public int? DensityGramsPerLitre { get; set; }

    [Display(Name = "Defects were")]
    public bool AreDefectsCounted { get; set; } = true;

    /// <summary>The key of the defect table that the beans are counted by.</summary>
    public string Scheme { get; set; } = DefectScheme.WashedArabica.Key;

    public Dictionary<string, int?> Beans { get; set; } = [];

    [Display(Name = "Full defects")]
    public DefectFractions Fractions { get; set; }

    [Display(Name = "Defects in 300 g")]
    public decimal? ExportDefects { get; set; }

    [Display(Name = "Quakers (beans)")]
    public int? Quakers { get; set; }

    [Display(Name = "Roasted (g)")]
    public decimal? RoastedGrams { get; set; } = GreenGrade.UsualRoast.Grams;

    public Dictionary<int, decimal?> Screens { get; set; } = [];

    [Display(Name = "Sold as screen")]
    public int? StatedScreen { get; set; }

    [Display(Name = "Colour of the green beans")]
    public string? Colour { get; set; }

    [Display(Name = "It smells")]
    public bool? HasForeignOdour { get; set; }

    [Display(Name = "Of what")]
    public string? Odour { get; set; }

    public string? Note { get; set; }

    public static GradeForm Of(GreenGrade grade, GradingStandards standards) => new()
    {
        Version = grade.Version,
        GradedOn = grade.GradedOn,
        SampleWeightGrams = grade.SampleWeight.Grams,
        MoisturePercent = grade.Moisture?.Points,
        MoistureMethod = grade.MoistureMethod,
        WaterActivity = grade.WaterActivity?.Ratio,
        DensityGramsPerLitre = grade.DensityGramsPerLitre,
        AreDefectsCounted = grade.Scheme is not null,
        Scheme = grade.Scheme ?? standards.For(null).Key,
        Beans = BeansOf(grade, standards),
        Fractions = grade.Fractions,
        ExportDefects = grade.ExportDefects?.Count,
        Quakers = grade.Quakers,
        RoastedGrams = (grade.RoastedWeight ?? GreenGrade.UsualRoast).Grams,
        Screens = grade.Screens.ToDictionary(share => share.Screen, share => (decimal?)share.Retained.Points),
        StatedScreen = grade.StatedScreen,
        Colour = grade.Colour,
        Odour = grade.Odour,
        HasForeignOdour = grade.HasForeignOdour,
        Note = grade.Note,
    };

    /// <summary>A count that found none stands as 0 everywhere: empty fields mean that nobody counted.</summary>
    private static Dictionary<string, int?> BeansOf(GreenGrade grade, GradingStandards standards) => (standards.Find(grade.Scheme)?.Kinds ?? [])
        .ToDictionary(kind => kind.Code, kind => (int?)(grade.Defects.FirstOrDefault(count => count.Kind == kind.Code)?.Beans ?? 0));

    /// <summary>What stands in the form; empty bean fields are no count; full defects that somebody else stated stay while nothing is counted here.</summary>
    public GradeDraft Draft() => new()
    {
        SampleGrams = SampleWeightGrams,
        MoisturePercent = MoisturePercent,
        MoistureMethod = MoistureMethod,
        WaterActivity = WaterActivity,
        DensityGramsPerLitre = DensityGramsPerLitre,
        Scheme = Scheme,
        Beans = AreDefectsCounted && Beans.Values.Any(count => count is not null) ? Beans.ToDictionary(count => count.Key, count => count.Value ?? 0) : null,
        Fractions = Fractions,
        ExportDefects = ExportDefects,
        Quakers = Quakers,
        RoastedGrams = RoastedGrams,
        Screens = Screens.Where(share => share.Value is not null).ToDictionary(share => share.Key, share => share.Value!.Value),
        StatedScreen = StatedScreen,
        Colour = Colour,
        Odour = Odour,
        HasForeignOdour = HasForeignOdour,
    };
}

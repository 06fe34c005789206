using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>A page that shows the fields of a grade: the model of the partial <c>_GradeFields</c>.</summary>
public interface IGradePage
{
    GradeForm Input { get; }
}

/// <summary>What was found on a sample, when it is written down and when it is corrected.</summary>
public class GradeForm
{
    /// <summary>From the largest screen down to the pan.</summary>
    public static IReadOnlyList<int> ScreensAsked { get; } = [20, 19, 18, 17, 16, 15, 14, 13, 12, ScreenShare.Pan];

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

    public string? Note { get; set; }

    public static GradeForm Of(GreenGrade grade) => new()
    {
        Version = grade.Version,
        GradedOn = grade.GradedOn,
        SampleWeightGrams = grade.SampleWeight.Grams,
        MoisturePercent = grade.Moisture?.Points,
        MoistureMethod = grade.MoistureMethod,
        WaterActivity = grade.WaterActivity?.Ratio,
        DensityGramsPerLitre = grade.DensityGramsPerLitre,
        AreDefectsCounted = grade.Scheme is not null,
        Beans = grade.Defects.ToDictionary(count => count.Kind, count => (int?)count.Beans),
        Fractions = grade.Fractions,
        ExportDefects = grade.ExportDefects?.Count,
        Quakers = grade.Quakers,
        RoastedGrams = (grade.RoastedWeight ?? GreenGrade.UsualRoast).Grams,
        Screens = grade.Screens.ToDictionary(share => share.Screen, share => (decimal?)share.Retained.Points),
        Note = grade.Note,
    };

    /// <summary>Writes what was measured and counted; full defects that somebody else stated stay while nothing is counted here.</summary>
    public void WriteOn(GreenGrade grade)
    {
        grade.Measure(
                MoisturePercent is { } moisture ? Percent.Of(moisture) : null,
                MoistureMethod,
                WaterActivity is { } activity ? Domain.Measures.WaterActivity.Of(activity) : null,
                DensityGramsPerLitre)
            .Sieve(Screens.Where(share => share.Value is not null).ToDictionary(share => share.Key, share => Percent.Of(share.Value!.Value)))
            .StateExportDefects(ExportDefects is { } full ? FullDefects.Of(full) : null)
            .Roast(Quakers, RoastedGrams is { } grams ? Weight.FromGrams(grams) : null);
        if (AreDefectsCounted)
        {
            grade.CountDefects(DefectScheme.WashedArabica, Beans.ToDictionary(count => count.Key, count => count.Value ?? 0), Fractions);
        }
        else if (grade.Scheme is not null)
        {
            grade.StateDefects(null, null);
        }
    }
}

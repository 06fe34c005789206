using System.ComponentModel.DataAnnotations;
using System.Globalization;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

public sealed class NewModel(LedgerContext db, TimeProvider clock) : FormPage
{
    /// <summary>From the largest screen down to the pan.</summary>
    public static IReadOnlyList<int> ScreensAsked { get; } = [20, 19, 18, 17, 16, 15, 14, 13, 12, ScreenShare.Pan];

    [BindProperty]
    public NewForm Input { get; set; } = new();

    public async Task OnGetAsync(Id<Sample>? sample, CancellationToken cancellationToken)
    {
        Input.GradedOn = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        Input.Label = sample is null ? null : await db.Samples.Where(one => one.Id == sample).Select(one => one.LabelCode).SingleOrDefaultAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var label = Input.Label!.Trim().ToUpperInvariant();
        var sample = await db.Samples.SingleOrDefaultAsync(sample => sample.LabelCode == label, cancellationToken);
        Rule.Require(sample is not null, $"No sample here has the label code {label}.", nameof(Input.Label));
        var grade = new GreenGrade(sample.Id, sample.LotId, Input.GradedOn!.Value, User.Person(), Weight.FromGrams(Input.SampleWeightGrams!.Value), Input.Note)
            .Measure(
                Input.MoisturePercent is { } moisture ? Percent.Of(moisture) : null,
                Input.MoistureMethod,
                Input.WaterActivity is { } activity ? WaterActivity.Of(activity) : null,
                Input.DensityGramsPerLitre)
            .Sieve(Input.Screens.Where(share => share.Value is not null).ToDictionary(share => share.Key, share => Percent.Of(share.Value!.Value)))
            .StateExportDefects(Input.ExportDefects is { } full ? FullDefects.Of(full) : null)
            .Roast(Input.Quakers, Input.RoastedGrams is { } grams ? Weight.FromGrams(grams) : null);
        if (Input.AreDefectsCounted)
        {
            grade.CountDefects(DefectScheme.WashedArabica, Input.Beans.ToDictionary(count => count.Key, count => count.Value ?? 0), Input.Fractions);
        }

        db.Add(grade);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Sample {sample.LabelCode} is graded.");
        return RedirectToPage("Grade", new { grade.Id });
    }

    /// <summary>What stands in a field of many, as it was typed.</summary>
    public string? TypedOf(string name, object? stored) =>
        ModelState.TryGetValue(name, out var entry) && entry.AttemptedValue is { } typed ? typed : Convert.ToString(stored, CultureInfo.InvariantCulture);

    /// <summary>True for a field of many whose value could not be read.</summary>
    public bool IsWrong(string name) => ModelState.TryGetValue(name, out var entry) && entry.Errors.Count > 0;

    public sealed class NewForm
    {
        [Required(ErrorMessage = "Type the label code of the sample.")]
        [Display(Name = "Label code")]
        public string? Label { get; set; }

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
    }
}

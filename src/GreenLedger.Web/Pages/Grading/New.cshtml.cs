using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

public sealed class NewModel(LedgerContext db, HouseZone house) : FormPage, IGradePage
{
    [BindProperty]
    public NewForm Input { get; set; } = new();

    GradeForm IGradePage.Input => Input;

    public GradingStandards Standards { get; private set; } = GradingStandards.Published;

    public DefectScheme Scheme => Standards.Find(Input.Scheme) ?? Standards.For(null);

    /// <summary>The sample that the page was opened for.</summary>
    public Id<Sample>? SampleId { get; private set; }

    /// <param name="scheme">The key of the defect table to count by; else the usual one of the sample's species.</param>
    public async Task OnGetAsync(Id<Sample>? sample, string? scheme, CancellationToken cancellationToken)
    {
        var habits = await db.GradingHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        (Input.Fractions, Input.MoistureMethod) = (habits.Fractions, habits.MoistureMethod);
        await LoadAsync(cancellationToken);
        var table = Standards.Find(scheme) ?? Standards.For(await db.VarietiesOfAsync(sample, cancellationToken));
        (Input.Scheme, Input.SampleWeightGrams) = (table.Key, table.SampleGrams);
        SampleId = sample;
        Input.GradedOn = house.Today;
        Input.Label = sample is null ? null : await db.Samples.Where(one => one.Id == sample).Select(one => one.LabelCode).SingleOrDefaultAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var label = Input.Label!.Trim().ToUpperInvariant();
        var sample = await db.Samples.SingleOrDefaultAsync(sample => sample.LabelCode == label, cancellationToken);
        Rule.Require(sample is not null, $"No sample here has the label code {label}.", nameof(Input.Label));
        Rule.Require(sample.IsReceived, $"Sample {label} has not come yet: receive it first.", nameof(Input.Label));
        var grade = new GreenGrade(sample.Id, sample.LotId, Input.GradedOn!.Value, User.Person(), Weight.FromGrams(Input.SampleWeightGrams!.Value), Input.Note);
        Input.Draft().Onto(grade, await db.VarietiesOfAsync(sample.Id, cancellationToken), await db.GradingStandardsAsync(cancellationToken));
        db.Add(grade);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Sample {sample.LabelCode} is graded.");
        return RedirectToPage("Grade", new { grade.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Standards = await db.GradingStandardsAsync(cancellationToken);

    public sealed class NewForm : GradeForm
    {
        [Required(ErrorMessage = "Type the label code of the sample.")]
        [Display(Name = "Label code")]
        public string? Label { get; set; }
    }
}

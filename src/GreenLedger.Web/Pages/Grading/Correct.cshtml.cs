using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

internal sealed class CorrectModel(LedgerContext db, Reader reader) : FormPage, IGradePage
{
    [BindProperty(SupportsGet = true)]
    public Id<GreenGrade> Id { get; set; }

    [BindProperty]
    public GradeForm Input { get; set; } = new();

    public string LabelCode { get; private set; } = "";

    public GradingStandards Standards { get; private set; } = GradingStandards.Published;

    /// <summary>The table that it was counted by, in the same revision.</summary>
    public DefectScheme Scheme => Standards.Find(Input.Scheme) ?? Standards.For(null);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.GreenGrades.AsNoTracking().Whole().SingleOrDefaultAsync(grade => grade.Id == Id, cancellationToken) is not { } grade)
        {
            return NotFound();
        }

        await LoadAsync(cancellationToken);
        Input = GradeForm.Of(grade, Standards);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.GreenGrades.Whole().SingleOrDefaultAsync(grade => grade.Id == Id, cancellationToken) is not { } grade)
        {
            return NotFound();
        }

        OpenedOn(grade, Input.Version);
        grade.Correct(Input.GradedOn!.Value, Weight.FromGrams(Input.SampleWeightGrams!.Value), Input.Note);
        Input.Draft().Onto(grade, await db.VarietiesOfAsync(grade.SampleId, cancellationToken), await db.GradingStandardsAsync(cancellationToken));
        await db.SaveChangesAsync(cancellationToken);
        Say("The grade is corrected.");
        return RedirectToPage("Grade", new { Id });
    }

    /// <summary>What an open session seals is not there, to read or to change.</summary>
    protected override async Task<bool> IsThereAsync(CancellationToken cancellationToken)
    {
        var samples = await db.GreenGrades.Where(grade => grade.Id == Id).Select(grade => grade.SampleId).ToListAsync(cancellationToken);
        return samples.Count == 1 && !(await reader.SealAsync()).Covers(samples[0].Value);
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Standards = await db.GradingStandardsAsync(cancellationToken);
        LabelCode = await db.GreenGrades.Where(grade => grade.Id == Id)
            .Join(db.Samples, grade => grade.SampleId, sample => sample.Id, (_, sample) => sample.LabelCode)
            .SingleOrDefaultAsync(cancellationToken) ?? "";
    }
}

using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>Takes a grade out of everything that is counted, with a reason. It stays to be read.</summary>
public sealed class WithdrawModel(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<GreenGrade> Id { get; set; }

    [BindProperty]
    public WithdrawForm Input { get; set; } = new();

    public string LabelCode { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return LabelCode.Length == 0 ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.GreenGrades.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } grade)
        {
            return NotFound();
        }

        grade.Withdraw(Input.WithdrawnBecause, User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("The grade is withdrawn: it counts nowhere any more, and stays to be read.");
        return RedirectToPage("Grade", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        LabelCode = await db.GreenGrades.Where(one => one.Id == Id).Join(db.Samples, one => one.SampleId, sample => sample.Id, (_, sample) => sample.LabelCode)
            .SingleOrDefaultAsync(cancellationToken) ?? "";
}

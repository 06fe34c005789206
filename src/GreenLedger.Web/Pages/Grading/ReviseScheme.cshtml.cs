using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>Makes a new revision of a defect table.</summary>
[InArea("Cupping, leading")]
public sealed class ReviseSchemeModel(LedgerContext db) : FormPage, ISchemePage
{
    [BindProperty(SupportsGet = true)]
    public Id<SchemeRevision> Id { get; set; }

    [BindProperty]
    public SchemeForm Input { get; set; } = new();

    public SchemeRevision Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.SchemeRevisions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        Input.Fill(found.Scheme);
        Input.AddLines();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.SchemeRevisions.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        var revised = found.Revise(Input.SampleGrams ?? 0m, Input.DefectKinds(), Input.QualityClasses(), Input.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Samples are counted by revision {revised.Revision} from now on.");
        return RedirectToPage("Scheme", new { revised.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Found = await db.SchemeRevisions.AsNoTracking().SingleAsync(one => one.Id == Id, cancellationToken);
        Input.AddLines();
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.SchemeRevisions.AnyAsync(one => one.Id == Id, cancellationToken);
}

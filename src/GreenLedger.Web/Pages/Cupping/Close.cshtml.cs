using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

[InArea("Cupping, leading")]
public sealed class CloseModel(LedgerContext db, BlindTableQuery query, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public BlindTable Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, null, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        return found.IsClosed ? RedirectToPage("Result", new { Id }) : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(Id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == Id, cancellationToken) is not { } session)
        {
            return NotFound();
        }

        session.Close(by: User.Person(), at: clock.GetUtcNow(), await Errors.ExpectedAsync(db, cancellationToken));
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return RedirectToPage("Result", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Found = (await query.FindAsync(Id, null, cancellationToken))!;
}

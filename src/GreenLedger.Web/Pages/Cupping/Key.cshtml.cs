using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>The one page that says what stands behind the codes of an open session; each opening is recorded.</summary>
[InArea("Cupping, leading")]
public sealed class KeyModel(LedgerContext db, SessionQuery query, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public string Title { get; private set; } = "";

    public IReadOnlyList<TableSampleRow> Rows { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } session)
        {
            return NotFound();
        }

        Title = session.Title;
        return session.IsClosed ? RedirectToPage("Result", new { Id }) : Page();
    }

    public async Task<IActionResult> OnPostOpenAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } session)
        {
            return NotFound();
        }

        session.OpenKey(User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Title = session.Title;
        Rows = await query.KeyAsync(Id, cancellationToken);
        return Page();
    }

    private Task<CuppingSession?> FindAsync(CancellationToken cancellationToken) =>
        db.CuppingSessions.SingleOrDefaultAsync(session => session.Id == Id, cancellationToken);
}

using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>
/// The one page that says what stands behind the codes of an open session, to whoever laid it out or pours; each opening is
/// recorded. To anybody else there is no such page.
/// </summary>
public sealed class KeyModel(LedgerContext db, SessionQuery query, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public string Title { get; private set; } = "";

    /// <summary>The reader also scores at this table, and is not blind once the key is open.</summary>
    public bool Cups { get; private set; }

    public IReadOnlyList<TableSampleRow> Rows { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } session || !session.MayOpenKey(User.Person()))
        {
            return NotFound();
        }

        Describe(session);
        return session.IsClosed ? RedirectToPage("Result", new { Id }) : Page();
    }

    public async Task<IActionResult> OnPostOpenAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } session || !session.MayOpenKey(User.Person()))
        {
            return NotFound();
        }

        session.OpenKey(User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Describe(session);
        Rows = await query.KeyAsync(Id, cancellationToken);
        return Page();
    }

    private void Describe(CuppingSession session)
    {
        Title = session.Title;
        Cups = session.MemberOf(User.Person())?.Cups == true;
    }

    private Task<CuppingSession?> FindAsync(CancellationToken cancellationToken) =>
        db.CuppingSessions.Include(session => session.Panel).SingleOrDefaultAsync(session => session.Id == Id, cancellationToken);
}

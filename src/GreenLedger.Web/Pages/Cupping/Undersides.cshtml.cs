using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Documents.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>
/// The codes that one cupper alone writes under the bowls, and, once every sheet is in, the codes found there. It tells
/// nothing that the bowls would not: which place has which code is known to nobody before.
/// </summary>
internal sealed class UndersidesModel(LedgerContext db, SessionQuery query, TimeProvider clock) : FormPage
{
    private TurnedBowls _bowls = null!;

    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    /// <summary>The code found under the bowls of each place.</summary>
    [BindProperty]
    public Dictionary<string, string> Codes { get; set; } = [];

    public CuppingSession Session => _bowls.Session;

    public IReadOnlyList<TableSampleRow> Rows { get; private set; } = [];

    /// <summary>Every sheet is in: the bowls may be turned over.</summary>
    public bool MayLook => _bowls.MayLook;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        return Session.IsByPlace ? Page() : RedirectToPage("Table", new { Id });
    }

    /// <summary>The same on paper; there is none once the bowls may be turned over.</summary>
    public async Task<IActionResult> OnGetPdfAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken) || Rows.Count == 0)
        {
            return NotFound();
        }

        var file = new MemoryStream();
        UndersidesPaper.Write(
            await db.Houses.Select(house => house.Name).SingleAsync(cancellationToken), Session.Title, Session.HeldOn, Session.CupsPerSample,
            [.. Rows.Select(row => new UndersideLine(row.Code, row.LabelCode))], file);
        file.Position = 0;
        return File(file, UndersidesPaper.MediaType);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(Id, cancellationToken);
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        await _bowls.TurnAsync(db, Codes, clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        Say("The sheets are with their samples. Closing the session shows the result.");
        return RedirectToPage("Table", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => await FindAsync(cancellationToken);

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        if (await TurnedBowls.FindAsync(db, Id, User.Person(), cancellationToken) is not { } bowls)
        {
            return false;
        }

        _bowls = bowls;
        Rows = Session.IsByPlace && !MayLook ? await query.KeyAsync(Id, cancellationToken) : [];
        return true;
    }
}

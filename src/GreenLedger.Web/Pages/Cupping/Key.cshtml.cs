using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Documents.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>
/// The one page that says what stands behind the codes of an open session, to whoever laid it out or pours; each opening is
/// recorded. To anybody else there is no such page.
/// </summary>
public sealed class KeyModel(LedgerContext db, SessionQuery query, HouseZone house, TimeProvider clock) : FormPage
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

    public async Task<IActionResult> OnPostOpenAsync(CancellationToken cancellationToken) =>
        await OpenAsync(cancellationToken) is null ? NotFound() : Page();

    /// <summary>The key on paper, for whoever asks for it alone; recorded as every opening is.</summary>
    public async Task<IActionResult> OnPostPrintAsync(CancellationToken cancellationToken)
    {
        if (await OpenAsync(cancellationToken) is not { } session)
        {
            return NotFound();
        }

        var file = new MemoryStream();
        KeyPaper.Write(
            new PrintedKey(
                await db.Houses.Select(house => house.Name).SingleAsync(cancellationToken), session.Title, session.HeldOn, User.PersonName(), clock.GetUtcNow(), house.Zone, session.CupsPerSample,
                [.. Rows.Select(row => new KeyLine(row.Flight, row.Code, row.LabelCode, LotOf(row), RemarkOn(row)))]),
            file);
        file.Position = 0;
        return File(file, KeyPaper.MediaType, $"key-{session.HeldOn:yyyy-MM-dd}.pdf");
    }

    /// <summary>The lot's name, with its reference where that is another word.</summary>
    public static string LotOf(TableSampleRow row) => row.LotRef == row.LotName ? row.LotName : $"{row.LotName} · {row.LotRef}";

    public static string RemarkOn(TableSampleRow row) => row.Repeat > 0 ? "hidden duplicate" : row.IsReference ? "house reference" : "";

    /// <summary>Every way to the key goes through here: who opened it is stored before anything is told.</summary>
    private async Task<CuppingSession?> OpenAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } session || !session.MayOpenKey(User.Person()))
        {
            return null;
        }

        session.OpenKey(User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Describe(session);
        Rows = await query.KeyAsync(Id, cancellationToken);
        return session;
    }

    private void Describe(CuppingSession session)
    {
        Title = session.Title;
        Cups = session.MemberOf(User.Person())?.Cups == true;
    }

    private Task<CuppingSession?> FindAsync(CancellationToken cancellationToken) =>
        db.CuppingSessions.Include(session => session.Panel).SingleOrDefaultAsync(session => session.Id == Id, cancellationToken);
}

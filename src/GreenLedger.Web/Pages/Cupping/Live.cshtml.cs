using System.Globalization;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.People;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using QRCoder;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Who is where at an open table and what is missing, for whoever leads it; never a score.</summary>
[InArea("Cupping, leading")]
public sealed class LiveModel(LedgerContext db, LiveTableQuery query, TimeProvider clock) : FormPage
{
    private const int MinutesMore = 5;

    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public LiveTable Found { get; private set; } = null!;

    /// <summary>Who may cup and is not on the panel.</summary>
    public IReadOnlyList<Person> Others { get; private set; } = [];

    public string JoinAddress => Url.Page("Cup", null, new { Id }, Request.Scheme)!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        return Found.IsClosed ? RedirectToPage("Result", new { Id }) : Page();
    }

    /// <summary>The address of the cuppers' page, as a code to be read by a phone.</summary>
    public IActionResult OnGetCode()
    {
        using var generator = new QRCodeGenerator();
        using var data = generator.CreateQrCode(JoinAddress, QRCodeGenerator.ECCLevel.M);
        using var code = new SvgQRCode(data);
        return Content(code.GetGraphic(8), "image/svg+xml");
    }

    public Task<IActionResult> OnPostPourAsync(int flight, CancellationToken cancellationToken) =>
        ActAsync(session => session.PourFlight(flight, clock.GetUtcNow()), cancellationToken);

    public Task<IActionResult> OnPostExtendAsync(int flight, CancellationToken cancellationToken) =>
        ActAsync(session => session.Extend(flight, MinutesMore), cancellationToken);

    public async Task<IActionResult> OnPostAddAsync(Id<Person> person, CancellationToken cancellationToken)
    {
        var late = await db.People.SingleOrDefaultAsync(one => one.Id == person && one.IsActive, cancellationToken);
        Rule.Require(late is not null && AreaAccess.Of("Cupping", late.Roles) == Access.Write, "Choose who joins, among those who may cup.", nameof(person));
        return await ActAsync(session => TableLayout.AddLatecomer(session, late, clock.GetUtcNow(), new Unforeseeable()), cancellationToken);
    }

    /// <summary>How long ago, in minutes and seconds.</summary>
    public string Ago(DateTimeOffset moment)
    {
        var ago = clock.GetUtcNow() - moment;
        return string.Create(CultureInfo.InvariantCulture, $"{(int)ago.TotalMinutes}:{ago.Seconds:00} min ago");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => await FindAsync(cancellationToken);

    private async Task<IActionResult> ActAsync(Action<CuppingSession> act, CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(Id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == Id, cancellationToken) is not { } session)
        {
            return NotFound();
        }

        act(session);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return RedirectToPage("Live", new { Id });
    }

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } found)
        {
            return false;
        }

        Found = found;
        var there = found.Cuppers.Select(cupper => cupper.PersonId).ToHashSet();
        var active = await db.People.AsNoTracking().Where(person => person.IsActive).OrderBy(person => person.Name).ToListAsync(cancellationToken);
        Others = active.FindAll(person => !there.Contains(person.Id) && AreaAccess.Of("Cupping", person.Roles) == Access.Write);
        return true;
    }
}

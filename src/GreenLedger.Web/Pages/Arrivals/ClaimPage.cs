using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>An act on one claim: the page shows the claim, then does one thing to it and leads back.</summary>
public abstract class ClaimPage(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Claim> Id { get; set; }

    /// <summary>As it is stored; what the page shows beside its form.</summary>
    public Claim Shown { get; private set; } = null!;

    protected LedgerContext Db => db;

    protected DateTimeOffset Now => clock.GetUtcNow();

    protected DateOnly Today => house.Today;

    /// <summary>Loads the claim to change it, acts, saves, and leads to its page.</summary>
    protected Task<IActionResult> ActAsync(int openedOn, Func<Claim, string> act, CancellationToken cancellationToken) =>
        ActAsync(openedOn, claim => Task.FromResult(act(claim)), cancellationToken);

    /// <inheritdoc cref="ActAsync(int, Func{Claim, string}, CancellationToken)" />
    protected async Task<IActionResult> ActAsync(int openedOn, Func<Claim, Task<string>> act, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var claim = await db.Claims.Whole().SingleAsync(one => one.Id == Id, cancellationToken);
        OpenedOn(claim, openedOn);
        var said = await act(claim);
        await db.SaveChangesAsync(cancellationToken);
        Say(said);
        return RedirectToPage("Claim", new { Id });
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.Claims.AnyAsync(claim => claim.Id == Id, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Shown = await db.Claims.AsNoTracking().Whole().SingleAsync(claim => claim.Id == Id, cancellationToken);
}

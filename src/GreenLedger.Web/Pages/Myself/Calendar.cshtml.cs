using GreenLedger.Data;
using GreenLedger.Domain.People;
using GreenLedger.Web.Due;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Myself;

/// <summary>One's own private calendar address: made, shown once, revoked.</summary>
public sealed class CalendarModel(LedgerContext db, TimeProvider clock) : FormPage
{
    /// <summary>The one that works; null where there is none.</summary>
    public CalendarFeed? Feed { get; private set; }

    /// <summary>The address just made, shown once.</summary>
    [TempData]
    public string? Fresh { get; set; }

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    /// <summary>Makes an address; one that there was stops working.</summary>
    public async Task<IActionResult> OnPostMakeAsync(CancellationToken cancellationToken)
    {
        var (_, path) = await db.MakeFeedAsync(User.Person(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Fresh = CalendarAddress.Whole(Request, path);
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRevokeAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Feed is null)
        {
            return NotFound();
        }

        await db.RevokeFeedsAsync(User.Person(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say("The address is revoked: nothing reads it any more.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Feed = await db.OwnFeedAsync(User.Person(), cancellationToken);
}

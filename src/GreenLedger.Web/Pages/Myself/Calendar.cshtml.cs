using GreenLedger.Data;
using GreenLedger.Domain.People;
using GreenLedger.Web.Due;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

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
        await RevokeAllAsync(cancellationToken);
        var secret = CalendarAddress.NewSecret();
        db.Add(new CalendarFeed(User.Person(), CalendarAddress.Hash(secret), clock.GetUtcNow()));
        await db.SaveChangesAsync(cancellationToken);
        Fresh = $"{Request.Scheme}://{Request.Host}{Request.PathBase}{CalendarAddress.PathOf(secret)}";
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRevokeAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Feed is null)
        {
            return NotFound();
        }

        await RevokeAllAsync(cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say("The address is revoked: nothing reads it any more.");
        return RedirectToPage();
    }

    /// <summary>Every address of the person, also one that two clicks made.</summary>
    private async Task RevokeAllAsync(CancellationToken cancellationToken)
    {
        var person = User.Person();
        foreach (var feed in await db.CalendarFeeds.Where(feed => feed.OwnerId == person && feed.RevokedAt == null).ToListAsync(cancellationToken))
        {
            feed.Revoke(clock.GetUtcNow());
        }
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var person = User.Person();
        Feed = await db.CalendarFeeds.Where(feed => feed.OwnerId == person && feed.RevokedAt == null).OrderByDescending(feed => feed.MadeAt).FirstOrDefaultAsync(cancellationToken);
    }
}

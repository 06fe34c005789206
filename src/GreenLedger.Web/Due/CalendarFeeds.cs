using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Due;

/// <summary>A person's own calendar address: found, made and revoked, to be stored with the caller's save.</summary>
internal static class CalendarFeeds
{
    /// <summary>The one that works; null where there is none.</summary>
    public static Task<CalendarFeed?> OwnFeedAsync(this LedgerContext db, Id<Person> owner, CancellationToken cancellationToken) =>
        db.CalendarFeeds.Where(feed => feed.OwnerId == owner && feed.RevokedAt == null).OrderByDescending(feed => feed.MadeAt).FirstOrDefaultAsync(cancellationToken);

    /// <summary>Makes an address, which can be read here once; one that there was stops working.</summary>
    public static async Task<(CalendarFeed Feed, string Path)> MakeFeedAsync(this LedgerContext db, Id<Person> owner, DateTimeOffset at, CancellationToken cancellationToken)
    {
        await db.RevokeFeedsAsync(owner, at, cancellationToken);
        var secret = CalendarAddress.NewSecret();
        var feed = new CalendarFeed(owner, CalendarAddress.Hash(secret), at);
        db.Add(feed);
        return (feed, CalendarAddress.PathOf(secret));
    }

    /// <summary>Revokes every address of the person, also one that two clicks made.</summary>
    public static async Task RevokeFeedsAsync(this LedgerContext db, Id<Person> owner, DateTimeOffset at, CancellationToken cancellationToken)
    {
        foreach (var feed in await db.CalendarFeeds.Where(feed => feed.OwnerId == owner && feed.RevokedAt == null).ToListAsync(cancellationToken))
        {
            feed.Revoke(at);
        }
    }
}

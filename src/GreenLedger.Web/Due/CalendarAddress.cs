using System.Security.Cryptography;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Due;
using GreenLedger.Documents.Due;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.Hosting;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Due;

/// <summary>
/// The private address of a person's calendar: who has it reads what that person's roles may read, without signing in, until
/// it is revoked. It is limited to so many reads a minute, so that nobody guesses one.
/// </summary>
internal static class CalendarAddress
{
    /// <summary>The secret part of an address: 256 bits.</summary>
    public static string NewSecret() => WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(32));

    public static string Hash(string secret) => ApiToken.HashOf(secret);

    public static string PathOf(string secret) => $"/calendar/{secret}.ics";

    /// <summary>The address that a calendar program is given.</summary>
    public static string Whole(HttpRequest request, string path) => $"{request.Scheme}://{request.Host}{request.PathBase}{path}";

    public static void MapCalendar(this WebApplication app) => app.MapGet("/calendar/{secret}.ics", ReadAsync)
        .AllowAnonymous().RequireRateLimiting(Security.CalendarLimit).ExcludeFromDescription();

    private static async Task<Results<ContentHttpResult, NotFound>> ReadAsync(
        string secret, LedgerContext db, DueQuery query, SealQuery seals, LinkGenerator links, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        var hash = Hash(secret);
        var found = await db.CalendarFeeds.AsNoTracking().Where(feed => feed.Hash == hash && feed.RevokedAt == null)
            .Join(db.People, feed => feed.OwnerId, person => person.Id, (feed, person) => new { feed.Id, Person = person })
            .SingleOrDefaultAsync(cancellationToken);
        if (found is not { Person: { IsActive: true } person })
        {
            return TypedResults.NotFound();
        }

        await NoteReadAsync(db, found.Id, clock.GetUtcNow(), cancellationToken);
        var seal = await seals.ForAsync(person.Id, person.Roles, cancellationToken);
        var lines = await query.ListAsync(area => AreaAccess.Of(area, person.Roles) >= Access.Read, seal, house.Today, cancellationToken);
        var name = await db.Houses.Select(one => one.Name).SingleOrDefaultAsync(cancellationToken) ?? "GreenLedger";
        http.Response.Headers.CacheControl = "private, no-store";
        return TypedResults.Text(
            DueCalendar.Write(lines, name, line => new Uri(links.GetUriByPage(http, DueFigures.Page(line.Kind), values: DueFigures.Values(line))!), clock.GetUtcNow()), DueCalendar.MediaType);
    }

    /// <summary>Written at most once a minute, so that a busy calendar program does not make every read a write.</summary>
    private static Task<int> NoteReadAsync(LedgerContext db, Id<CalendarFeed> id, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var minuteAgo = now.AddMinutes(-1);
        return db.CalendarFeeds.Where(feed => feed.Id == id && (feed.LastReadAt == null || feed.LastReadAt < minuteAgo))
            .ExecuteUpdateAsync(set => set.SetProperty(feed => feed.LastReadAt, now), cancellationToken);
    }
}

using GreenLedger.Data;
using GreenLedger.Web.Due;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>What belongs to whoever asks: the private calendar address.</summary>
internal static class MyselfApi
{
    public static void MapMyselfApi(this IEndpointRouteBuilder api)
    {
        var myself = api.MapGroup("/myself").WithTags("Myself");
        myself.MapGet("/calendar", ReadAsync).WithName("ReadCalendarAddress").WithSummary("Since when your private calendar address stands, and when it was read last. The address itself is told once, when it is made");
        myself.MapPost("/calendar", MakeAsync).WithName("MakeCalendarAddress").WithSummary("Makes your private calendar address and tells it, this once. One that there was stops working");
        myself.MapDelete("/calendar", RevokeAsync).WithName("RevokeCalendarAddress").WithSummary("Revokes your private calendar address");
    }

    private static async Task<Results<Ok<CalendarFeedReply>, NotFound>> ReadAsync(LedgerContext db, HttpContext http, CancellationToken cancellationToken) =>
        await db.OwnFeedAsync(http.User.Person(), cancellationToken) is { } feed ? TypedResults.Ok(new CalendarFeedReply(feed.MadeAt, feed.LastReadAt)) : TypedResults.NotFound();

    private static async Task<Created<NewCalendarFeedReply>> MakeAsync(LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var (feed, path) = await db.MakeFeedAsync(http.User.Person(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        http.Response.Headers.CacheControl = "private, no-store";
        return TypedResults.Created("/api/myself/calendar", new NewCalendarFeedReply(CalendarAddress.Whole(http.Request, path), feed.MadeAt));
    }

    private static async Task<Results<NoContent, NotFound>> RevokeAsync(LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (await db.OwnFeedAsync(http.User.Person(), cancellationToken) is null)
        {
            return TypedResults.NotFound();
        }

        await db.RevokeFeedsAsync(http.User.Person(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.NoContent();
    }
}

/// <summary>A calendar address, without the address.</summary>
/// <param name="LastReadAt">To the minute; null while no program has read it.</param>
internal sealed record CalendarFeedReply(DateTimeOffset MadeAt, DateTimeOffset? LastReadAt);

/// <summary>A calendar address just made; it is told this once.</summary>
internal sealed record NewCalendarFeedReply(string Address, DateTimeOffset MadeAt);

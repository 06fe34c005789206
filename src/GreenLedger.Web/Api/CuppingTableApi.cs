using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What phones at an open table send and ask: changes of the caller's own sheets, and the table's clock.</summary>
internal static class CuppingTableApi
{
    public static void MapTable(this IEndpointRouteBuilder cupping)
    {
        cupping.MapGet("/sessions/{id}/table", TableAsync).WithName("ReadTable").WithSummary("The caller's own table: codes in the caller's serving order, what is written and handed in, and the clock.");
        cupping.MapGet("/sessions/{id}/clock", ClockAsync).WithName("ReadClock").WithSummary("When each flight was poured, and the server's time.");
        cupping.MapPost("/sessions/{id}/flights/{flight}/pour", PourAsync).WithName("PourFlight").WithSummary("Water meets coffee: starts the clock of a flight, or starts it again.");
        cupping.MapPost("/sessions/{id}/flights/{flight}/extend", ExtendAsync).WithName("ExtendFlight").WithSummary("Gives a poured flight more minutes for tasting.");
        cupping.MapPost("/sessions/{id}/sheets/{code}/changes", ChangeAsync).WithName("ChangeSheet")
            .WithSummary("Saves a change to the caller's sheet, once for each key; 409 with both sheets when another device changed it meanwhile.");
        cupping.MapPost("/sessions/{id}/sheets/{code}/hand-in", HandInAsync).WithName("HandInSheet").WithSummary("Hands in what the caller has written for a code.");
        cupping.MapPost("/sessions/{id}/sheets/{code}/reopen", ReopenAsync).WithName("ReopenSheet").WithSummary("Opens the caller's sheet again with a reason; what was handed in is kept.");
    }

    private static async Task<Results<Ok<TableReply>, NotFound>> TableAsync(
        Id<CuppingSession> id, CupperTableQuery query, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        await query.FindAsync(id, http.User.Person(), cancellationToken) is { } table
            ? TypedResults.Ok(TableReply.Of(table, clock.GetUtcNow()))
            : TypedResults.NotFound();

    private static async Task<Results<Ok<ClockReply>, NotFound>> ClockAsync(
        Id<CuppingSession> id, LedgerContext db, TimeProvider clock, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.AsNoTracking().Include(session => session.Flights).SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        return session is null ? TypedResults.NotFound() : TypedResults.Ok(ClockReply.Of(session.Flights, session.IsClosed, clock.GetUtcNow()));
    }

    private static async Task<Results<Ok<ClockReply>, NotFound>> PourAsync(
        Id<CuppingSession> id, int flight, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        await OnClockAsync(id, session => session.PourFlight(flight, clock.GetUtcNow()), db, http, clock, cancellationToken);

    private static async Task<Results<Ok<ClockReply>, NotFound>> ExtendAsync(
        Id<CuppingSession> id, int flight, ExtendRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        await OnClockAsync(id, session => session.Extend(flight, request.Minutes), db, http, clock, cancellationToken);

    private static async Task<Results<Ok<ClockReply>, NotFound>> OnClockAsync(
        Id<CuppingSession> id, Action<CuppingSession> act, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { } session)
        {
            return TypedResults.NotFound();
        }

        Rule.Require(http.User.MayWrite("Cupping, leading") || session.MayOpenKey(http.User.Person()), "The clock is kept by whoever leads or pours.");
        act(session);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Ok(ClockReply.Of(session.Flights, session.IsClosed, clock.GetUtcNow()));
    }

    private static async Task<Results<Ok<ChangeReply>, Conflict<ConflictReply>, NotFound>> ChangeAsync(
        Id<CuppingSession> id, string code, ChangeRequest request, DraftWriter writer, HttpContext http, CancellationToken cancellationToken)
    {
        Rule.Require(
            request.Values is not null && request.Values.Values.All(value => value is not null),
            "A change has values; a field is cleared by an empty text.", nameof(request.Values));
        var outcome = await writer.SaveAsync(new DraftSave(id, http.User.Person(), code, request.Key, request.Version, request.Values), cancellationToken);
        return outcome.Answer switch
        {
            DraftAnswer.Saved => TypedResults.Ok(new ChangeReply(outcome.Version)),
            DraftAnswer.Conflict => TypedResults.Conflict(new ConflictReply(
                "Another device changed this sheet. Compare both and send yours again on the stored version where it should stand.",
                new SheetVersion(request.Version, request.Values), new SheetVersion(outcome.Version, outcome.Values))),
            DraftAnswer.Refused => throw new RuleBrokenException(outcome.Refusal!, outcome.Field),
            _ => TypedResults.NotFound(),
        };
    }

    private static async Task<Results<Ok<SheetReply>, NotFound>> HandInAsync(
        Id<CuppingSession> id, string code, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { } session)
        {
            return TypedResults.NotFound();
        }

        var person = http.User.Person();
        var draft = await db.SheetDrafts.SingleOrDefaultAsync(draft => draft.SessionId == id && draft.CupperId == person && draft.Code == code, cancellationToken);
        if (session.IsByPlace)
        {
            Rule.Require(draft is not null, $"Nothing is written for {code} yet.", nameof(code));
            var total = session.HandInPlace(draft, clock.GetUtcNow());
            await db.SaveChangesAsync(cancellationToken);
            await turn.CommitAsync(cancellationToken);
            return TypedResults.Ok(new SheetReply(code, total.Total, total.Unrounded, null, draft.ChangeCount, true));
        }

        var sample = session.Poured(code);
        var sheet = session.SheetOf(sample, person);
        if (draft?.HandedInAt is null || sheet is null)
        {
            Rule.Require(draft is not null, $"Nothing is written for {code} yet.", nameof(code));
            sheet = session.HandIn(draft, (await db.People.FindAsync([person], cancellationToken))!, clock.GetUtcNow());
            await db.LearnWordsAsync(sheet, cancellationToken);
            await db.SaveChangesAsync(cancellationToken);
            await turn.CommitAsync(cancellationToken);
        }

        return TypedResults.Ok(SheetReply.Of(sheet, sample.Code, draft.ChangeCount));
    }

    private static async Task<Results<Ok<SheetReply>, NotFound>> ReopenAsync(
        Id<CuppingSession> id, string code, ReopenRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { } session)
        {
            return TypedResults.NotFound();
        }

        var person = http.User.Person();
        var sheet = session.Reopen(code, person, request.Reason ?? "", person, clock.GetUtcNow());
        var draft = await db.DraftOfAsync(session, sheet, code, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Ok(SheetReply.Of(sheet, code, draft.ChangeCount));
    }
}

using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What closed sessions show, and the records of those who cupped in them.</summary>
internal static class ResultApi
{
    public static void MapResults(this IEndpointRouteBuilder cupping)
    {
        cupping.MapGet("/sessions/{id}/result", ResultAsync).WithName("ReadResult")
            .WithSummary("What a closed session shows: results, profiles, discussed scores, agreement, samples told apart, hidden duplicates and weights.");
        cupping.MapPost("/sessions/{id}/discussed", DiscussAsync).WithName("DiscussScore")
            .WithSummary("Writes down a score that cuppers agreed on in talk after closing; the fitted score stays as it is.");
        cupping.MapPost("/sessions/{id}/discussed/{discussed}/withdraw", WithdrawAsync).WithName("WithdrawDiscussedScore")
            .WithSummary("Takes back a discussed score with a reason; it stays on the result.");
        cupping.MapGet("/my-record", MineAsync).WithName("ReadMyRecord").WithSummary("The caller's own record as a cupper, on one form.");
        cupping.MapGet("/cuppers", CuppersAsync).WithName("ListCuppers").WithSummary("Everybody who has cupped, for the lead cupper.");
        cupping.MapGet("/cuppers/{id}/record", RecordAsync).WithName("ReadCupperRecord").WithSummary("One cupper's record on one form, for the lead cupper.");
    }

    private static async Task<Results<Ok<ResultReply>, NotFound>> ResultAsync(Id<CuppingSession> id, ResultQuery query, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } found ? TypedResults.Ok(ResultReply.Of(found)) : TypedResults.NotFound();

    [InArea("Cupping, leading")]
    private static async Task<Results<Ok<ResultReply>, NotFound>> DiscussAsync(
        Id<CuppingSession> id, DiscussRequest request, LedgerContext db, ResultQuery query, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (await db.CuppingSessions.Whole().Closed().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { } session)
        {
            return TypedResults.NotFound();
        }

        session.Result!.Discuss(session.Poured(request.Code).SampleId, request.Score, request.Reason ?? "", http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ResultReply.Of((await query.FindAsync(id, cancellationToken))!));
    }

    [InArea("Cupping, leading")]
    private static async Task<Results<Ok<ResultReply>, NotFound>> WithdrawAsync(
        Id<CuppingSession> id, Id<DiscussedScore> discussed, WithdrawRequest request, LedgerContext db, ResultQuery query, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (await db.CuppingSessions.Whole().Closed().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { Result: { } result }
            || result.Discussed.All(one => one.Id != discussed))
        {
            return TypedResults.NotFound();
        }

        result.WithdrawDiscussed(discussed, request.Reason, http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ResultReply.Of((await query.FindAsync(id, cancellationToken))!));
    }

    private static async Task<Results<Ok<RecordReply>, NotFound>> MineAsync(
        CupperRecordQuery query, HttpContext http, CancellationToken cancellationToken, Id<CuppingForm>? form = null) =>
        await FindAsync(query, http.User.Person(), form, cancellationToken);

    [InArea("Cuppers' records")]
    private static async Task<Ok<List<CupperListReply>>> CuppersAsync(CupperRecordQuery query, CancellationToken cancellationToken) =>
        TypedResults.Ok((await query.CuppersAsync(cancellationToken))
            .Select(row => new CupperListReply(row.Id.Value, row.Name, row.Sessions, row.Sheets, row.LastHeldOn)).ToList());

    [InArea("Cuppers' records")]
    private static async Task<Results<Ok<RecordReply>, NotFound>> RecordAsync(
        Id<Person> id, CupperRecordQuery query, CancellationToken cancellationToken, Id<CuppingForm>? form = null) =>
        await FindAsync(query, id, form, cancellationToken);

    private static async Task<Results<Ok<RecordReply>, NotFound>> FindAsync(
        CupperRecordQuery query, Id<Person> cupper, Id<CuppingForm>? form, CancellationToken cancellationToken) =>
        await Cupping.CupperRecordView.FindAsync(query, cupper, form, cancellationToken) is { } found
            ? TypedResults.Ok(RecordReply.Of(found))
            : TypedResults.NotFound();
}

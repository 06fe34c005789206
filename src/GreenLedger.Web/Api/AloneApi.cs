using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Cupping alone for scripts: the same acts as on the pages.</summary>
internal static class AloneApi
{
    public static void MapAlone(this IEndpointRouteBuilder cupping)
    {
        cupping.MapPost("/sessions/alone", StartAsync).WithName("CupAlone").WithSummary("Starts a session of the caller alone, with nothing to lay out")
            .WithDescription("Samples go by their label codes. With `undersides` the codes go under the bowls and the sheets are written for places, so that the cupper does not know; without it the coffee is known.");
        cupping.MapGet("/sessions/{id}/undersides", UndersidesAsync).WithName("ReadUndersides").WithSummary("Which code is to be written under the bowls of which sample, for the one who cups alone")
            .WithDescription("The places that each code ends up in are known to nobody. Not found once every sheet is in, and for anybody else.");
        cupping.MapPost("/sessions/{id}/undersides", TurnAsync).WithName("TurnBowlsOver").WithSummary("The code found under the bowls of each place, once every sheet is in")
            .WithDescription("`codes` names a code for each place, as `P1`. The sheets become those of the samples.");
    }

    private static async Task<Created<OpenSessionReply>> StartAsync(
        AloneRequest request, LedgerContext db, AloneStart alone, HttpContext http, CancellationToken cancellationToken)
    {
        var labels = (request.Samples ?? []).Select(label => (label ?? "").Trim().ToUpperInvariant()).Distinct().ToList();
        var found = await db.Samples.AsNoTracking().Where(sample => labels.Contains(sample.LabelCode)).Select(sample => new { sample.Id, sample.LabelCode }).ToListAsync(cancellationToken);
        var missing = labels.Except(found.Select(sample => sample.LabelCode)).FirstOrDefault();
        Rule.Require(missing is null, $"No sample here has the label code {missing}.", nameof(request.Samples));
        var session = await alone.StartAsync(
            [.. found.Select(sample => sample.Id)], await CuppingApi.FindFormAsync(db, request.Form, cancellationToken), request.CupsPerSample ?? AloneStart.UsualCups,
            request.Undersides ? Blinding.Undersides : Blinding.Open, http.User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/cupping/sessions/{session.Id}", OpenSessionReply.Of(session));
    }

    private static async Task<Results<Ok<List<UndersideReply>>, NotFound>> UndersidesAsync(
        Id<CuppingSession> id, LedgerContext db, SessionQuery query, HttpContext http, CancellationToken cancellationToken) =>
        await TurnedBowls.FindAsync(db, id, http.User.Person(), cancellationToken) is { Session.IsByPlace: true, MayLook: false }
            ? TypedResults.Ok((await query.KeyAsync(id, cancellationToken)).Select(row => new UndersideReply(row.Code, row.LabelCode)).ToList())
            : TypedResults.NotFound();

    private static async Task<Results<Ok<OpenSessionReply>, NotFound>> TurnAsync(
        Id<CuppingSession> id, UndersidesRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        Rule.Require(request.Codes is not null && request.Codes.Values.All(code => code is not null), "Give the code found under the bowls of each place.", nameof(request.Codes));
        await using var turn = await db.TakeTurnAsync(id, cancellationToken);
        if (await TurnedBowls.FindAsync(db, id, http.User.Person(), cancellationToken) is not { } bowls)
        {
            return TypedResults.NotFound();
        }

        await bowls.TurnAsync(db, request.Codes, clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Ok(OpenSessionReply.Of(bowls.Session));
    }
}

/// <summary>What one cupper alone cups: label codes; the 100-point form and three bowls of each where nothing is said.</summary>
internal sealed record AloneRequest(IReadOnlyList<string?>? Samples, string? Form = null, int? CupsPerSample = null, bool Undersides = false);

/// <summary>The code to write under the bowls of a sample.</summary>
internal sealed record UndersideReply(string Code, string LabelCode);

/// <summary>The code found under the bowls of each place.</summary>
internal sealed record UndersidesRequest(IReadOnlyDictionary<string, string>? Codes);

using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Documents.Arrivals;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Costs;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Claims on arrivals: opening, correspondence, outcome.</summary>
internal static class ClaimsApi
{
    private const int MostClaims = 1_000;

    public static void MapClaims(this RouteGroupBuilder arrivals)
    {
        arrivals.MapGet("/claims", ListAsync).WithName("ListClaims").WithSummary("Claims, the newest number first; at most 1,000");
        arrivals.MapGet("/claims/{id}", FindAsync).WithName("ReadClaim").WithSummary("One claim with its evidence, correspondence and outcomes");
        arrivals.MapGet("/claims/{id}/letter", LetterAsync).WithName("ReadClaimLetter").WithSummary("The claim as a letter to the seller, a PDF");
        arrivals.MapPost("/{id}/claims", OpenAsync).WithName("OpenClaim").WithSummary("Opens a claim on an arrival")
            .WithDescription("Each ground must be shown by the verdicts. Evidence, deadlines and amount are frozen; a claim after its deadline needs `lateReason` and is flagged as late.");
        arrivals.MapPost("/claims/{id}/notes", NoteAsync).WithName("NoteOnClaim").WithSummary("Writes down what was said or written about a claim");
        arrivals.MapPost("/claims/{id}/settle", SettleAsync).WithName("SettleClaim").WithSummary("Enters how a claim ended")
            .WithDescription("An amount goes into the cost of the lot as a posting of that day, at the exchange rate of that day.");
        arrivals.MapPost("/claims/{id}/reopen", ReopenAsync).WithName("ReopenClaim").WithSummary("Takes an outcome back with a reason. It stays on record, and its posting is withdrawn");
    }

    private static async Task<Ok<List<ClaimReply>>> ListAsync(
        ClaimQuery query, CancellationToken cancellationToken, string? search = null, bool? open = null, ClaimOutcome? outcome = null, bool? late = null, Guid? arrivalId = null)
    {
        var filter = new ClaimFilter(search, open, outcome, late, arrivalId is { } arrival ? new Id<Arrival>(arrival) : null);
        return TypedResults.Ok((await query.ListAsync(filter, null, 0, MostClaims, cancellationToken)).Select(ClaimReply.Of).ToList());
    }

    private static async Task<Results<Ok<ClaimReply>, NotFound>> FindAsync(
        Id<Claim> id, ClaimQuery query, ContractQuery contracts, FixingStateQuery states, HouseZone house, CancellationToken cancellationToken)
    {
        if (await query.FindAsync(id, cancellationToken) is not { } claim)
        {
            return TypedResults.NotFound();
        }

        var contract = (await contracts.FindAsync(claim.ContractId, cancellationToken))!;
        return TypedResults.Ok(ClaimReply.Of(claim) with { Fixing = FixingStateReply.Of(await states.OfAsync(contract, house.Today, cancellationToken)) });
    }

    private static async Task<Results<FileStreamHttpResult, NotFound>> LetterAsync(
        Id<Claim> id, ClaimQuery query, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (await query.FindAsync(id, cancellationToken) is not { } claim)
        {
            return TypedResults.NotFound();
        }

        var file = new MemoryStream();
        ClaimLetter.Write(claim, http.User.PersonName(), clock.GetUtcNow(), file, house.Zone);
        file.Position = 0;
        return TypedResults.File(file, ClaimLetter.MediaType, $"{claim.Ref}.pdf");
    }

    private static async Task<Results<Created<ClaimReply>, NotFound>> OpenAsync(
        Id<Arrival> id, OpenClaimRequest request, LedgerContext db, ArrivalCaseQuery cases, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        if (await cases.FindAsync(id, cancellationToken) is not { } found)
        {
            return TypedResults.NotFound();
        }

        var others = await db.Claims.AsNoTracking().Where(claim => claim.ArrivalId == id).ToListAsync(cancellationToken);
        var claim = Claim.Open(await db.Claims.NextRefAsync(house.Today, cancellationToken), found.Basis(), request.Order(), others, http.User.Person(), clock.GetUtcNow());
        db.Add(claim);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Created($"/api/arrivals/claims/{claim.Id}", ClaimReply.Of(claim));
    }

    private static Task<Results<Ok<ClaimReply>, NotFound>> NoteAsync(
        Id<Claim> id, ClaimNoteRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(id, db, claim =>
        {
            claim.Note(request.Side, request.On, request.Text, http.User.Person(), clock.GetUtcNow());
            return Task.CompletedTask;
        }, cancellationToken);

    private static Task<Results<Ok<ClaimReply>, NotFound>> SettleAsync(
        Id<Claim> id, SettleRequest request, LedgerContext db, ClaimActs acts, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(id, db, claim =>
        {
            claim.Settle(request.Outcome, request.Amount?.Money(nameof(request.Amount)), request.On, request.Words, http.User.Person(), clock.GetUtcNow());
            return acts.PostAsync(claim, http.User.Person(), cancellationToken);
        }, cancellationToken);

    private static async Task<Results<Ok<ClaimReply>, NotFound>> ReopenAsync(
        Id<Claim> id, ReasonRequest request, LedgerContext db, ClaimActs acts, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var others = await db.Claims.BesideAsync(id, cancellationToken);
        return await ActAsync(id, db, claim =>
        {
            claim.Reopen(others, request.Reason, http.User.Person(), clock.GetUtcNow());
            return acts.PostAsync(claim, http.User.Person(), cancellationToken);
        }, cancellationToken);
    }

    private static async Task<Results<Ok<ClaimReply>, NotFound>> ActAsync(Id<Claim> id, LedgerContext db, Func<Claim, Task> act, CancellationToken cancellationToken)
    {
        if (await db.Claims.Whole().SingleOrDefaultAsync(claim => claim.Id == id, cancellationToken) is not { } claim)
        {
            return TypedResults.NotFound();
        }

        await act(claim);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ClaimReply.Of(claim));
    }
}

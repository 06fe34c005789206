using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Arrivals: receipts, their corrections, and both verdicts.</summary>
internal static class ReceiptsApi
{
    private const int MostArrivals = 1_000;

    public static void MapReceipts(this RouteGroupBuilder arrivals)
    {
        arrivals.MapGet("", ListAsync).WithName("ListArrivals").WithSummary("What was received, the latest first; at most 1,000");
        arrivals.MapGet("/{id}", FindAsync).WithName("ReadArrival").WithSummary("One arrival with its receipt, both verdicts and the deadlines of claims");
        arrivals.MapPost("", ReceiveAsync).WithName("ReceiveLot").WithSummary("Receives a lot of a shipment")
            .WithDescription("More than was shipped needs a `note` that says why. The sample approved on record and the newest arrival sample are proposed for the verdict.");
        arrivals.MapPost("/{id}/corrections", CorrectAsync).WithName("CorrectReceipt").WithSummary("Puts a receipt right with a reason. How it stood before stays on record");
    }

    private static async Task<Ok<List<ArrivalRowReply>>> ListAsync(ArrivalListQuery query, CancellationToken cancellationToken, string? search = null) =>
        TypedResults.Ok((await query.ListAsync(search, 0, MostArrivals, cancellationToken)).Select(ArrivalRowReply.Of).ToList());

    private static async Task<Results<Ok<StoredArrivalReply>, NotFound>> FindAsync(Id<Arrival> id, ArrivalCaseQuery cases, FixingStateQuery states, HouseZone house, CancellationToken cancellationToken) =>
        await cases.FindAsync(id, cancellationToken) is { } found
            ? TypedResults.Ok(StoredArrivalReply.Of(found) with { Fixing = FixingStateReply.Of(await states.OfAsync(found.Contract, house.Today, cancellationToken)) })
            : TypedResults.NotFound();

    private static async Task<Results<Created<StoredArrivalReply>, NotFound>> ReceiveAsync(
        ReceiveLotRequest request, LedgerContext db, ReceivingQuery query, ArrivalCaseQuery cases, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        Rule.Require(request.Receipt is not null, "Send the receipt.", nameof(request.Receipt));
        if (await query.FindAsync(new Id<ShipmentLot>(request.ShipmentLotId), cancellationToken) is not { } receiving)
        {
            return TypedResults.NotFound();
        }

        var arrival = receiving.Receive(request.Receipt.Receipt(), http.User.Person(), clock.GetUtcNow());
        db.Add(arrival);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/arrivals/{arrival.Id}", StoredArrivalReply.Of((await cases.FindAsync(arrival.Id, cancellationToken))!));
    }

    private static async Task<Results<Ok<StoredArrivalReply>, NotFound>> CorrectAsync(
        Id<Arrival> id, CorrectionRequest request, LedgerContext db, ArrivalCaseQuery cases, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        Rule.Require(request.Receipt is not null, "Send the receipt as it should stand.", nameof(request.Receipt));
        if (await db.Arrivals.Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } arrival)
        {
            return TypedResults.NotFound();
        }

        var shipment = await db.Shipments.AsNoTracking().Whole().SingleAsync(one => one.Id == arrival.ShipmentId, cancellationToken);
        arrival.Correct(shipment, request.Receipt.Receipt(), request.Reason, http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(StoredArrivalReply.Of((await cases.FindAsync(id, cancellationToken))!));
    }
}

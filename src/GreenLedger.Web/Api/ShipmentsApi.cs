using GreenLedger.Data;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Shipments: lots of signed contracts on their way.</summary>
internal static class ShipmentsApi
{
    private const int MostShipments = 1_000;

    public static void MapShipmentsApi(this IEndpointRouteBuilder api)
    {
        var shipments = api.MapGroup("/shipments").WithTags("Shipments");
        shipments.MapGet("", ListAsync).WithName("ListShipments").WithSummary("Shipments, the newest number first; at most 1,000.");
        shipments.MapGet("/{id}", FindAsync).WithName("ReadShipment").WithSummary("One shipment with its lots, containers, and what is left of its contracts.");
        shipments.MapPost("", AddAsync).WithName("AddShipment").WithSummary("Writes a shipment down; its day on board moves the goods of its contracts.")
            .WithDescription("A lot without the approval that its contract asks for needs a `reason`: it stays on record as a breach and never counts as approved.");
        shipments.MapPut("/{id}", ChangeAsync).WithName("ChangeShipment").WithSummary("Puts a shipment right by its papers.");
        shipments.MapPost("/{id}/documents", AddDocumentAsync).WithName("AddShipmentDocument").WithSummary("Adds a document to a shipment's checklist.");
        shipments.MapPut("/{id}/documents/{documentId}", DocumentAsync).WithName("StateShipmentDocument").WithSummary("Says how far a document of a shipment is: needed, asked, received or notNeeded.");
        shipments.MapPostFile("/{id}/documents/{documentId}/file", FileAsync).WithName("FileShipmentDocument").WithSummary("Attaches the file of a document, which is received with it.");
        shipments.MapDocumentRules();
    }

    private static async Task<Ok<List<ShipmentReply>>> ListAsync(ShipmentQuery query, CancellationToken cancellationToken, string? search = null) =>
        TypedResults.Ok((await query.ListAsync(search, 0, MostShipments, cancellationToken)).Select(ShipmentReply.Of).ToList());

    private static async Task<Results<Ok<ShipmentReply>, NotFound>> FindAsync(Id<Shipment> id, ShipmentQuery query, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } row ? TypedResults.Ok(ShipmentReply.Of(row)) : TypedResults.NotFound();

    private static async Task<Created<ShipmentReply>> AddAsync(
        ShipmentRequest request, LedgerContext db, ShipmentQuery query, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        var shipment = new Shipment(await db.Shipments.NextRefAsync(house.Today, cancellationToken), request.Passage());
        db.Add(shipment);
        await EnterAsync(shipment, request, query, http, clock, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Created($"/api/shipments/{shipment.Id}", ShipmentReply.Of((await query.FindAsync(shipment.Id, cancellationToken))!));
    }

    private static async Task<Results<Ok<ShipmentReply>, NotFound>> ChangeAsync(
        Id<Shipment> id, ShipmentRequest request, LedgerContext db, ShipmentQuery query, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (await db.Shipments.Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } shipment)
        {
            return TypedResults.NotFound();
        }

        shipment.Sail(request.Passage());
        await EnterAsync(shipment, request, query, http, clock, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ShipmentReply.Of((await query.FindAsync(id, cancellationToken))!));
    }

    private static async Task EnterAsync(Shipment shipment, ShipmentRequest request, ShipmentQuery query, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        shipment.Load(request.ContainerLines());
        var lading = await query.LadingAsync(shipment, request.ContractLots(), cancellationToken);
        lading.Enter(shipment, request.Lading(), request.Reason, http.User.Person(), clock.GetUtcNow());
    }

    private static Task<Results<Ok<ShipmentReply>, NotFound>> AddDocumentAsync(
        Id<Shipment> id, AddDocumentRequest request, LedgerContext db, ShipmentQuery query, CancellationToken cancellationToken) =>
        ActAsync(id, db, query, shipment => shipment.AddDocument(request.Name), cancellationToken);

    private static Task<Results<Ok<ShipmentReply>, NotFound>> DocumentAsync(
        Id<Shipment> id, Id<ShipmentDocument> documentId, DocumentRequest request, LedgerContext db, ShipmentQuery query, CancellationToken cancellationToken) =>
        ActAsync(id, db, query, shipment => shipment.Document(documentId, request.State, request.On, request.Reason), cancellationToken);

    /// <param name="receivedOn">The day it was received; today when left out.</param>
    private static async Task<Results<Ok<ShipmentReply>, NotFound>> FileAsync(
        Id<Shipment> id, Id<ShipmentDocument> documentId, IFormFile file, LedgerContext db, ShipmentQuery query, AttachmentRules rules, HttpContext http, HouseZone house, TimeProvider clock,
        CancellationToken cancellationToken, DateOnly? receivedOn = null)
    {
        var stored = await rules.ReadAsync(file, http.User.Person(), clock.GetUtcNow(), cancellationToken);
        return await ActAsync(id, db, query, shipment =>
        {
            var attachment = new Attachment(PapersOf.Shipment, shipment.Id.Value, stored, http.User.Person(), clock.GetUtcNow());
            shipment.Document(documentId, DocumentState.Received, receivedOn ?? house.Today, null, attachment);
            db.AddRange(stored, attachment);
        }, cancellationToken);
    }

    private static async Task<Results<Ok<ShipmentReply>, NotFound>> ActAsync(
        Id<Shipment> id, LedgerContext db, ShipmentQuery query, Action<Shipment> act, CancellationToken cancellationToken)
    {
        if (await db.Shipments.Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } shipment)
        {
            return TypedResults.NotFound();
        }

        act(shipment);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ShipmentReply.Of((await query.FindAsync(id, cancellationToken))!));
    }
}

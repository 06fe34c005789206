using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>The stock ledger: what lies where, and the movements that say so.</summary>
internal static class StockApi
{
    public static void MapStockApi(this IEndpointRouteBuilder api)
    {
        var stock = api.MapGroup("/stock").WithTags("Stock");
        stock.MapGet("", ListAsync).WithName("ListStock").WithSummary("What lies where now, or at the end of the day `on`");
        stock.MapGet("/lots/{id}/movements", MovementsAsync).WithName("ListMovements").WithSummary("Every movement of a lot, the latest first");
        stock.MapPost("/receipts", ReceiveAsync).WithName("ReceiveIntoStock").WithSummary("Takes an arrival into a warehouse");
        stock.MapPost("/movements", MoveAsync).WithName("MoveStock").WithSummary("Opening stock, return, gain, release, sample, sale, loss or transfer")
            .WithDescription("`kind` `TransferOut` with `toWarehouseId` moves coffee between warehouses. What comes needs `packedKg`; what leaves takes its share of it.");
        stock.MapPost("/movements/{id}/reversal", ReverseAsync).WithName("ReverseMovement").WithSummary("Takes a movement back; both lines stay");
        stock.MapGet("/lots/{id}/reservations", ReservationsAsync).WithName("ListReservations").WithSummary("What is reserved of a lot, and for what");
        stock.MapPost("/reservations", ReserveAsync).WithName("ReserveStock").WithSummary("Keeps kilograms back for a use");
        stock.MapPost("/reservations/{id}/end", FreeAsync).WithName("EndReservation").WithSummary("Lets a reserve go");
        stock.MapStockHouseApi();
        stock.MapCountsApi();
        stock.MapOpeningApi();
        stock.MapPurposesApi();
        stock.MapBlendsApi();
        stock.MapPost("/calculate/allocation", Allocation).WithName("CalculateAllocation").WithSummary("Shares an amount over lots to the cent; stores nothing");
        stock.MapPost("/calculate/reorder", Reorder).WithName("CalculateReorder").WithSummary("Cover in weeks and the reorder point; stores nothing");
    }

    private static async Task<Ok<List<StockReply>>> ListAsync(StockQuery query, CancellationToken cancellationToken, string? search = null, Guid? warehouseId = null, DateOnly? on = null) =>
        TypedResults.Ok((await query.ListAsync(search, warehouseId is { } id ? new Id<Warehouse>(id) : null, on, cancellationToken)).Select(StockReply.Of).ToList());

    private static async Task<Results<Ok<List<MovementReply>>, NotFound>> MovementsAsync(Id<Lot> id, LedgerContext db, StockQuery query, CancellationToken cancellationToken) =>
        await db.Lots.AnyAsync(lot => lot.Id == id, cancellationToken)
            ? TypedResults.Ok((await query.MovementsAsync(id, cancellationToken)).Select(MovementReply.Of).ToList())
            : TypedResults.NotFound();

    private static async Task<Results<Ok<WrittenReply>, NotFound>> ReceiveAsync(ReceiptRequest request, LedgerContext db, StockActs acts, HttpContext http, CancellationToken cancellationToken) =>
        await SavedAsync(await acts.ReceiveAsync(new Id<Arrival>(request.ArrivalId), new Id<Warehouse>(request.WarehouseId), new MovementNote(request.On, request.Document, null), http.User.Person(), cancellationToken), db, cancellationToken);

    private static async Task<Results<Ok<WrittenReply>, NotFound>> MoveAsync(MovementRequest request, LedgerContext db, StockActs acts, HttpContext http, CancellationToken cancellationToken)
    {
        var (lot, warehouse, by) = (new Id<Lot>(request.LotId), new Id<Warehouse>(request.WarehouseId), http.User.Person());
        if (!await db.Lots.AnyAsync(one => one.Id == lot, cancellationToken))
        {
            return TypedResults.NotFound();
        }

        var weighed = Kilograms(request.WeighedKg, nameof(request.WeighedKg));
        var note = new MovementNote(request.On, request.Document, request.Reason, request.PurposeId is { } purpose ? new Id<Purpose>(purpose) : null);
        return await SavedAsync(await (request.Kind switch
        {
            MovementKind.TransferOut => acts.TransferAsync(lot, warehouse, new Id<Warehouse>(request.ToWarehouseId ?? Guid.Empty), request.Bags, weighed, note, by, cancellationToken),
            var kind when MovementKinds.Inward.Contains(kind) => acts.AddAsync(lot, warehouse, kind, new StockAmount(request.Bags, Packed(request), weighed), note, by, cancellationToken),
            var kind => acts.TakeAsync(lot, warehouse, kind, request.Bags, weighed, note, by, cancellationToken),
        }), db, cancellationToken);
    }

    private static async Task<Results<Ok<WrittenReply>, NotFound>> ReverseAsync(Id<Movement> id, ReversalRequest request, LedgerContext db, StockActs acts, HttpContext http, CancellationToken cancellationToken) =>
        await SavedAsync(await acts.ReverseAsync(id, new MovementNote(request.On, null, request.Reason), http.User.Person(), cancellationToken), db, cancellationToken);

    private static async Task<Ok<List<ReservedReply>>> ReservationsAsync(Id<Lot> id, StockQuery query, CancellationToken cancellationToken) =>
        TypedResults.Ok((await query.ReservationsAsync(id, cancellationToken)).Select(row => new ReservedReply(row.Id.Value, row.Warehouse, row.Weight.Kilograms, row.Use, row.Who, row.At)).ToList());

    private static async Task<Ok<ReservationReply>> ReserveAsync(ReservationRequest request, LedgerContext db, StockActs acts, HttpContext http, CancellationToken cancellationToken)
    {
        var reservation = await acts.ReserveAsync(new Id<Lot>(request.LotId), new Id<Warehouse>(request.WarehouseId), Kilograms(request.WeightKg, nameof(request.WeightKg)), request.Use, request.PurposeId is { } purpose ? new Id<Purpose>(purpose) : null, http.User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ReservationReply.Of(reservation));
    }

    private static async Task<Results<Ok<ReservationReply>, NotFound>> FreeAsync(Id<Reservation> id, LedgerContext db, StockActs acts, HttpContext http, CancellationToken cancellationToken)
    {
        if (await acts.FreeAsync(id, http.User.Person(), cancellationToken) is not { } reservation)
        {
            return TypedResults.NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ReservationReply.Of(reservation));
    }

    [StoresNothing]
    private static Ok<AllocationReply> Allocation(AllocationRequest request)
    {
        Rule.Require(Currency.TryParse(request.Currency, null, out var currency), "Name a currency by its ISO 4217 code.", nameof(request.Currency));
        Rule.Require(request.Amount is > -1_000_000_000m and < 1_000_000_000m, "The amount lies below a thousand million.", nameof(request.Amount));
        Rule.Require(request.Lots is { Count: <= 10_000 }, "Send the lots that share the amount, at most 10,000.", nameof(request.Lots));
        Rule.Require(request.Lots.All(lot => lot.Value is >= 0m and <= 1_000_000_000_000m), "A value lies between 0 and a million million.", nameof(request.Lots));
        var sharers = request.Lots.Select(lot => new CostSharer(Id<Lot>.New(), Kilograms(lot.WeightKg, nameof(lot.WeightKg)), lot.Value)).ToList();
        var parts = CostAllocation.Of(Money.Of(request.Amount, currency), request.Basis, sharers);
        return TypedResults.Ok(new AllocationReply([.. request.Lots.Zip(parts, (lot, part) => new PartReply(lot.Name, MoneyReply.Of(part)))]));
    }

    [StoresNothing]
    private static Ok<ReorderReply> Reorder(ReorderRequest request)
    {
        var use = Kilograms(request.WeeklyUseKg, nameof(request.WeeklyUseKg));
        Rule.Require(request.BagKg is >= 0.1m and <= 2000m, "A bag holds between 0.1 and 2,000 kg.", nameof(request.BagKg));
        var point = StockCover.Reorder(use, Kilograms(request.UseSpreadKg, nameof(request.UseSpreadKg)), request.LeadWeeks, request.LeadSpreadWeeks, request.SafetyFactor);
        return TypedResults.Ok(new ReorderReply(
            StockCover.Weeks(Kilograms(request.AvailableKg, nameof(request.AvailableKg)), use), point.SafetyStock.Kilograms, point.Point.Kilograms, point.Bags(Weight.FromKilograms(request.BagKg))));
    }

    private static async Task<Results<Ok<WrittenReply>, NotFound>> SavedAsync(Movement? movement, LedgerContext db, CancellationToken cancellationToken)
    {
        if (movement is null)
        {
            return TypedResults.NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(WrittenReply.Of(movement));
    }

    /// <summary>Never worked out from what was weighed: the two are kept apart.</summary>
    private static Weight Packed(MovementRequest request)
    {
        Rule.Require(request.PackedKg is not null, "Say how many kilograms the bags held as packed.", nameof(request.PackedKg));
        return Kilograms(request.PackedKg.Value, nameof(request.PackedKg));
    }

    private static Weight Kilograms(decimal kilograms, string field)
    {
        Rule.Require(kilograms is >= 0m and <= 100_000_000m, "The weight lies between 0 and 100,000,000 kg.", field);
        return Weight.FromKilograms(kilograms);
    }
}

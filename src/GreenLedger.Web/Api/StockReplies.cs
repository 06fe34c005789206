using GreenLedger.Data.Stock;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Web.Api;

internal sealed record WarehouseReply(Guid Id, string Name);

internal sealed record StockReply(Guid LotId, string LotRef, string LotName, Guid WarehouseId, string Warehouse, int Bags, decimal PackedKg, decimal WeighedKg, decimal ReservedKg, decimal AvailableKg)
{
    public static StockReply Of(StockRow row) => new(
        row.LotId.Value, row.LotRef, row.LotName, row.WarehouseId.Value, row.Warehouse, row.Bags, row.Packed.Kilograms, row.Weighed.Kilograms, row.Reserved.Kilograms, row.Available.Kilograms);
}

/// <summary>Bags and weights are below zero for what left.</summary>
internal sealed record MovementReply(
    Guid Id, MovementKind Kind, string Warehouse, int Bags, decimal PackedKg, decimal WeighedKg, DateOnly On, string? Document, string? Reason, string By, DateTimeOffset At, Guid? ArrivalId, Guid? ReversesId, bool IsReversed)
{
    public static MovementReply Of(MovementRow row) => new(
        row.Id.Value, row.Kind, row.Warehouse, row.Bags, row.Packed.Kilograms, row.Weighed.Kilograms, row.On, row.Document, row.Reason, row.Who, row.At, row.ArrivalId?.Value, row.ReversesId?.Value, row.IsReversed);
}

/// <summary>A movement as it was written.</summary>
internal sealed record WrittenReply(Guid Id, MovementKind Kind, Guid LotId, Guid WarehouseId, int Bags, decimal PackedKg, decimal WeighedKg, DateOnly On)
{
    public static WrittenReply Of(Movement movement) => new(
        movement.Id.Value, movement.Kind, movement.LotId.Value, movement.WarehouseId.Value, movement.Bags, movement.Packed.Kilograms, movement.Weighed.Kilograms, movement.On);
}

/// <summary>Any movement but a receipt and a reversal. A transfer needs <c>ToWarehouseId</c>; what comes needs <c>PackedKg</c>.</summary>
internal sealed record MovementRequest(
    Guid LotId, Guid WarehouseId, MovementKind Kind, int Bags, decimal WeighedKg, DateOnly On, decimal? PackedKg = null, Guid? ToWarehouseId = null, string? Document = null, string? Reason = null, Guid? PurposeId = null);

internal sealed record ReceiptRequest(Guid ArrivalId, Guid WarehouseId, DateOnly On, string? Document = null);

internal sealed record ReversalRequest(DateOnly On, string Reason);

internal sealed record ReservationRequest(Guid LotId, Guid WarehouseId, decimal WeightKg, string? Use = null, Guid? PurposeId = null);

internal sealed record ReservationReply(Guid Id, decimal WeightKg, string Use, DateTimeOffset At, DateTimeOffset? EndedAt)
{
    public static ReservationReply Of(Reservation reservation) => new(reservation.Id.Value, reservation.Weight.Kilograms, reservation.Use, reservation.At, reservation.EndedAt);
}

/// <summary>A reserve that stands.</summary>
internal sealed record ReservedReply(Guid Id, string Warehouse, decimal WeightKg, string Use, string By, DateTimeOffset At);

internal sealed record ShareRequest(string Name, decimal WeightKg, decimal Value);

/// <summary>An amount and the lots that share it.</summary>
internal sealed record AllocationRequest(decimal Amount, string Currency, ShareBasis Basis, IReadOnlyList<ShareRequest> Lots);

internal sealed record AllocationReply(IReadOnlyList<PartReply> Parts);

internal sealed record PartReply(string Name, MoneyReply Part);

internal sealed record ReorderRequest(decimal WeeklyUseKg, decimal UseSpreadKg, decimal LeadWeeks, decimal LeadSpreadWeeks, decimal SafetyFactor, decimal AvailableKg, decimal BagKg = 60m);

internal sealed record ReorderReply(decimal? CoverWeeks, decimal SafetyStockKg, decimal ReorderPointKg, long Bags);

using GreenLedger.Data.Stock;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Pricing;
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

internal sealed record PostingRequest(
    decimal Amount, string Currency, DateOnly On, string Document, Guid? ContractId = null, Guid? ShipmentId = null, Guid? LotId = null, CostStage? Stage = null, string? From = null, ShareBasis? Basis = null);

/// <summary>The stage is null for the coffee itself.</summary>
internal sealed record PostingReply(
    Guid Id, CostStage? Stage, MoneyReply Amount, MoneyReply House, DateOnly? RateOn, DateOnly On, string Document, string? From, ShareBasis Basis, Guid? ContractId, Guid? ShipmentId, Guid? LotId, string? WithdrawnBecause)
{
    public static PostingReply Of(CostPosting posting) => new(
        posting.Id.Value, posting.Stage, MoneyReply.Of(posting.Amount), MoneyReply.Of(posting.House), posting.RateOn, posting.On, posting.Document, posting.From, posting.Basis,
        posting.ContractId?.Value, posting.ShipmentId?.Value, posting.LotId?.Value, posting.WithdrawnBecause);
}

internal sealed record PostingShareReply(Guid LotId, string LotRef, MoneyReply Part);

internal sealed record SharedPostingReply(PostingReply Posting, IReadOnlyList<PostingShareReply> Shares);

/// <summary>What of a posting a lot bears.</summary>
internal sealed record CostPartReply(Guid PostingId, string Document, DateOnly On, CostStage? Stage, MoneyReply Part);

internal sealed record CostStageReply(CostStage? Stage, decimal? EstimatedPerKg, decimal ActualPerKg, MoneyReply Billed);

internal sealed record LotCostReply(MoneyReply Total, MoneyReply Accounting, decimal LandedKg, decimal? PerKg, decimal? AccountingPerKg, decimal? EstimatedPerKg, bool HasCoffee, IReadOnlyList<CostStageReply> Stages, IReadOnlyList<CostPartReply> Parts)
{
    public static LotCostReply Of(LotCost cost) => new(
        MoneyReply.Of(cost.Total), MoneyReply.Of(cost.Accounting), cost.Landed.Kilograms, cost.PerKilogram, cost.AccountingPerKilogram, cost.EstimatedPerKilogram, cost.HasCoffee,
        [.. cost.Stages.Select(stage => new CostStageReply(stage.Stage, stage.Estimated, stage.Actual, MoneyReply.Of(stage.Billed)))],
        [.. cost.Parts.Select(part => new CostPartReply(part.Posting.Id.Value, part.Posting.Document, part.Posting.On, part.Posting.Stage, MoneyReply.Of(part.Part)))]);
}

internal sealed record ValuedReply(string Name, Guid? LotId, decimal LeftKg, MoneyReply? Value, decimal? PerKg, IReadOnlyList<string> NotBilled);

internal sealed record ValueReply(DateOnly On, ValuationMethod Method, IReadOnlyList<ValuedReply> Rows)
{
    public static ValueReply Of(DateOnly on, ValuationMethod method, IReadOnlyList<ValuedRow> rows) => new(
        on, method, [.. rows.Select(row => new ValuedReply(row.Name, row.LotId?.Value, row.Left.Kilograms, row.Cost is { } cost ? MoneyReply.Of(cost) : null, row.PerKilogram, row.Without))]);
}

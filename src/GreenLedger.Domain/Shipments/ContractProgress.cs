using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Shipments;

/// <summary>How far one lot of a contract has come: agreed, announced on shipments that have not sailed, on board, and received.</summary>
/// <param name="Lot">What is agreed.</param>
/// <param name="Tolerance">By how much the quantity may differ.</param>
/// <param name="AnnouncedBags">On shipments without a day on board.</param>
/// <param name="Announced">Net weight of those.</param>
/// <param name="ShippedBags">On board, whether received since or not.</param>
/// <param name="Shipped">Net weight of those by the shipping papers.</param>
/// <param name="ReceivedBags">Of the bags on board, those of parts that were received.</param>
public sealed record LotProgress(ContractLot Lot, Percent Tolerance, int AnnouncedBags, Weight Announced, int ShippedBags, Weight Shipped, int ReceivedBags)
{
    /// <summary>At least the agreed net weight less the tolerance is on board.</summary>
    public bool IsShippedInFull => Shipped.Kilograms * 100m >= Lot.Net.Kilograms * (100m - Tolerance.Points);

    /// <summary>More than the agreed net weight and the tolerance is on board.</summary>
    public bool IsOver => Shipped.Kilograms * 100m > Lot.Net.Kilograms * (100m + Tolerance.Points);

    /// <summary>What is still to be shipped; 0 once it is shipped within the tolerance.</summary>
    public int BagsLeft => IsShippedInFull ? 0 : Math.Max(0, Lot.Bags - ShippedBags);

    /// <summary>What is still to be shipped; 0 once it is shipped within the tolerance.</summary>
    public Weight Left => IsShippedInFull ? Weight.Zero : Lot.Net - Shipped;
}

/// <summary>What of a contract is on board, received and left, lot by lot, from the shipments written down.</summary>
public sealed record ContractProgress(IReadOnlyList<LotProgress> Lots)
{
    public bool IsShippedInFull => Lots.All(lot => lot.IsShippedInFull);

    /// <summary>Nothing that is on board is still to be received.</summary>
    public bool IsReceived => Lots.All(lot => lot.ReceivedBags == lot.ShippedBags);

    public int BagsLeft => Lots.Sum(lot => lot.BagsLeft);

    public Weight Left => Lots.Aggregate(Weight.Zero, (sum, lot) => sum + lot.Left);

    /// <param name="contract">Its lots by the terms that hold.</param>
    /// <param name="shipments">All that carry lots of it; others are left out.</param>
    /// <param name="received">The lots of shipments that were received.</param>
    public static ContractProgress Of(Contract contract, IEnumerable<Shipment> shipments, IReadOnlySet<Id<ShipmentLot>> received)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var parts = shipments.SelectMany(shipment => shipment.Lots.Select(lot => (IsOnBoard: shipment.ShippedOn is not null, Lot: lot)))
            .ToLookup(part => part.Lot.ContractLotId);
        return new ContractProgress([.. contract.Lots.Select(lot => Of(lot, contract.Terms.Weights.Tolerance, [.. parts[lot.Id]], received))]);
    }

    private static LotProgress Of(ContractLot lot, Percent tolerance, (bool IsOnBoard, ShipmentLot Lot)[] parts, IReadOnlySet<Id<ShipmentLot>> received)
    {
        var announced = parts.Where(part => !part.IsOnBoard).Select(part => part.Lot).ToList();
        var shipped = parts.Where(part => part.IsOnBoard).Select(part => part.Lot).ToList();
        return new LotProgress(
            lot,
            tolerance,
            announced.Sum(part => part.Bags),
            announced.Aggregate(Weight.Zero, (sum, part) => sum + part.Net),
            shipped.Sum(part => part.Bags),
            shipped.Aggregate(Weight.Zero, (sum, part) => sum + part.Net),
            shipped.Where(part => received.Contains(part.Id)).Sum(part => part.Bags));
    }
}

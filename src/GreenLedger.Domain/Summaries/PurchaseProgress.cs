using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Summaries;

/// <summary>How far a contract's goods have come: what shipped, what arrived, and what is still to come.</summary>
/// <param name="Shipments">Every shipment that carries a lot of the contract.</param>
/// <param name="Arrivals">Every arrival of the contract's lots.</param>
public sealed record PurchaseProgress(Contract Contract, IReadOnlyList<Shipment> Shipments, IReadOnlyList<Arrival> Arrivals)
{
    /// <summary>Of all lots together.</summary>
    public Weight ToCome => Contract.Lots.Aggregate(Weight.Zero, (sum, lot) => sum + ToComeOf(lot));

    /// <summary>Takes from shipments and arrivals of many contracts what belongs to one.</summary>
    public static PurchaseProgress Of(Contract contract, IEnumerable<Shipment> shipments, IEnumerable<Arrival> arrivals)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var carried = shipments.Where(shipment => shipment.Lots.Any(lot => lot.ContractId == contract.Id)).ToList();
        var lots = carried.SelectMany(shipment => shipment.Lots.Where(lot => lot.ContractId == contract.Id)).Select(lot => lot.Id).ToHashSet();
        return new PurchaseProgress(contract, carried, [.. arrivals.Where(arrival => lots.Contains(arrival.ShipmentLotId))]);
    }

    /// <summary>By the shipping papers; as contracted where the contract says that it shipped and there are no papers.</summary>
    public IEnumerable<(DateOnly On, Weight Net)> ShippedOf(ContractLot lot) => Shipments.Count > 0
        ? Shipments.Where(one => one.ShippedOn is not null).SelectMany(one => one.Lots.Where(line => line.ContractLotId == lot.Id).Select(line => (one.ShippedOn!.Value, line.Net)))
        : Contract.ShippedOn is { } on ? [(on, lot.Net)] : [];

    /// <summary>By the receipts; as received before this ledger began, or as contracted, where the contract says that it arrived and there are no papers.</summary>
    public IEnumerable<(DateOnly On, Weight Shipped, Weight Landed)> ArrivedOf(ContractLot lot) => Shipments.Count > 0
        ? ArrivalsOf(lot).Select(one => (one.ReceivedOn, one.Shipped, one.Landed))
        : Contract.ArrivedOn is { } on ? [(lot.ReceivedOn ?? on, lot.Net, lot.Received ?? lot.Net)] : [];

    public IEnumerable<Arrival> ArrivalsOf(ContractLot lot) =>
        Arrivals.Where(arrival => Shipments.Any(one => one.Lots.Any(line => line.Id == arrival.ShipmentLotId && line.ContractLotId == lot.Id)));

    /// <summary>Once all is on board, what is afloat; before, what was agreed and has not arrived, unless the rest lies within the tolerance of the contract.</summary>
    public Weight ToComeOf(ContractLot lot)
    {
        ArgumentNullException.ThrowIfNull(lot);
        if (!Contract.IsOpen)
        {
            return Weight.Zero;
        }

        var arrived = ArrivedOf(lot).Aggregate(Weight.Zero, (sum, one) => sum + one.Shipped);
        var agreed = Contract.Goods is GoodsState.Shipped or GoodsState.Arrived ? ShippedOf(lot).Aggregate(Weight.Zero, (sum, one) => sum + one.Net) : lot.Net;
        var rest = agreed - arrived;
        var isRest = arrived > Weight.Zero && rest.Kilograms <= lot.Net.Kilograms * Contract.Terms.Weights.Tolerance.Fraction;
        return rest > Weight.Zero && !isRest ? rest : Weight.Zero;
    }
}

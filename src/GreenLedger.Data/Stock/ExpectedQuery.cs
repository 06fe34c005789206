using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>What is on its way to the warehouse: contracted, afloat, or received and not taken into stock.</summary>
public sealed class ExpectedQuery(LedgerContext db, StockQuery stock)
{
    /// <param name="lots">The lots that are asked about.</param>
    /// <param name="wayDays">Days from shipment to the warehouse, where no arrival is planned.</param>
    /// <param name="today">What was received and not taken in is expected today.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<ILookup<Id<Lot>, Expected>> ListAsync(IReadOnlyCollection<Id<Lot>> lots, int wayDays, DateOnly today, CancellationToken cancellationToken)
    {
        var contracts = await db.Contracts.AsNoTracking().Whole()
            .Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Cancelled && contract.Goods != GoodsState.Closed)
            .Where(contract => contract.Lots.Any(lot => lots.Contains(lot.LotId))).ToListAsync(cancellationToken);
        var shipments = await db.Shipments.AsNoTracking().Whole().OfContracts([.. contracts.Select(contract => contract.Id)]).ToListAsync(cancellationToken);
        var parts = shipments.SelectMany(shipment => shipment.Lots.Select(lot => lot.Id)).ToList();
        var received = (await db.Arrivals.Where(arrival => parts.Contains(arrival.ShipmentLotId)).Select(arrival => arrival.ShipmentLotId).ToListAsync(cancellationToken)).ToHashSet();
        var waiting = (await stock.WaitingAsync(cancellationToken)).Select(row => row.Id).ToList();
        var landed = await db.Arrivals.AsNoTracking().Where(arrival => waiting.Contains(arrival.Id) && lots.Contains(arrival.LotId)).ToListAsync(cancellationToken);
        return contracts.SelectMany(contract => Of(contract, shipments, received, wayDays))
            .Concat(landed.Select(arrival => (arrival.LotId, new Expected("received, not in stock yet", today, arrival.Landed, true))))
            .Where(row => lots.Contains(row.LotId) && row.Item2.Weight > Weight.Zero)
            .OrderBy(row => row.Item2.On).ToLookup(row => row.LotId, row => row.Item2);
    }

    /// <summary>Each part on a shipment on its own day, and what is on none yet after the last day of shipment.</summary>
    private static IEnumerable<(Id<Lot> LotId, Expected)> Of(Contract contract, List<Shipment> shipments, HashSet<Id<ShipmentLot>> received, int wayDays)
    {
        foreach (var shipment in shipments)
        {
            var day = shipment.PlannedArrival ?? (shipment.ShippedOn ?? shipment.PlannedDeparture ?? contract.ShipUntil).AddDays(wayDays);
            foreach (var lot in shipment.Lots.Where(lot => lot.ContractId == contract.Id && !received.Contains(lot.Id)))
            {
                yield return (lot.LotId, new Expected($"{contract.Ref}, {shipment.Ref}", day, lot.Net, shipment.PlannedArrival is not null));
            }
        }

        foreach (var lot in ContractProgress.Of(contract, shipments, received).Lots)
        {
            yield return (lot.Lot.LotId, new Expected(contract.Ref, contract.ShipUntil.AddDays(wayDays), lot.Left - lot.Announced, false));
        }
    }
}

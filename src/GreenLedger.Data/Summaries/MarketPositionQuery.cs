using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>Reads contracts, arrivals and stock for the position by futures month.</summary>
public sealed class MarketPositionQuery(LedgerContext db)
{
    /// <summary>As it stands now.</summary>
    public async Task<MarketPosition> FindAsync(CancellationToken cancellationToken)
    {
        var (stock, without) = await StockByContractAsync(cancellationToken);
        var held = stock.Keys.ToList();
        var contracts = await db.Contracts.AsNoTracking().Whole()
            .Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Cancelled)
            .Where(contract => contract.Goods != GoodsState.Closed || held.Contains(contract.Id))
            .ToListAsync(cancellationToken);
        var toCome = await ToComeAsync(contracts, cancellationToken);
        return MarketPosition.Of(contracts.Select(contract => new HeldContract(contract, toCome[contract.Id], stock.GetValueOrDefault(contract.Id))), await LooseAsync(without, cancellationToken));
    }

    private async Task<IReadOnlyDictionary<Id<Contract>, Weight>> ToComeAsync(List<Contract> contracts, CancellationToken cancellationToken)
    {
        var ids = contracts.ConvertAll(contract => contract.Id);
        var shipments = await db.Shipments.AsNoTracking().Whole().Where(shipment => shipment.Lots.Any(lot => ids.Contains(lot.ContractId))).ToListAsync(cancellationToken);
        var shipped = shipments.ConvertAll(shipment => shipment.Id);
        var arrivals = await db.Arrivals.AsNoTracking().Where(arrival => shipped.Contains(arrival.ShipmentId)).ToListAsync(cancellationToken);
        return contracts.ToDictionary(contract => contract.Id, contract => PurchaseProgress.Of(contract, shipments, arrivals).ToCome);
    }

    /// <summary>Against which month the newest offer of each lot asks a differential.</summary>
    private async Task<IReadOnlyList<LooseStock>> LooseAsync(Dictionary<Id<Lot>, Weight> without, CancellationToken cancellationToken)
    {
        var ids = without.Keys.ToList();
        var offers = (await db.Offers.AsNoTracking().Where(offer => ids.Contains(offer.LotId)).ToListAsync(cancellationToken)).ToLookup(offer => offer.LotId);
        return [.. without.Select(lot => new LooseStock(offers[lot.Key].OrderBy(offer => offer.RevisedOn).LastOrDefault()?.Differential?.Month, lot.Value))];
    }

    /// <summary>The contract from before that brought opening stock, by its lot: of several the last that was agreed.</summary>
    private async Task<Dictionary<Id<Lot>, Id<Contract>>> FromBeforeAsync(CancellationToken cancellationToken)
    {
        var lines = await db.Contracts.AsNoTracking().Where(contract => contract.SourceId != null && contract.Goods != GoodsState.Cancelled)
            .SelectMany(contract => contract.Lots, (contract, line) => new { contract.Id, contract.Ref, line.LotId, line.ReceivedOn })
            .Where(line => line.ReceivedOn != null).ToListAsync(cancellationToken);
        return lines.GroupBy(line => line.LotId).ToDictionary(lot => lot.Key, lot => lot.OrderBy(line => line.Ref, StringComparer.Ordinal).Last().Id);
    }

    /// <summary>
    /// What lies of each lot, shared over the contracts that brought it by what each of them landed; opening stock of a past purchase is its contract's.
    /// </summary>
    private async Task<(Dictionary<Id<Contract>, Weight> ByContract, Dictionary<Id<Lot>, Weight> Without)> StockByContractAsync(CancellationToken cancellationToken)
    {
        var balances = await db.Holdings.GroupBy(holding => holding.LotId).Select(lot => new { LotId = lot.Key, Micrograms = lot.Sum(one => one.Weighed.Micrograms) })
            .Where(lot => lot.Micrograms > 0).ToListAsync(cancellationToken);
        var comings = await db.Movements
            .Where(movement => (movement.Kind == MovementKind.Receipt || movement.Kind == MovementKind.Opening) && !db.Movements.Any(back => back.ReversesId == movement.Id))
            .Select(movement => new
            {
                movement.LotId,
                movement.Weighed.Micrograms,
                ContractId = db.Arrivals.Where(arrival => arrival.Id == movement.ArrivalId).SelectMany(arrival => db.Shipments.SelectMany(shipment => shipment.Lots).Where(lot => lot.Id == arrival.ShipmentLotId).Select(lot => (Id<Contract>?)lot.ContractId)).FirstOrDefault(),
            }).ToListAsync(cancellationToken);
        var byLot = comings.ToLookup(one => one.LotId);
        var before = await FromBeforeAsync(cancellationToken);
        var (byContract, without) = (new Dictionary<Id<Contract>, Weight>(), new Dictionary<Id<Lot>, Weight>());
        foreach (var lot in balances)
        {
            var from = byLot[lot.LotId].Where(one => one.Micrograms > 0).ToList();
            var parts = from.Count == 0 ? [] : LargestRemainder.Split(lot.Micrograms, [.. from.Select(one => (decimal)one.Micrograms)]);
            without[lot.LotId] = new Weight(lot.Micrograms - parts.Sum());
            foreach (var (one, part) in from.Zip(parts))
            {
                if ((one.ContractId ?? (before.TryGetValue(lot.LotId, out var past) ? past : null)) is { } id)
                {
                    byContract[id] = byContract.GetValueOrDefault(id) + new Weight(part);
                }
                else
                {
                    without[lot.LotId] += new Weight(part);
                }
            }
        }

        return (byContract, without);
    }
}

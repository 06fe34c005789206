using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>Reads everything that was done with a lot from the decision to the stock.</summary>
public sealed class WholeWayQuery(LedgerContext db, ArrivalCaseQuery cases)
{
    /// <param name="lotId">The lot.</param>
    /// <param name="day">The house's day of a moment.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<WholeWay> FindAsync(Id<Lot> lotId, Func<DateTimeOffset, DateOnly> day, CancellationToken cancellationToken)
    {
        var arrivals = await db.Arrivals.AsNoTracking().Where(arrival => arrival.LotId == lotId).Select(arrival => arrival.Id).ToListAsync(cancellationToken);
        var judged = new List<JudgedArrival>();
        foreach (var id in arrivals)
        {
            var found = (await cases.FindAsync(id, cancellationToken))!;
            judged.Add(new JudgedArrival(found.Arrival, found.Weight(), found.Quality()));
        }

        return new WholeWay(
            lotId,
            await db.Decisions.AsNoTracking().Where(decision => decision.LotId == lotId && decision.WithdrawnAt == null).ToListAsync(cancellationToken),
            await db.Contracts.AsNoTracking().Whole().Where(contract => contract.Goods != GoodsState.Cancelled && contract.Lots.Any(lot => lot.LotId == lotId)).ToListAsync(cancellationToken),
            await db.Shipments.AsNoTracking().Whole().Where(shipment => shipment.Lots.Any(lot => lot.LotId == lotId)).ToListAsync(cancellationToken),
            judged,
            await db.Claims.AsNoTracking().Where(claim => claim.LotId == lotId).ToListAsync(cancellationToken),
            await StockedAsync(lotId, cancellationToken),
            day);
    }

    private async Task<IReadOnlyList<StockedPart>> StockedAsync(Id<Lot> lotId, CancellationToken cancellationToken) => (await db.Movements.AsNoTracking()
        .Where(movement => movement.LotId == lotId && movement.ArrivalId != null && movement.ReversesId == null && !db.Movements.Any(back => back.ReversesId == movement.Id))
        .Join(db.Warehouses, movement => movement.WarehouseId, warehouse => warehouse.Id, (movement, warehouse) => new { movement, warehouse.Name })
        .ToListAsync(cancellationToken))
        .ConvertAll(part => new StockedPart(part.movement, part.Name));
}

using GreenLedger.Data.Contracts;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>Reads across the rooms what has happened to a lot.</summary>
public sealed class LotWayQuery(LedgerContext db)
{
    public async Task<IReadOnlyList<WayStop>> FindAsync(Id<Lot> lotId, CancellationToken cancellationToken)
    {
        var offer = await db.Offers.AsNoTracking().Where(one => one.LotId == lotId)
            .OrderBy(one => one.FirstOfferedOn).FirstOrDefaultAsync(cancellationToken);
        var sample = await db.Samples.AsNoTracking().Where(one => one.LotId == lotId && one.ReceivedOn != null)
            .OrderByDescending(one => one.ReceivedOn).FirstOrDefaultAsync(cancellationToken);
        var result = await db.SampleResults.AsNoTracking()
            .Where(one => one.LotId == lotId)
            .OrderByDescending(one => one.HeldOn)
            .Select(one => new { one.HeldOn, one.Fitted })
            .FirstOrDefaultAsync(cancellationToken);
        var decision = await db.Decisions.AsNoTracking().Where(one => one.LotId == lotId && one.WithdrawnAt == null)
            .OrderByDescending(one => one.At).FirstOrDefaultAsync(cancellationToken);
        var contract = await db.Contracts.AsNoTracking().Whole()
            .Where(one => one.Goods != GoodsState.Cancelled && one.Lots.Any(lot => lot.LotId == lotId))
            .OrderByDescending(one => one.Ref).FirstOrDefaultAsync(cancellationToken);
        var zone = await db.ZoneAsync(cancellationToken);
        var (shipped, arrived, stocked) = await TravelledAsync(lotId, cancellationToken);
        return LotWay.Of(new WayFacts(
            offer?.FirstOfferedOn,
            offer?.StatedScore,
            sample?.ReceivedOn,
            sample?.Weight,
            result?.HeldOn,
            result?.Fitted,
            decision is null ? null : zone.Day(decision.At),
            decision?.Outcome,
            decision?.Quantity,
            contract is null ? null : contract.Versions[0].SignedOn ?? zone.Day(contract.Versions[0].WrittenAt),
            contract is null ? null : contract.IsSigned ? contract.Ref : $"{contract.Ref}, draft",
            shipped?.On,
            shipped?.Weight,
            arrived?.On,
            arrived?.Weight,
            stocked?.On,
            stocked?.Weight));
    }

    /// <summary>The last day on board, received and moved in stock, and the weight of all parts there; null where none is.</summary>
    private async Task<(Reached? Shipped, Reached? Arrived, Reached? Stocked)> TravelledAsync(Id<Lot> lotId, CancellationToken cancellationToken)
    {
        var shipped = await db.Shipments.AsNoTracking().Where(shipment => shipment.ShippedOn != null)
            .SelectMany(shipment => shipment.Lots.Where(lot => lot.LotId == lotId), (shipment, lot) => new Reached(shipment.ShippedOn!.Value, lot.Net)).ToListAsync(cancellationToken);
        var arrived = await db.Arrivals.AsNoTracking().Where(arrival => arrival.LotId == lotId)
            .Select(arrival => new Reached(arrival.ReceivedOn, arrival.Landed)).ToListAsync(cancellationToken);
        var moved = await db.Movements.AsNoTracking().Where(movement => movement.LotId == lotId)
            .Select(movement => new Reached(movement.On, movement.Weighed)).ToListAsync(cancellationToken);
        return (Last(shipped), Last(arrived), Last(moved));
    }

    private static Reached? Last(List<Reached> parts) => parts.Count == 0
        ? null
        : new Reached(parts.Max(part => part.On), parts.Aggregate(Weight.Zero, (sum, part) => sum + part.Weight));

    private sealed record Reached(DateOnly On, Weight Weight);
}

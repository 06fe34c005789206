using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Costs;

internal static class LotFlows
{
    private static readonly MovementKind[] Going = [MovementKind.Release, MovementKind.SampleDrawn, MovementKind.Sale, MovementKind.Loss, MovementKind.Return];

    /// <summary>When the kilograms of these lots landed and when they were gone, up to a day; what is taken back by then never was.</summary>
    public static async Task<IReadOnlyDictionary<Id<Lot>, LotFlow>> FlowsAsync(this LedgerContext db, IReadOnlyCollection<Id<Lot>> lots, DateOnly? until, CancellationToken cancellationToken)
    {
        var arrived = await db.Arrivals.Where(arrival => lots.Contains(arrival.LotId) && (until == null || arrival.ReceivedOn <= until))
            .Select(arrival => new { arrival.LotId, On = arrival.ReceivedOn, Weight = arrival.Landed }).ToListAsync(cancellationToken);
        var counted = db.Movements.Where(movement => until == null || movement.On <= until);
        var moved = await counted.Where(movement => lots.Contains(movement.LotId) && (movement.Kind == MovementKind.Opening || Going.Contains(movement.Kind)) && !counted.Any(back => back.ReversesId == movement.Id))
            .Select(movement => new { movement.LotId, movement.On, movement.Kind, movement.Weighed }).ToListAsync(cancellationToken);
        var landed = arrived.Concat(moved.Where(one => one.Kind == MovementKind.Opening).Select(one => new { one.LotId, one.On, Weight = one.Weighed })).ToLookup(one => one.LotId, one => new WeightOn(one.On, one.Weight));
        var gone = moved.Where(one => one.Kind != MovementKind.Opening).ToLookup(one => one.LotId, one => new WeightOn(one.On, new Weight(-one.Weighed.Micrograms)));
        return lots.Distinct().ToDictionary(lot => lot, lot => new LotFlow([.. landed[lot]], [.. gone[lot]]));
    }
}

using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

/// <summary>One arrival of a list.</summary>
public sealed record ArrivalRow(
    Id<Arrival> Id, DateOnly ReceivedOn, string LotRef, string LotName, Id<Shipment> ShipmentId, string ShipmentRef, int ShippedBags, int Bags, Weight Shipped, Weight Landed)
{
    /// <summary>Landed less shipped, as a share of the shipped weight.</summary>
    public Percent Difference => Percent.Of((Landed - Shipped).Kilograms * 100m / Shipped.Kilograms);
}

/// <summary>Lists of arrivals.</summary>
public sealed class ArrivalListQuery(LedgerContext db)
{
    public Task<int> CountAsync(string? text, CancellationToken cancellationToken) => Holding(text).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<ArrivalRow>> ListAsync(string? text, int skip, int take, CancellationToken cancellationToken) =>
        await Holding(text).AsNoTracking()
            .OrderByDescending(arrival => arrival.ReceivedOn).ThenByDescending(arrival => arrival.Id)
            .Skip(skip).Take(take)
            .Join(db.Lots, arrival => arrival.LotId, lot => lot.Id, (arrival, lot) => new { arrival, lot })
            .Join(db.Shipments, pair => pair.arrival.ShipmentId, shipment => shipment.Id, (pair, shipment) => new { pair.arrival, pair.lot, shipment })
            .OrderByDescending(row => row.arrival.ReceivedOn).ThenByDescending(row => row.arrival.Id)
            .Select(row => new ArrivalRow(
                row.arrival.Id, row.arrival.ReceivedOn, row.lot.Ref, row.lot.Name, row.shipment.Id, row.shipment.Ref, row.arrival.ShippedBags, row.arrival.Bags, row.arrival.Shipped, row.arrival.Landed))
            .ToListAsync(cancellationToken);

    private IQueryable<Arrival> Holding(string? text)
    {
        var folded = SearchText.Of(text);
        return folded.Length == 0
            ? db.Arrivals
            : db.Arrivals.Where(arrival =>
                db.Lots.Any(lot => lot.Id == arrival.LotId && lot.SearchText.Contains(folded))
                || db.Shipments.Any(shipment => shipment.Id == arrival.ShipmentId && shipment.SearchText.Contains(folded)));
    }
}

using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

/// <summary>What is asked about when a lot of a shipment is received.</summary>
/// <param name="Contract">Told once all of it has come, and so loaded to be changed.</param>
/// <param name="Samples">Of the lot, received.</param>
/// <param name="Parts">Every shipment that carries lots of the contract.</param>
/// <param name="Received">All that came of those so far.</param>
public sealed record Receiving(
    Shipment Shipment, Id<ShipmentLot> ShipmentLotId, Contract Contract, IReadOnlyList<Sample> Samples, IReadOnlyList<Shipment> Parts, IReadOnlyList<Arrival> Received)
{
    /// <summary>The lot as received, its samples proposed; the contract has arrived with the last of its parts.</summary>
    /// <exception cref="RuleBrokenException">It is received already, or the receipt cannot be.</exception>
    public Arrival Receive(Receipt receipt, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!Received.Any(arrival => arrival.ShipmentLotId == ShipmentLotId), "This lot of the shipment is received already: correct its receipt instead.", nameof(ShipmentLotId));
        var arrival = new Arrival(Shipment, ShipmentLotId, receipt, by, at);
        arrival.Compare(
            Arrival.Approved(Contract, arrival.LotId, Samples),
            Samples.Where(sample => sample.Kind == SampleKind.Arrival).OrderBy(sample => sample.ReceivedOn).ThenBy(sample => sample.Id.Value).LastOrDefault());
        GoodsReceived.Tell(Contract, Parts, [.. Received, arrival], by, at);
        return arrival;
    }
}

/// <summary>Reads a lot of a shipment that is to be received.</summary>
public sealed class ReceivingQuery(LedgerContext db, ShipmentQuery shipments)
{
    /// <summary>Null where no shipment carries it.</summary>
    public async Task<Receiving?> FindAsync(Id<ShipmentLot> id, CancellationToken cancellationToken)
    {
        if (await db.Shipments.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Lots.Any(lot => lot.Id == id), cancellationToken) is not { } shipment)
        {
            return null;
        }

        var carried = shipment.Lots.Single(lot => lot.Id == id);
        var (parts, received) = await shipments.PartsAsync([carried.ContractId], cancellationToken);
        return new Receiving(
            shipment,
            id,
            await db.Contracts.Whole().SingleAsync(one => one.Id == carried.ContractId, cancellationToken),
            await db.Samples.AsNoTracking().Where(sample => sample.LotId == carried.LotId && sample.ReceivedOn != null).ToListAsync(cancellationToken),
            parts,
            received);
    }
}

using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>Tells a contract that its goods have arrived.</summary>
public static class GoodsReceived
{
    /// <summary>
    /// Once everything agreed is on board and every part of it was received, the goods have arrived: on the day of the last
    /// receipt. Before that nothing happens.
    /// </summary>
    /// <param name="contract">The one that is told.</param>
    /// <param name="shipments">All that carry lots of it.</param>
    /// <param name="arrivals">All that came of those shipments.</param>
    /// <param name="by">Who received the last of it.</param>
    /// <param name="at">When that is written down.</param>
    public static void Tell(Contract contract, IReadOnlyCollection<Shipment> shipments, IReadOnlyCollection<Arrival> arrivals, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var parts = shipments.SelectMany(shipment => shipment.Lots).Where(lot => lot.ContractId == contract.Id).Select(lot => lot.Id).ToHashSet();
        var mine = arrivals.Where(arrival => parts.Contains(arrival.ShipmentLotId)).ToList();
        if (mine.Count > 0 && contract.Allows(GoodsMove.Arrive) && ContractProgress.Of(contract, shipments, mine.Select(arrival => arrival.ShipmentLotId).ToHashSet()).IsReceived)
        {
            contract.Arrive(mine.Max(arrival => arrival.ReceivedOn), null, by, at);
        }
    }
}

using GreenLedger.Data.Shipments;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Data.Contracts;

/// <summary>How the fixing of a contract stands on a day.</summary>
/// <param name="Task">What is still to be fixed, and by when; null where nothing is open.</param>
/// <param name="Gap">Under- or over-fixed; null where neither, or where it is too soon to say.</param>
public sealed record FixingState(FixingTask? Task, FixingGap? Gap);

/// <summary>Reads how the fixing of a contract stands: its page, its arrivals and its claims tell the same.</summary>
public sealed class FixingStateQuery(FixingsQuery fixings, ShipmentQuery shipments)
{
    /// <param name="contract">Whole.</param>
    /// <param name="today">The day that is counted from.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<FixingState> OfAsync(Contract contract, DateOnly today, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var (parts, arrivals) = await shipments.PartsAsync([contract.Id], cancellationToken);
        return await OfAsync(contract, parts, arrivals, today, cancellationToken);
    }

    /// <summary>The same with the shipments that carry lots of it, and what came of them, at hand.</summary>
    public async Task<FixingState> OfAsync(Contract contract, IReadOnlyList<Shipment> parts, IReadOnlyList<Arrival> arrivals, DateOnly today, CancellationToken cancellationToken)
    {
        var task = FixingTask.Of(contract, await fixings.CalendarAsync(cancellationToken), today);
        var progress = ContractProgress.Of(contract, parts, arrivals.Select(arrival => arrival.ShipmentLotId).ToHashSet());
        var own = parts.SelectMany(part => part.Lots).Where(lot => lot.ContractId == contract.Id).Select(lot => lot.Id).ToHashSet();
        return new FixingState(task, FixingGap.Between(contract, progress, arrivals.Where(arrival => own.Contains(arrival.ShipmentLotId)), task));
    }
}

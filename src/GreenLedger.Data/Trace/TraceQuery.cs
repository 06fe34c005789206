using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>A trace as it was asked for: where it starts, and everything of the lots that it concerns.</summary>
/// <param name="Starts">The stops that it starts from.</param>
/// <param name="Unsure">Lots of the same producer of which nobody said on which plots they grew; only where it starts from a plot.</param>
public sealed record TraceCase(TraceFrom From, Guid Id, string Name, IReadOnlyList<TraceKey> Starts, TraceFacts Facts, IReadOnlyList<Lot> Unsure)
{
    public TraceWay Way() => Facts.Graph().Both(Starts);

    public IReadOnlyList<MassBalance> Balances() => [.. Facts.Lots.OrderBy(lot => lot.Ref, StringComparer.OrdinalIgnoreCase).Select(lot => MassBalance.Of(lot.Id, Facts))];
}

/// <summary>Reads the way of coffee, back and forth, in a number of statements that does not grow with it.</summary>
public sealed class TraceQuery(LedgerContext db)
{
    /// <summary>Null where there is no such record.</summary>
    public async Task<TraceCase?> FindAsync(TraceFrom from, Guid id, CancellationToken cancellationToken) => from switch
    {
        TraceFrom.Lot => await LotAsync(new Id<Lot>(id), cancellationToken),
        TraceFrom.Plot => await PlotAsync(new Id<Plot>(id), cancellationToken),
        TraceFrom.Producer => await ProducerAsync(new Id<Producer>(id), cancellationToken),
        TraceFrom.Contract => await ContractAsync(new Id<Contract>(id), cancellationToken),
        TraceFrom.Shipment => await ShipmentAsync(new Id<Shipment>(id), cancellationToken),
        TraceFrom.Release => await ReleaseAsync(new Id<Movement>(id), cancellationToken),
        _ => null,
    };

    private async Task<TraceCase?> LotAsync(Id<Lot> id, CancellationToken cancellationToken) =>
        await db.Lots.AsNoTracking().SingleOrDefaultAsync(lot => lot.Id == id, cancellationToken) is { } lot
            ? new TraceCase(TraceFrom.Lot, id.Value, $"{lot.Ref}, {lot.Name}", [new TraceKey(TraceKind.Lot, id.Value)], await FactsAsync([id], cancellationToken), [])
            : null;

    private async Task<TraceCase?> PlotAsync(Id<Plot> id, CancellationToken cancellationToken)
    {
        if (await db.Plots.AsNoTracking().SingleOrDefaultAsync(plot => plot.Id == id, cancellationToken) is not { } plot)
        {
            return null;
        }

        var lots = await db.DueDiligences.Where(held => held.Plots.Any(one => one.PlotId == id)).Select(held => held.LotId).ToListAsync(cancellationToken);
        var unsure = await Bought().AsNoTracking().Where(lot => lot.ProducerId == plot.ProducerId && !db.DueDiligences.Any(held => held.LotId == lot.Id && held.Plots.Any())).OrderBy(lot => lot.Ref).ToListAsync(cancellationToken);
        var facts = await FactsAsync(lots, cancellationToken);
        if (facts.Plots.All(known => known.Id != id))
        {
            facts = facts with { Plots = [.. facts.Plots, plot], Producers = [.. facts.Producers, .. await db.Producers.AsNoTracking().Where(one => one.Id == plot.ProducerId).ToListAsync(cancellationToken)] };
        }

        return new TraceCase(TraceFrom.Plot, id.Value, plot.Name, [new TraceKey(TraceKind.Plot, id.Value)], facts, unsure);
    }

    private async Task<TraceCase?> ProducerAsync(Id<Producer> id, CancellationToken cancellationToken)
    {
        if (await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } producer)
        {
            return null;
        }

        var plots = await db.Plots.Where(plot => plot.ProducerId == id).Select(plot => plot.Id).ToListAsync(cancellationToken);
        var own = await Bought().Where(lot => lot.ProducerId == id).Select(lot => lot.Id).ToListAsync(cancellationToken);
        var grown = await db.DueDiligences.Where(held => held.Plots.Any(one => plots.Contains(one.PlotId))).Select(held => held.LotId).ToListAsync(cancellationToken);
        var facts = await FactsAsync([.. own.Union(grown)], cancellationToken);
        var starts = plots.Select(plot => new TraceKey(TraceKind.Plot, plot.Value)).Append(new TraceKey(TraceKind.Producer, id.Value)).ToList();
        return new TraceCase(TraceFrom.Producer, id.Value, producer.Name, starts, facts.Producers.Any(one => one.Id == id) ? facts : facts with { Producers = [.. facts.Producers, producer] }, []);
    }

    private async Task<TraceCase?> ContractAsync(Id<Contract> id, CancellationToken cancellationToken)
    {
        if (await db.Contracts.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } contract)
        {
            return null;
        }

        var starts = contract.Lots.Select(line => new TraceKey(TraceKind.Contract, line.Id.Value)).ToList();
        return new TraceCase(TraceFrom.Contract, id.Value, contract.Ref, starts, await FactsAsync([.. contract.Lots.Select(line => line.LotId).Distinct()], cancellationToken), []);
    }

    private async Task<TraceCase?> ShipmentAsync(Id<Shipment> id, CancellationToken cancellationToken)
    {
        if (await db.Shipments.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } shipment)
        {
            return null;
        }

        var starts = shipment.Lots.Select(line => new TraceKey(TraceKind.Shipment, line.Id.Value)).ToList();
        return new TraceCase(TraceFrom.Shipment, id.Value, shipment.Ref, starts, await FactsAsync([.. shipment.Lots.Select(line => line.LotId).Distinct()], cancellationToken), []);
    }

    private async Task<TraceCase?> ReleaseAsync(Id<Movement> id, CancellationToken cancellationToken)
    {
        if (await db.Movements.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } movement)
        {
            return null;
        }

        var facts = await FactsAsync([movement.LotId], cancellationToken);
        var node = facts.Graph().Nodes.FirstOrDefault(one => one.Key.Id == id.Value && one.Key.Kind.IsGone());
        return node is null ? null : new TraceCase(TraceFrom.Release, id.Value, node.Detail is { } detail ? $"{node.Name}: {detail}" : node.Name, [node.Key], facts, []);
    }

    /// <summary>Lots that were contracted or lay in a warehouse: what was only offered has no way.</summary>
    private IQueryable<Lot> Bought() => db.Lots.Where(lot => db.ContractLots.Any(line => line.LotId == lot.Id) || db.Holdings.Any(holding => holding.LotId == lot.Id));

    private async Task<TraceFacts> FactsAsync(IReadOnlyCollection<Id<Lot>> ids, CancellationToken cancellationToken)
    {
        var lots = await db.Lots.AsNoTracking().Where(lot => ids.Contains(lot.Id)).ToListAsync(cancellationToken);
        var grown = await db.DueDiligences.AsNoTracking().Where(held => ids.Contains(held.LotId)).SelectMany(held => held.Plots, (held, one) => new { held.LotId, one.PlotId }).ToListAsync(cancellationToken);
        var plotIds = grown.ConvertAll(one => one.PlotId);
        var plots = await db.Plots.AsNoTracking().Where(plot => plotIds.Contains(plot.Id)).ToListAsync(cancellationToken);
        var producerIds = lots.Select(lot => lot.ProducerId).OfType<Id<Producer>>().Concat(plots.Select(plot => plot.ProducerId)).Distinct().ToList();
        var contracts = await db.Contracts.AsNoTracking().Whole().Where(contract => contract.Goods != GoodsState.Cancelled && contract.Lots.Any(line => ids.Contains(line.LotId))).ToListAsync(cancellationToken);
        var supplierIds = lots.Select(lot => lot.SupplierId).OfType<Id<Supplier>>().Concat(contracts.Select(contract => contract.SupplierId)).Distinct().ToList();
        return new TraceFacts(
            lots,
            grown.ConvertAll(one => (one.LotId, one.PlotId)),
            plots,
            await db.Producers.AsNoTracking().Where(one => producerIds.Contains(one.Id)).ToListAsync(cancellationToken),
            await db.Suppliers.AsNoTracking().Where(one => supplierIds.Contains(one.Id)).ToListAsync(cancellationToken),
            contracts,
            await db.Shipments.AsNoTracking().Whole().Where(shipment => shipment.Lots.Any(line => ids.Contains(line.LotId))).ToListAsync(cancellationToken),
            await db.Arrivals.AsNoTracking().Where(arrival => ids.Contains(arrival.LotId)).ToListAsync(cancellationToken),
            await db.Movements.AsNoTracking().Where(movement => ids.Contains(movement.LotId)).OrderBy(movement => movement.On).ThenBy(movement => movement.Id).ToListAsync(cancellationToken),
            await db.Holdings.AsNoTracking().Where(holding => ids.Contains(holding.LotId)).ToListAsync(cancellationToken),
            await db.Warehouses.AsNoTracking().ToListAsync(cancellationToken),
            await db.Purposes.AsNoTracking().ToListAsync(cancellationToken));
    }
}

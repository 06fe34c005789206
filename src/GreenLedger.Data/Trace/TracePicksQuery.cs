using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>Something that a trace may start from.</summary>
public sealed record TracePick(TraceFrom From, Guid Id, string Name, string? Detail);

/// <summary>Finds what a trace may start from.</summary>
public sealed class TracePicksQuery(LedgerContext db)
{
    /// <summary>Of each kind; what is more is found by a longer word.</summary>
    public const int Most = 12;

    /// <param name="text">Any part of a reference, name, bill of lading, container or batch; null for the newest.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<TracePick>> ListAsync(string? text, CancellationToken cancellationToken)
    {
        var folded = SearchText.Of(text);
        var lots = await db.Lots.AsNoTracking().Where(lot => lot.SearchText.Contains(folded) && db.Holdings.Any(holding => holding.LotId == lot.Id)).OrderByDescending(lot => lot.Id).Take(Most).ToListAsync(cancellationToken);
        var shipments = await db.Shipments.AsNoTracking().Where(shipment => shipment.SearchText.Contains(folded)).OrderByDescending(shipment => shipment.Ref).Take(Most).ToListAsync(cancellationToken);
        var contracts = await db.Contracts.AsNoTracking().Where(contract => contract.SearchText.Contains(folded)).OrderByDescending(contract => contract.Ref).Take(Most)
            .Join(db.Suppliers, contract => contract.SupplierId, supplier => supplier.Id, (contract, supplier) => new { contract.Id, contract.Ref, supplier.Name }).OrderByDescending(row => row.Ref).ToListAsync(cancellationToken);
        var producers = await db.Producers.AsNoTracking().Where(producer => producer.SearchText.Contains(folded) && db.Lots.Any(lot => lot.ProducerId == producer.Id && db.ContractLots.Any(line => line.LotId == lot.Id)))
            .OrderBy(producer => producer.Name).Take(Most).ToListAsync(cancellationToken);
        return
        [
            .. lots.Select(lot => new TracePick(TraceFrom.Lot, lot.Id.Value, lot.Ref, lot.Name)),
            .. shipments.Select(shipment => new TracePick(TraceFrom.Shipment, shipment.Id.Value, shipment.Ref, shipment.BillOfLading ?? shipment.Vessel)),
            .. contracts.Select(contract => new TracePick(TraceFrom.Contract, contract.Id.Value, contract.Ref, contract.Name)),
            .. producers.Select(producer => new TracePick(TraceFrom.Producer, producer.Id.Value, producer.Name, producer.Region)),
            .. await PlotsAsync(folded, cancellationToken),
            .. await GoneAsync(text, cancellationToken),
        ];
    }

    /// <summary>Names are folded here, since no column holds them folded.</summary>
    private async Task<IEnumerable<TracePick>> PlotsAsync(string folded, CancellationToken cancellationToken) => (await db.Plots.AsNoTracking()
        .Where(plot => db.DueDiligences.Any(held => held.Plots.Any(one => one.PlotId == plot.Id)))
        .Join(db.Producers, plot => plot.ProducerId, producer => producer.Id, (plot, producer) => new { plot.Id, plot.Name, Producer = producer.Name, producer.SearchText })
        .OrderBy(row => row.Name).ToListAsync(cancellationToken))
        .Where(row => row.SearchText.Contains(folded, StringComparison.Ordinal) || SearchText.Of(row.Name).Contains(folded, StringComparison.Ordinal)).Take(Most)
        .Select(row => new TracePick(TraceFrom.Plot, row.Id.Value, row.Name, row.Producer));

    /// <summary>By the number of its delivery note, batch or invoice, as typed or in capitals.</summary>
    private async Task<List<TracePick>> GoneAsync(string? text, CancellationToken cancellationToken)
    {
        MovementKind[] gone = [MovementKind.Release, MovementKind.Sale];
        var written = text?.Trim() ?? "";
        var capitals = written.ToUpperInvariant();
        var rows = await db.Movements.AsNoTracking()
            .Where(movement => gone.Contains(movement.Kind) && movement.Document != null && (movement.Document.Contains(written) || movement.Document.Contains(capitals)) && !db.Movements.Any(back => back.ReversesId == movement.Id))
            .OrderByDescending(movement => movement.On).ThenByDescending(movement => movement.Id).Take(Most)
            .Join(db.Lots, movement => movement.LotId, lot => lot.Id, (movement, lot) => new { movement.Id, movement.Kind, movement.On, movement.Document, lot.Ref })
            .ToListAsync(cancellationToken);
        return rows.ConvertAll(row => new TracePick(TraceFrom.Release, row.Id.Value, row.Document!, FormattableString.Invariant($"{row.Kind.Word()} of {row.Ref}, {row.On:d MMM yyyy}")));
    }
}

using GreenLedger.Data.Contracts;
using GreenLedger.Data.People;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

/// <summary>Reads what a claim without an arrival may be opened for.</summary>
public sealed class MissingGoodsQuery(LedgerContext db, ShipmentQuery shipments)
{
    /// <summary>Every lot of a contract, and every part of it that is on a shipment; null when there is no such contract.</summary>
    public async Task<IReadOnlyList<MissingGoods>?> ListAsync(Id<Contract> id, CancellationToken cancellationToken)
    {
        if (await db.Contracts.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } contract)
        {
            return null;
        }

        var (carriers, arrivals) = await shipments.PartsAsync([id], cancellationToken);
        var received = arrivals.Select(arrival => arrival.ShipmentLotId).ToHashSet();
        var progress = ContractProgress.Of(contract, carriers, received);
        var about = carriers.Select(shipment => shipment.Id.Value).Append(id.Value).ToList();
        var papers = await PapersAsync(about, cancellationToken);
        var notes = await NotesAsync(about, cancellationToken);
        return [.. progress.Lots.SelectMany(line => Parts(line, carriers)
            .Select(part => new MissingGoods(contract, progress, line, part.Shipment, part.Lot, part.Lot is { } lot && received.Contains(lot.Id), On(papers, part.Shipment), On(notes, part.Shipment))))];

        IReadOnlyList<T> On<T>(IEnumerable<(Guid About, T Paper)> all, Shipment? shipment) => [.. all.Where(one => one.About == id.Value || one.About == shipment?.Id.Value).Select(one => one.Paper)];
    }

    private static IEnumerable<(Shipment? Shipment, ShipmentLot? Lot)> Parts(LotProgress line, IReadOnlyList<Shipment> carriers) =>
    [
        (null, null),
        .. carriers.SelectMany(shipment => shipment.Lots.Where(lot => lot.ContractLotId == line.Lot.Id), (shipment, lot) => ((Shipment?)shipment, (ShipmentLot?)lot)),
    ];

    private async Task<IReadOnlyList<(Guid, Attachment)>> PapersAsync(IReadOnlyCollection<Guid> about, CancellationToken cancellationToken) =>
        [.. (await db.Attachments.AsNoTracking()
            .Where(paper => paper.RemovedAt == null && (paper.About == PapersOf.Contract || paper.About == PapersOf.Shipment) && about.Contains(paper.AboutId))
            .OrderBy(paper => paper.At).ThenBy(paper => paper.Id).ToListAsync(cancellationToken)).Select(paper => (paper.AboutId, paper))];

    private async Task<IReadOnlyList<(Guid, NotedOn)>> NotesAsync(IReadOnlyCollection<Guid> about, CancellationToken cancellationToken)
    {
        var zone = await db.ZoneAsync(cancellationToken);
        return [.. (await db.Notes.AsNoTracking()
            .Where(note => note.RemovedAt == null && (note.About == PapersOf.Contract || note.About == PapersOf.Shipment) && about.Contains(note.AboutId))
            .OrderBy(note => note.At).ThenBy(note => note.Id).ToListAsync(cancellationToken)).Select(note => (note.AboutId, new NotedOn(zone.Day(note.At), note.About, note.Text)))];
    }
}

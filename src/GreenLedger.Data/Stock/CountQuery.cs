using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>A lot's line of an open count, and where it is counted.</summary>
public sealed record OpenLine(Id<CountLine> Id, string Warehouse);

/// <summary>Finds a lot's line of a count, as a label or a typed reference names it.</summary>
public sealed class CountQuery(LedgerContext db)
{
    /// <summary>Where open counts have a line for this lot; one for each warehouse that it lies in by the ledger.</summary>
    public async Task<IReadOnlyList<OpenLine>> OpenLinesAsync(Id<Lot> lot, CancellationToken cancellationToken) =>
        await (from count in db.StockCounts.AsNoTracking()
               where count.ApprovedAt == null && count.DroppedBecause == null
               from line in count.Lines
               join holding in db.Holdings on line.HoldingId equals holding.Id
               where holding.LotId == lot
               join warehouse in db.Warehouses on count.WarehouseId equals warehouse.Id
               orderby warehouse.Name
               select new OpenLine(line.Id, warehouse.Name)).ToListAsync(cancellationToken);

    /// <summary>The lots that have this reference, whatever its case, or whose label holds this address.</summary>
    public async Task<IReadOnlyList<Lot>> LotsAsync(string @ref, CancellationToken cancellationToken)
    {
        var asked = @ref.Trim();
        if (Guid.TryParse(asked[(asked.LastIndexOf('/') + 1)..], out var named))
        {
            var id = new Id<Lot>(named);
            return await db.Lots.AsNoTracking().Where(lot => lot.Id == id).ToListAsync(cancellationToken);
        }

        var words = SearchText.Of(asked);
        var alike = await db.Lots.AsNoTracking().Where(lot => lot.SearchText.Contains(words)).ToListAsync(cancellationToken);
        return alike.FindAll(lot => asked.Equals(lot.Ref, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The line of a count whose lot has this reference, whatever its case, or whose label holds this address; null for none.</summary>
    public async Task<Id<CountLine>?> FindAsync(Id<StockCount> count, string @ref, CancellationToken cancellationToken)
    {
        var lines = await db.StockCounts.AsNoTracking().Where(one => one.Id == count).SelectMany(one => one.Lines)
            .Join(db.Holdings, line => line.HoldingId, holding => holding.Id, (line, holding) => new { line.Id, holding.LotId })
            .Join(db.Lots, line => line.LotId, lot => lot.Id, (line, lot) => new { line.Id, line.LotId, lot.Ref })
            .ToListAsync(cancellationToken);
        var asked = @ref.Trim();
        // What a label holds is an address that ends in the lot's identity.
        var found = lines.Find(line => asked.Equals(line.Ref, StringComparison.OrdinalIgnoreCase) || asked.EndsWith($"/{line.LotId}", StringComparison.OrdinalIgnoreCase));
        return found?.Id;
    }
}

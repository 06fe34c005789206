using GreenLedger.Data;
using GreenLedger.Data.Samples;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Stock.Reading;
using GreenLedger.Web.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Stock;

/// <summary>What stands for rows that do not say it themselves.</summary>
public sealed record OpeningDefaults(Id<Warehouse>? WarehouseId, DateOnly On);

/// <summary>A row that is taken, with what it would do.</summary>
/// <param name="LotId">Null for a lot that the ledger does not know.</param>
public sealed record OpeningLine(OpeningRow Row, Id<Lot>? LotId, Warehouse Warehouse, DateOnly On, string? CountryCode, Conversion? ToHouse);

/// <summary>A file of opening stock, read and judged; nothing of it is stored.</summary>
public sealed record OpeningPreview(string FileName, IReadOnlyList<OpeningLine> Lines, IReadOnlyList<RowSetAside> SetAside)
{
    public Weight Weighed => Lines.Aggregate(Weight.Zero, (sum, line) => sum + line.Row.Amount.Weighed);

    public int NewLots => Lines.Where(line => line.LotId is null).Select(line => line.Row.Lot).Distinct(StringComparer.OrdinalIgnoreCase).Count();
}

/// <summary>Takes in what a house had in stock when its ledger began, from a file, for the page and for the API alike.</summary>
public sealed class OpeningStock(LedgerContext db, KnownSampleQuery known, TimeProvider clock)
{
    /// <summary>Keeps the file until something follows; the preview's address names it.</summary>
    /// <exception cref="RuleBrokenException">It cannot be read.</exception>
    public async Task<Id<StoredFile>> ParkAsync(IFormFile file, Id<Person> by, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bytes = await file.BytesAsync(cancellationToken);
        OpeningList.Of(HouseTable.Read(bytes), Currency.Eur);
        return await db.ParkAsync(file, bytes, by, clock.GetUtcNow(), cancellationToken);
    }

    /// <summary>The parked file, judged; null when it was swept or is another person's.</summary>
    public async Task<OpeningPreview?> ReadParkedAsync(Id<StoredFile> id, Id<Person> by, OpeningDefaults defaults, CancellationToken cancellationToken) =>
        await db.ParkedAsync(id, by, cancellationToken) is { Content: { } content } parked
            ? await ReadAsync(parked.Name, content.Bytes, defaults, cancellationToken)
            : null;

    /// <summary>Reads and judges a file against the ledger as it is.</summary>
    /// <exception cref="RuleBrokenException">It cannot be read.</exception>
    public async Task<OpeningPreview> ReadAsync(string name, byte[] bytes, OpeningDefaults defaults, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(defaults);
        var house = await db.Houses.Select(one => one.Currency).SingleAsync(cancellationToken);
        var list = OpeningList.Of(HouseTable.Read(bytes), house);
        var names = await known.FindAsync(list.Rows.Select(row => row.Lot), cancellationToken);
        var judge = new OpeningJudge(list, names, await db.Warehouses.AsNoTracking().ToListAsync(cancellationToken), await db.Countries.AsNoTracking().ToListAsync(cancellationToken), defaults, house)
        {
            Today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime.AddHours(14)),
            Rates = new ExchangeRates(await db.ExchangeRates.AsNoTracking().Where(rate => rate.Kind == RateKind.Market).ToListAsync(cancellationToken)),
            Written = await WrittenAsync(names.Known.Values.Select(one => one.LotId).Distinct().ToList(), cancellationToken),
        };
        return new OpeningPreview(name, judge.Lines(), list.SetAside);
    }

    /// <summary>Stores every line in one go: lots and suppliers that are new, an opening movement each, and what it cost. Whoever calls saves nothing.</summary>
    public async Task StoreAsync(OpeningPreview preview, Id<Person> by, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(preview);
        Rule.Require(preview.Lines.Count > 0, "No row of this file can be taken in.", "File");
        var now = clock.GetUtcNow();
        var house = await db.Houses.Select(one => one.Currency).SingleAsync(cancellationToken);
        var lots = new Dictionary<string, Id<Lot>>(StringComparer.OrdinalIgnoreCase);
        var entries = new OpeningEntries(db, house, by, now);
        foreach (var line in preview.Lines)
        {
            var lotId = line.LotId ?? (lots.TryGetValue(line.Row.Lot, out var added) ? added : lots[line.Row.Lot] = await AddLotAsync(line, cancellationToken));
            var document = line.Row.Document ?? $"{Path.GetFileNameWithoutExtension(preview.FileName)}, row {line.Row.Row}";
            await entries.AddAsync(
                lotId, line.Warehouse.Id, line.Row.Amount, new MovementNote(line.On, line.Row.Document, $"From {preview.FileName}, row {line.Row.Row}."),
                line is { Row.Cost: { } cost, ToHouse: { } conversion } ? new Invoice(null, cost, conversion, line.On, document, line.Row.Supplier, ShareBasis.Value) : null, cancellationToken);
        }

        await db.SaveChangesAsync(cancellationToken);
    }

    private async Task<Id<Lot>> AddLotAsync(OpeningLine line, CancellationToken cancellationToken)
    {
        var row = line.Row;
        var lot = new Lot(row.Lot, row.Name ?? row.Lot, row.Supplier is { } name ? await SupplierAsync(name, cancellationToken) : null);
        lot.Grow(line.CountryCode, null, null, null, null, null);
        lot.Prepare(row.Crop, null, null, null);
        db.Add(lot);
        return lot.Id;
    }

    /// <summary>The supplier of this name, among those just added too; a new one where there is none.</summary>
    private async Task<Id<Supplier>> SupplierAsync(string name, CancellationToken cancellationToken)
    {
        var folded = SearchText.Of(name);
        bool IsMeant(Supplier one) => SearchText.Of(one.Name) == folded;
        var supplier = db.Suppliers.Local.FirstOrDefault(IsMeant) ?? (await db.Suppliers.ToListAsync(cancellationToken)).Find(IsMeant);
        if (supplier is null)
        {
            supplier = new Supplier(name, SupplierKind.Exporter);
            db.Add(supplier);
        }

        return supplier.Id;
    }

    /// <summary>Opening stock that stands already, so that a file loaded twice changes nothing.</summary>
    private async Task<IReadOnlySet<(Id<Lot>, Id<Warehouse>, DateOnly, Weight)>> WrittenAsync(List<Id<Lot>> lots, CancellationToken cancellationToken) => (await db.Movements
        .Where(movement => lots.Contains(movement.LotId) && movement.Kind == MovementKind.Opening && !db.Movements.Any(back => back.ReversesId == movement.Id))
        .Select(movement => new { movement.LotId, movement.WarehouseId, movement.On, movement.Weighed }).ToListAsync(cancellationToken))
        .Select(one => (one.LotId, one.WarehouseId, one.On, one.Weighed)).ToHashSet();
}

using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Shipments;
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
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using GreenLedger.Web.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Contracts;

/// <summary>A file of earlier contracts, read and judged; nothing of it is stored.</summary>
/// <param name="TakenOn">The day that this very file was taken in; null where it was not.</param>
public sealed record EarlierPreview(string FileName, byte[] Bytes, Id<StoredFile>? ParkedId, EarlierTaking Taking, DateTimeOffset? TakenOn)
{
    public Weight Net => Taking.Contracts.Aggregate(Weight.Zero, (sum, contract) => sum + contract.Contract.NetWeight);

    public int Past => Taking.Contracts.Count(contract => !contract.Contract.IsOpen);

    public Weight Left => Taking.Contracts.SelectMany(contract => contract.Lines).Aggregate(Weight.Zero, (sum, line) => sum + (line.Left?.Amount.Weighed ?? Weight.Zero));
}

/// <summary>Takes in what a house had bought before its ledger began, from a file, for the page and for the API alike.</summary>
public sealed class EarlierContracts(LedgerContext db, KnownSampleQuery known, HouseZone zone, TimeProvider clock)
{
    /// <summary>Keeps the file until something follows; the preview's address names it.</summary>
    /// <exception cref="RuleBrokenException">It cannot be read.</exception>
    public async Task<Id<StoredFile>> ParkAsync(IFormFile file, Id<Person> by, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bytes = await file.BytesAsync(cancellationToken);
        EarlierList.Of(HouseTable.Read(bytes), Currency.Eur, zone.Today);
        return await db.ParkAsync(file, bytes, by, clock.GetUtcNow(), cancellationToken);
    }

    /// <summary>The parked file, judged; null when it was swept or is another person's.</summary>
    public async Task<EarlierPreview?> ReadParkedAsync(Id<StoredFile> id, Id<Person> by, EarlierDefaults defaults, CancellationToken cancellationToken) =>
        await db.ParkedAsync(id, by, cancellationToken) is { Content: { } content } parked
            ? await ReadAsync(parked.Name, content.Bytes, parked.Id, by, defaults, cancellationToken)
            : null;

    /// <summary>Reads and judges a file against the ledger as it is.</summary>
    /// <exception cref="RuleBrokenException">It cannot be read.</exception>
    public async Task<EarlierPreview> ReadAsync(string name, byte[] bytes, Id<StoredFile>? parkedId, Id<Person> by, EarlierDefaults defaults, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(defaults);
        var house = await db.Houses.AsNoTracking().SingleAsync(cancellationToken);
        var list = EarlierList.Of(HouseTable.Read(bytes), house.Currency, zone.Today);
        return new EarlierPreview(name, bytes, parkedId, EarlierTaking.Of(list, await CaseAsync(list, house, defaults, by, cancellationToken)), await TakenOnAsync(bytes, cancellationToken));
    }

    /// <summary>
    /// Stores every contract that can be taken, in one go. It is read once more in its turn, so that of two who send one file at
    /// the same moment the second finds what the first has stored.
    /// </summary>
    /// <exception cref="RuleBrokenException">No contract of the file can be taken in.</exception>
    public async Task<EarlierPreview> StoreAsync(string name, byte[] bytes, Id<StoredFile>? parkedId, Id<Person> by, EarlierDefaults defaults, CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        var preview = await ReadAsync(name, bytes, parkedId, by, defaults, cancellationToken);
        var taking = preview.Taking;
        Rule.Require(taking.Contracts.Count > 0, "No contract of this file can be taken in.", "File");
        var now = clock.GetUtcNow();
        var house = await db.Houses.Select(one => one.Currency).SingleAsync(cancellationToken);
        var file = await db.KeptAsync(parkedId, name, bytes, by, now, cancellationToken);
        db.AddRange(taking.NewSuppliers);
        db.AddRange(taking.NewLots);
        var rules = await db.DocumentRules.AsNoTracking().Where(rule => rule.IsInUse).OrderBy(rule => rule.Position).ToListAsync(cancellationToken);
        var entries = new OpeningEntries(db, house, by, now);
        foreach (var earlier in taking.Contracts)
        {
            earlier.Contract.ComeFrom(file);
            db.Add(earlier.Contract);
            var lading = new Lading([earlier.Contract], earlier.Shipments, [], rules, earlier.Lines.ToDictionary(line => line.Lot.Id, line => line.Lot.CountryCode));
            foreach (var shipment in earlier.Shipments)
            {
                lading.ListDocuments(shipment);
                db.Add(shipment);
            }

            await AddLeftAsync(earlier, entries, name, house, cancellationToken);
        }

        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return preview;
    }

    private static async Task AddLeftAsync(EarlierContract earlier, OpeningEntries entries, string file, Currency house, CancellationToken cancellationToken)
    {
        foreach (var line in earlier.Lines)
        {
            if (line.Left is { } left)
            {
                var invoice = left.Cost is { MinorUnits: > 0 } cost
                    ? new Invoice(null, cost, new Conversion(house, house, null, null), line.Row.Arrival!.On, earlier.Contract.Ref, earlier.Supplier.Name, ShareBasis.Value)
                    : null;
                await entries.AddAsync(line.Lot.Id, left.Warehouse.Id, left.Amount, new MovementNote(left.On, earlier.Contract.Ref, $"From {file}, row {line.Row.Line.RowNumber}."), invoice, cancellationToken);
            }
        }
    }

    private async Task<EarlierCase> CaseAsync(EarlierList list, House house, EarlierDefaults defaults, Id<Person> by, CancellationToken cancellationToken)
    {
        var names = await known.FindAsync(list.Entries.SelectMany(entry => entry.Rows).Select(row => row.Lot).OfType<string>(), cancellationToken);
        var lots = names.Known.Values.Select(one => one.LotId).Distinct().ToList();
        var opened = await db.Movements.Where(movement => lots.Contains(movement.LotId) && movement.Kind == MovementKind.Opening && !db.Movements.Any(back => back.ReversesId == movement.Id))
            .Select(movement => movement.LotId).Distinct().ToListAsync(cancellationToken);
        var shipments = Numbers.From(await db.Shipments.NextRefAsync(zone.Today, cancellationToken));
        return new EarlierCase(
            house.Name, house.Currency,
            defaults.FormId is { } form ? await db.StandardForms.AsNoTracking().SingleOrDefaultAsync(one => one.Id == form, cancellationToken) : null,
            new ListReference(await db.Countries.AsNoTracking().ToListAsync(cancellationToken), await db.ProcessMethods.AsNoTracking().ToListAsync(cancellationToken), new ListChecks(), zone.Today),
            names,
            await db.Lots.AsNoTracking().Where(lot => lots.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, cancellationToken),
            await db.Suppliers.AsNoTracking().ToListAsync(cancellationToken),
            await db.Warehouses.AsNoTracking().ToListAsync(cancellationToken),
            (await db.Contracts.Select(contract => contract.Ref).ToListAsync(cancellationToken)).Select(number => number.ToUpperInvariant()).ToHashSet(),
            opened.ToHashSet(),
            new ExchangeRates(await db.ExchangeRates.AsNoTracking().Where(rate => rate.Kind == RateKind.Market).ToListAsync(cancellationToken)),
            defaults, shipments, by, clock.GetUtcNow());
    }

    private async Task<DateTimeOffset?> TakenOnAsync(byte[] bytes, CancellationToken cancellationToken)
    {
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        return await db.StoredFiles.Where(file => file.Sha256 == hash && db.Contracts.Any(contract => contract.SourceId == file.Id))
            .Select(file => (DateTimeOffset?)file.At).FirstOrDefaultAsync(cancellationToken);
    }
}

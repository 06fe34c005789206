using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace GreenLedger.Data.Offers;

/// <summary>From whom a list is: a supplier that is known, or one that comes with the list.</summary>
public sealed record ListSender(Supplier Supplier, bool IsNew);

/// <summary>What the ledger holds for a list to be read and compared, and the one transaction that stores it.</summary>
public sealed class ListStore(LedgerContext db)
{
    private const int ChunkSize = 1000;

    public async Task<ListChecks> ChecksAsync(CancellationToken cancellationToken) =>
        await db.ListChecks.AsNoTracking().OfHouseAsync(cancellationToken);

    public async Task<ListReference> ReferenceAsync(DateOnly today, CancellationToken cancellationToken) => new(
        await db.Countries.AsNoTracking().ToListAsync(cancellationToken),
        await db.ProcessMethods.AsNoTracking().ToListAsync(cancellationToken),
        await ChecksAsync(cancellationToken),
        today);

    /// <summary>
    /// The supplier of this name or identity; a name that is not known is a new supplier. Without either: the one whose
    /// lists have had these headings, else the sender that the titles name, else one called after the file.
    /// </summary>
    public async Task<ListSender> SenderAsync(string? supplier, ListLook look, ListReference reference, CancellationToken cancellationToken)
    {
        var known = string.IsNullOrWhiteSpace(supplier) ? await RememberedAsync(look, cancellationToken) : await FindAsync(supplier, cancellationToken);
        if (known is not null)
        {
            return new ListSender(known, IsNew: false);
        }

        var name = string.IsNullOrWhiteSpace(supplier) ? MappingProposal.SenderOf(look) ?? Path.GetFileNameWithoutExtension(look.FileName) : supplier.Trim();
        return await FindAsync(name, cancellationToken) is { } same ? new ListSender(same, IsNew: false) : new ListSender(New(name, look, reference), IsNew: true);
    }

    /// <summary>The supplier of this name or identity; null for a name that is not known.</summary>
    private async Task<Supplier?> FindAsync(string supplier, CancellationToken cancellationToken)
    {
        if (Id<Supplier>.TryParse(supplier, null, out var id))
        {
            var chosen = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
            Rule.Require(chosen is not null, "There is no such supplier: choose one of the list, or type a new name.", "Supplier");
            return chosen;
        }

        var folded = SearchText.Of(supplier);
        return (await db.Suppliers.AsNoTracking().Where(one => one.SearchText.StartsWith(folded)).ToListAsync(cancellationToken))
            .FirstOrDefault(one => SearchText.Of(one.Name) == folded);
    }

    /// <summary>The mapping proposed for this list, with the columns that the buyer confirmed for the supplier's last one.</summary>
    public async Task<OfferMapping> MappingAsync(ListSender sender, ListLook look, ListReference reference, CancellationToken cancellationToken)
    {
        var proposal = MappingProposal.Of(look, reference, sender.Supplier.CountryCode);
        var headings = OfferMapping.HeadingsOf(look.Headings);
        var remembered = await db.SupplierMappings.AsNoTracking()
            .FirstOrDefaultAsync(one => one.SupplierId == sender.Supplier.Id && one.Headings == headings, cancellationToken);
        return remembered is null ? proposal : proposal.Remembering(OfferMapping.FromJson(remembered.Mapping));
    }

    /// <summary>
    /// Begins the transaction in which a list is compared and stored, so that two loads of one supplier's list follow each
    /// other.
    /// </summary>
    public async Task<IDbContextTransaction> BeginAsync(ListSender sender, CancellationToken cancellationToken)
    {
        var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
        if (db.Database.GetDbConnection() is NpgsqlConnection)
        {
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtext({sender.Supplier.Name}))", cancellationToken);
        }

        return transaction;
    }

    /// <summary>The list's case against what is stored now.</summary>
    public async Task<ListCase> CaseAsync(
        ListSender sender, StoredFile file, OfferMapping mapping, DateOnly receivedOn, Id<Person> by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var json = mapping.ToJson();
        var supplierId = sender.Supplier.Id;
        var known = sender.IsNew
            ? []
            : await db.Offers.AsNoTracking().Where(offer => offer.SupplierId == supplierId)
                .Join(db.Lots.AsNoTracking(), offer => offer.LotId, lot => lot.Id, (offer, lot) => new KnownOffer(offer, lot))
                .ToListAsync(cancellationToken);
        return new ListCase(sender.Supplier, file, mapping, receivedOn, known, await db.Producers.AsNoTracking().ToListAsync(cancellationToken), by, at)
        {
            IsRepeat = !sender.IsNew && await db.OfferLists.AnyAsync(
                list => list.SupplierId == supplierId && list.FileHash == file.Sha256 && list.Mapping == json, cancellationToken),
        };
    }

    /// <summary>
    /// Stores what a list comes to, within the transaction begun before. A list that says nothing new and whose file was
    /// loaded before writes nothing at all. True when something was written.
    /// </summary>
    public async Task<bool> SaveAsync(
        ListOutcome outcome, ListCase theCase, ListSender sender, CancellationToken cancellationToken, Action<RowOutcome>? stored = null)
    {
        if (await SaysNothingAsync(outcome, theCase, cancellationToken))
        {
            return false;
        }

        db.ChangeTracker.AutoDetectChangesEnabled = false;
        using var producers = new BulkInsert<Producer>(db);
        await producers.InsertAsync(outcome.NewProducers, cancellationToken);
        var known = outcome.NewProducers.Count;
        Track(outcome, sender);
        await RememberAsync(theCase, cancellationToken);
        await KeepFileAsync(theCase, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        db.ChangeTracker.AutoDetectChangesEnabled = true;
        await InsertAcceptedAsync(outcome, producers, known, stored, cancellationToken);
        using var setAside = new BulkInsert<SetAsideRow>(db);
        await setAside.InsertAsync(outcome.List.SetAside, cancellationToken);
        return true;
    }

    /// <summary>Some thousand at a time, so that a long list never stands in memory as a whole.</summary>
    private async Task InsertAcceptedAsync(
        ListOutcome outcome, BulkInsert<Producer> producers, int known, Action<RowOutcome>? stored, CancellationToken cancellationToken)
    {
        using var lots = new BulkInsert<Lot>(db);
        using var offers = new BulkInsert<Offer>(db);
        using var prices = new BulkInsert<OfferPrice>(db);
        foreach (var rows in outcome.Accepted.Chunk(ChunkSize))
        {
            await producers.InsertAsync(outcome.NewProducers.Skip(known), cancellationToken);
            known = outcome.NewProducers.Count;
            await lots.InsertAsync(rows.Select(row => row.Lot), cancellationToken);
            await offers.InsertAsync(rows.Select(row => row.Offer), cancellationToken);
            await prices.InsertAsync(rows.SelectMany(row => row.Offer.Prices), cancellationToken);
            foreach (var row in rows)
            {
                stored?.Invoke(row);
            }
        }
    }

    private async Task<bool> SaysNothingAsync(ListOutcome outcome, ListCase theCase, CancellationToken cancellationToken) =>
        outcome.Accepted.Count == 0 && outcome.Revised.Count == 0
        && (outcome.IsRepeat || await db.OfferLists.AnyAsync(
            list => list.SupplierId == theCase.Supplier.Id && list.FileHash == theCase.StoredFile.Sha256, cancellationToken));

    /// <summary>
    /// The list itself goes through the tracker, which writes its line of history; its many rows do not. Revised offers
    /// were read without tracking; their new price lines are the only ones loaded.
    /// </summary>
    private void Track(ListOutcome outcome, ListSender sender)
    {
        if (sender.IsNew)
        {
            db.Entry(sender.Supplier).State = EntityState.Added;
        }

        db.Entry(outcome.List).State = EntityState.Added;
        foreach (var revised in outcome.Revised)
        {
            db.Entry(revised.Offer).State = EntityState.Modified;
            db.Entry(revised.Lot).State = EntityState.Modified;
            db.OfferPrices.AddRange(revised.Offer.Prices);
        }
    }

    private async Task RememberAsync(ListCase theCase, CancellationToken cancellationToken)
    {
        var headings = theCase.Mapping.Headings;
        var remembered = await db.SupplierMappings
            .FirstOrDefaultAsync(one => one.SupplierId == theCase.Supplier.Id && one.Headings == headings, cancellationToken);
        if (remembered is null)
        {
            db.SupplierMappings.Add(new SupplierMapping(theCase.Supplier.Id, headings, theCase.Mapping.ToJson(), theCase.At));
        }
        else
        {
            remembered.Remember(theCase.Mapping.ToJson(), theCase.At);
            db.Entry(remembered).State = EntityState.Modified;
        }
    }

    private async Task KeepFileAsync(ListCase theCase, CancellationToken cancellationToken)
    {
        var parked = await db.StoredFiles.SingleOrDefaultAsync(file => file.Id == theCase.StoredFile.Id, cancellationToken);
        if (parked is null)
        {
            theCase.StoredFile.Keep();
            db.StoredFiles.Add(theCase.StoredFile);
        }
        else
        {
            parked.Keep();
            db.Entry(parked).State = EntityState.Modified;
        }
    }

    private async Task<Supplier?> RememberedAsync(ListLook look, CancellationToken cancellationToken)
    {
        var headings = OfferMapping.HeadingsOf(look.Headings);
        var owners = await db.SupplierMappings.AsNoTracking().Where(one => one.Headings == headings)
            .Join(db.Suppliers.AsNoTracking(), one => one.SupplierId, supplier => supplier.Id, (_, supplier) => supplier)
            .OrderBy(supplier => supplier.Id).Take(2).ToListAsync(cancellationToken);
        var titled = MappingProposal.SenderOf(look) is { } name ? SearchText.Of(name) : null;
        return owners is [var only] && (titled is null || SearchText.Of(only.Name) == titled) ? only : null;
    }

    private static Supplier New(string name, ListLook look, ListReference reference)
    {
        var terms = MappingProposal.Of(look, reference).Terms;
        var isSpot = terms.Incoterm == Incoterm.ExWarehouse;
        return new Supplier(name, isSpot ? SupplierKind.Importer : SupplierKind.Exporter, isSpot ? null : terms.CountryCode, MappingProposal.LanguageOf(look));
    }
}

using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

/// <summary>A row that a list had set aside, with its list, the supplier, and how the list was read.</summary>
public sealed record SetAsideCase(SetAsideRow Row, OfferList List, Supplier Supplier, OfferMapping Mapping);

/// <summary>Takes rows that were set aside in, once a person has mended them.</summary>
public sealed class Mending(LedgerContext db, ListStore store)
{
    /// <summary>Null when there is no such row.</summary>
    public async Task<SetAsideCase?> FindAsync(Id<SetAsideRow> id, CancellationToken cancellationToken)
    {
        var row = await db.SetAsideRows.SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (row is null)
        {
            return null;
        }

        var list = await db.OfferLists.SingleAsync(one => one.Id == row.ListId, cancellationToken);
        var supplier = await db.Suppliers.AsNoTracking().SingleAsync(one => one.Id == list.SupplierId, cancellationToken);
        return new SetAsideCase(row, list, supplier, OfferMapping.FromJson(list.Mapping));
    }

    /// <summary>
    /// Stores the mended row as the offer that it is, in one transaction that no other list of this supplier comes between.
    /// </summary>
    public async Task<MendedRow> TakeInAsync(
        SetAsideCase set, IReadOnlyList<Cell> cells, Domain.Offers.Reading.OfferRow mended, Id<Person> by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        await using var transaction = await store.BeginAsync(new ListSender(set.Supplier, IsNew: false), cancellationToken);
        var taken = set.List.TakeIn(set.Row, cells, mended, await CaseAsync(set, mended, by, at, cancellationToken));
        if (taken.NewProducer is { } producer)
        {
            db.Add(producer);
        }

        if (taken.IsNew)
        {
            db.Add(taken.Outcome.Lot);
            db.Add(taken.Outcome.Offer);
        }

        await db.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return taken;
    }

    /// <summary>The supplier's offers that may have this reference, tracked, so that the history says what changed.</summary>
    private async Task<ListCase> CaseAsync(SetAsideCase set, Domain.Offers.Reading.OfferRow mended, Id<Person> by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var folded = SearchText.Of(mended.Ref);
        var known = await db.Offers.Where(offer => offer.SupplierId == set.Supplier.Id && offer.SearchText.StartsWith(folded))
            .Join(db.Lots, offer => offer.LotId, lot => lot.Id, (offer, lot) => new KnownOffer(offer, lot)).ToListAsync(cancellationToken);
        var producers = await db.Producers.AsNoTracking().ToListAsync(cancellationToken);
        var file = await db.StoredFiles.AsNoTracking().SingleAsync(one => one.Id == set.List.StoredFileId, cancellationToken);
        return new ListCase(set.Supplier, file, set.Mapping, set.List.ReceivedOn, known, producers, by, at);
    }
}

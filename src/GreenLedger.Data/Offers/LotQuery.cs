using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

/// <summary>One line of an offer's price history, with the list that said so.</summary>
public sealed record OfferPriceRow(
    DateOnly On, PricePerWeight? Price, Differential? Differential, Weight Quantity, OfferState State, Id<OfferList>? ListId, string? List);

/// <summary>An offer of the lot with its supplier and its price history, newest first.</summary>
public sealed record LotOffer(Offer Offer, Supplier Supplier, IReadOnlyList<OfferPriceRow> Prices);

/// <summary>A lot with everything that the rooms of origins and offers know of it.</summary>
public sealed record LotView(Lot Lot, Country? Country, Producer? Producer, ProcessMethod? Method, IReadOnlyList<LotOffer> Offers);

/// <summary>One offer with its lot, its supplier and its price history, newest first.</summary>
public sealed record OfferView(Offer Offer, Lot Lot, Supplier Supplier, IReadOnlyList<OfferPriceRow> Prices);

/// <summary>A lot, and an offer of it, as their own pages show them.</summary>
public sealed class LotQuery(LedgerContext db)
{
    /// <summary>Null when there is no such lot.</summary>
    public async Task<LotView?> FindAsync(Id<Lot> id, CancellationToken cancellationToken)
    {
        var lot = await db.Lots.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (lot is null)
        {
            return null;
        }

        return new LotView(
            lot,
            await db.Countries.AsNoTracking().SingleOrDefaultAsync(one => one.Code == lot.CountryCode, cancellationToken),
            await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == lot.ProducerId, cancellationToken),
            await db.ProcessMethods.AsNoTracking().SingleOrDefaultAsync(one => one.Id == lot.ProcessMethodId, cancellationToken),
            await OffersAsync(id, cancellationToken));
    }

    /// <summary>Null when there is no such offer.</summary>
    public async Task<OfferView?> FindAsync(Id<Offer> id, CancellationToken cancellationToken)
    {
        var offer = await db.Offers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (offer is null)
        {
            return null;
        }

        var lot = await db.Lots.AsNoTracking().SingleAsync(one => one.Id == offer.LotId, cancellationToken);
        var mine = (await OffersAsync(lot.Id, cancellationToken)).Single(one => one.Offer.Id == id);
        return new OfferView(offer, lot, mine.Supplier, mine.Prices);
    }

    private async Task<IReadOnlyList<LotOffer>> OffersAsync(Id<Lot> id, CancellationToken cancellationToken)
    {
        var offers = await (
            from offer in db.Offers.AsNoTracking()
            join supplier in db.Suppliers on offer.SupplierId equals supplier.Id
            where offer.LotId == id
            orderby offer.RevisedOn descending
            select new { Offer = offer, Supplier = supplier }).ToListAsync(cancellationToken);
        var prices = await (
            from price in db.OfferPrices.AsNoTracking()
            join offer in db.Offers on price.OfferId equals offer.Id
            join list in db.OfferLists on price.ListId equals list.Id into lists
            from list in lists.DefaultIfEmpty()
            where offer.LotId == id
            orderby price.On descending, price.Id descending
            select new { Price = price, List = (string?)list.FileName }).ToListAsync(cancellationToken);
        var history = prices.ToLookup(line => line.Price.OfferId, line => new OfferPriceRow(
            line.Price.On, line.Price.Price, line.Price.Differential, line.Price.Quantity, line.Price.State, line.Price.ListId, line.List));
        return [.. offers.Select(found => new LotOffer(found.Offer, found.Supplier, [.. history[found.Offer.Id]]))];
    }
}

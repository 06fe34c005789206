using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Offers, lots, suppliers and lists as rows, page by page.</summary>
internal static class OfferRowsApi
{
    public const string Pages = "Page by page: `page` counts from 1, `size` is 50 unless it is given and 1,000 at the most; the answer says how many pages there are.";

    private const int MostRows = 1000;

    public static void MapOfferRows(this RouteGroupBuilder offers)
    {
        offers.MapGet("", OffersAsync).WithName("ListOffers").WithSummary("Offers, the newest revised first")
            .WithDescription(
                "Filters combine: `search` (reference, lot or supplier), `origin` (ISO 3166-1 code), `process` and `supplier` (ids), `state` (OnOffer, Sold, Withdrawn). "
                + "`sort` is one of ref, lot, origin, process, supplier, quantity, price, stated, revised; a minus in front turns it round. " + Pages);
        offers.MapGet("/{key}", OfferAsync).WithName("ReadOffer").WithSummary("One offer, by its id or reference, with its price history and landed cost")
            .WithDescription("Where several suppliers use one reference, ask by id. The landed cost is that of today; where it is not known, `landedCostProblems` says what is missing.");
        offers.MapPut("/{key}/least-lot", SellFromAsync).WithName("PutLeastLot").WithSummary("The fewest bags that the seller parts with; null where none is named");
        offers.MapGet("/lots", LotsAsync).WithName("ListLots").WithSummary("Lots by reference")
            .WithDescription("Filters combine: `search` (any part of reference, name, variety, region, ICO mark), `origin` (ISO 3166-1 code), `process`, `supplier` and `producer` (ids). " + Pages);
        offers.MapGet("/suppliers", SuppliersAsync).WithName("ListSuppliers").WithSummary("Suppliers by name")
            .WithDescription("`search` is any part of the name; `sort` is name or offers, a minus in front turns it round. " + Pages);
        offers.MapGet("/lists", ListsAsync).WithName("ListOfferLists").WithSummary("Lists received, the newest first")
            .WithDescription("Filters combine: `search` (file or supplier), `supplier` (id), `waiting=true` for lists with rows still to mend. " + Pages);
    }

    public static Paging PageOf(int page, int size, int total) => Paging.Of(page, total, size: Math.Clamp(size, 1, MostRows));

    private static async Task<Ok<PageReply<OfferReply>>> OffersAsync(
        OfferQuery query, CancellationToken cancellationToken, string? search = null, string? origin = null, Id<ProcessMethod>? process = null,
        Id<Supplier>? supplier = null, OfferState? state = null, string? sort = null, int page = 1, int size = Paging.UsualSize)
    {
        var filter = new OfferFilter(search, origin, process, supplier, state);
        var paging = PageOf(page, size, await query.CountAsync(filter, cancellationToken));
        var rows = await query.ListAsync(filter, sort, paging.Skip, paging.Size, cancellationToken);
        return TypedResults.Ok(PageReply<OfferReply>.Of(paging, rows.Select(OfferReply.Of)));
    }

    private static async Task<Results<Ok<WholeOfferReply>, NotFound>> OfferAsync(
        string key, LedgerContext db, LotQuery lots, LandedCostsQuery costs, HouseZone house, CancellationToken cancellationToken)
    {
        if (await FindAsync(key, db, cancellationToken) is not { } id || await lots.FindAsync(id, cancellationToken) is not { } view)
        {
            return TypedResults.NotFound();
        }

        var cost = (await costs.FindAsync(house.Today, cancellationToken))?.Of(Parcel.Of(view.Offer, view.Lot.CountryCode));
        return TypedResults.Ok(WholeOfferReply.Of(view, cost));
    }

    private static async Task<Results<NoContent, NotFound>> SellFromAsync(string key, LeastLotRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await FindAsync(key, db, cancellationToken) is not { } id)
        {
            return TypedResults.NotFound();
        }

        var offer = await db.Offers.SingleAsync(one => one.Id == id, cancellationToken);
        offer.SellFrom(request.LeastBags);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.NoContent();
    }

    private static async Task<Ok<PageReply<LotReply>>> LotsAsync(
        LotRowQuery query, CancellationToken cancellationToken, string? search = null, string? origin = null, Id<ProcessMethod>? process = null,
        Id<Supplier>? supplier = null, Id<Producer>? producer = null, int page = 1, int size = Paging.UsualSize)
    {
        var filter = new LotFilter(search, origin, process, supplier, producer);
        var paging = PageOf(page, size, await query.CountAsync(filter, cancellationToken));
        var rows = await query.ListAsync(filter, paging.Skip, paging.Size, cancellationToken);
        return TypedResults.Ok(PageReply<LotReply>.Of(paging, rows.Select(LotReply.Of)));
    }

    private static async Task<Ok<PageReply<SupplierReply>>> SuppliersAsync(
        SupplierQuery query, CancellationToken cancellationToken, string? search = null, string? sort = null, int page = 1, int size = Paging.UsualSize)
    {
        var paging = PageOf(page, size, await query.CountAsync(search, cancellationToken));
        var rows = await query.ListAsync(search, sort, paging.Skip, paging.Size, cancellationToken);
        return TypedResults.Ok(PageReply<SupplierReply>.Of(paging, rows.Select(SupplierReply.Of)));
    }

    private static async Task<Ok<PageReply<OfferListReply>>> ListsAsync(
        OfferListQuery query, CancellationToken cancellationToken, string? search = null, Id<Supplier>? supplier = null, bool waiting = false,
        int page = 1, int size = Paging.UsualSize)
    {
        var filter = new OfferListFilter(search, supplier, waiting);
        var paging = PageOf(page, size, await query.CountAsync(filter, cancellationToken));
        var rows = await query.ListAsync(filter, null, paging.Skip, paging.Size, cancellationToken);
        return TypedResults.Ok(PageReply<OfferListReply>.Of(paging, rows.Select(OfferListReply.Of)));
    }

    private static async Task<Id<Offer>?> FindAsync(string key, LedgerContext db, CancellationToken cancellationToken)
    {
        if (Id<Offer>.TryParse(key, null, out var id))
        {
            return id;
        }

        var found = await db.Offers.Where(offer => offer.Ref == key).OrderBy(offer => offer.Id).Select(offer => offer.Id).Take(2).ToListAsync(cancellationToken);
        Rule.Require(found.Count < 2, $"Several offers have the reference {key}: ask for one by its id, which the list of offers gives.", "Key");
        return found.Count == 0 ? null : found[0];
    }
}

/// <summary>The least lot of an offer, in bags.</summary>
internal sealed record LeastLotRequest(int? LeastBags);

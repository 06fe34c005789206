using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

/// <summary>Offers with their lots and suppliers, as lists show and export them.</summary>
public sealed class OfferQuery(LedgerContext db)
{
    public Task<int> CountAsync(OfferFilter filter, CancellationToken cancellationToken) =>
        Filtered(filter).CountAsync(cancellationToken);

    /// <param name="filter">Which offers.</param>
    /// <param name="sort">
    /// <c>ref</c>, <c>lot</c>, <c>origin</c>, <c>process</c>, <c>supplier</c>, <c>quantity</c>, <c>price</c> (per
    /// kilogram as a figure, whatever the currency), <c>stated</c> or <c>revised</c>; a minus in front turns it round.
    /// Anything else sorts by the newest revision.
    /// </param>
    /// <param name="skip">Rows to leave out at the start.</param>
    /// <param name="take">Rows at the most; null for all of them.</param>
    public async Task<IReadOnlyList<OfferRow>> ListAsync(
        OfferFilter filter, string? sort, int skip, int? take, CancellationToken cancellationToken)
    {
        var sorted = Sorted(Filtered(filter), sort).Skip(skip);
        return await (take is { } most ? sorted.Take(most) : sorted).Select(found => new OfferRow(
            found.Offer.Id,
            found.Lot.Id,
            found.Supplier.Id,
            found.Offer.Ref,
            found.Lot.Name,
            found.Lot.CountryCode,
            found.Country == null ? null : found.Country.Name,
            found.Method == null ? found.Lot.ProcessAsWritten : found.Method.Name,
            found.Lot.CropYear,
            found.Supplier.Name,
            found.Offer.Quantity,
            found.Offer.Price,
            found.Offer.Differential,
            found.Offer.Incoterm,
            found.Offer.Place,
            found.Offer.State,
            found.Offer.StatedScore,
            found.Offer.ValidUntil,
            found.Offer.RevisedOn,
            found.Offer.LeastBags)).ToListAsync(cancellationToken);
    }

    private IQueryable<Found> Filtered(OfferFilter filter)
    {
        var found =
            from offer in db.Offers.AsNoTracking()
            join lot in db.Lots on offer.LotId equals lot.Id
            join supplier in db.Suppliers on offer.SupplierId equals supplier.Id
            join country in db.Countries on lot.CountryCode equals country.Code into countries
            from country in countries.DefaultIfEmpty()
            join method in db.ProcessMethods on lot.ProcessMethodId equals method.Id into methods
            from method in methods.DefaultIfEmpty()
            select new Found { Offer = offer, Lot = lot, Supplier = supplier, Country = country, Method = method };
        if (SearchText.Of(filter.Search) is { Length: > 0 } words)
        {
            found = found.Where(row => row.Offer.SearchText.Contains(words)
                || row.Lot.SearchText.Contains(words)
                || row.Supplier.SearchText.Contains(words));
        }

        if (filter.Origin is { Length: > 0 } origin)
        {
            found = found.Where(row => row.Lot.CountryCode == origin);
        }

        if (filter.Process is { } process)
        {
            found = found.Where(row => row.Lot.ProcessMethodId == process);
        }

        if (filter.Supplier is { } from)
        {
            found = found.Where(row => row.Offer.SupplierId == from);
        }

        return filter.State is { } state ? found.Where(row => row.Offer.State == state) : found;
    }

    private static IQueryable<Found> Sorted(IQueryable<Found> found, string? sort) => (sort switch
    {
        "ref" => found.OrderBy(row => row.Offer.Ref),
        "-ref" => found.OrderByDescending(row => row.Offer.Ref),
        "lot" => found.OrderBy(row => row.Lot.Name),
        "-lot" => found.OrderByDescending(row => row.Lot.Name),
        "origin" => found.OrderBy(row => row.Lot.CountryCode),
        "-origin" => found.OrderByDescending(row => row.Lot.CountryCode),
        "process" => found.OrderBy(row => row.Method!.Name),
        "-process" => found.OrderByDescending(row => row.Method!.Name),
        "supplier" => found.OrderBy(row => row.Supplier.Name),
        "-supplier" => found.OrderByDescending(row => row.Supplier.Name),
        "quantity" => found.OrderBy(row => row.Offer.Quantity.Micrograms),
        "-quantity" => found.OrderByDescending(row => row.Offer.Quantity.Micrograms),
        "price" => found.OrderBy(row => row.Offer.Price == null).ThenBy(row => row.Offer.Price!.Value.NanosPerKilogram),
        "-price" => found.OrderBy(row => row.Offer.Price == null).ThenByDescending(row => row.Offer.Price!.Value.NanosPerKilogram),
        "stated" => found.OrderBy(row => row.Offer.StatedScore == null).ThenBy(row => row.Offer.StatedScore!.Value.Millionths),
        "-stated" => found.OrderBy(row => row.Offer.StatedScore == null).ThenByDescending(row => row.Offer.StatedScore!.Value.Millionths),
        "valid" => found.OrderBy(row => row.Offer.ValidUntil == null).ThenBy(row => row.Offer.ValidUntil),
        "-valid" => found.OrderBy(row => row.Offer.ValidUntil == null).ThenByDescending(row => row.Offer.ValidUntil),
        "revised" => found.OrderBy(row => row.Offer.RevisedOn),
        _ => found.OrderByDescending(row => row.Offer.RevisedOn),
    }).ThenBy(row => row.Offer.Ref).ThenBy(row => row.Offer.Id);

    private sealed class Found
    {
        public required Offer Offer { get; init; }

        public required Lot Lot { get; init; }

        public required Supplier Supplier { get; init; }

        public required Country? Country { get; init; }

        public required ProcessMethod? Method { get; init; }
    }
}

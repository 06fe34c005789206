using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

/// <summary>A supplier with what it has on offer.</summary>
public sealed record SupplierRow(
    Id<Supplier> Id, string Name, SupplierKind Kind, string? CountryCode, string? Country, string? Language, string? Email, int OnOffer, int Offers);

/// <summary>Suppliers, as lists show them.</summary>
public sealed class SupplierQuery(LedgerContext db)
{
    public Task<int> CountAsync(string? search, CancellationToken cancellationToken) =>
        Filtered(search).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<SupplierRow>> ListAsync(
        string? search, string? sort, int skip, int? take, CancellationToken cancellationToken)
    {
        var rows =
            from supplier in Filtered(search)
            join country in db.Countries on supplier.CountryCode equals country.Code into countries
            from country in countries.DefaultIfEmpty()
            select new
            {
                Supplier = supplier,
                Country = (string?)country.Name,
                OnOffer = db.Offers.Count(offer => offer.SupplierId == supplier.Id && offer.State == OfferState.OnOffer),
                Offers = db.Offers.Count(offer => offer.SupplierId == supplier.Id),
            };
        var sorted = sort switch
        {
            "-name" => rows.OrderByDescending(row => row.Supplier.Name),
            "offers" => rows.OrderBy(row => row.OnOffer).ThenBy(row => row.Supplier.Name),
            "-offers" => rows.OrderByDescending(row => row.OnOffer).ThenBy(row => row.Supplier.Name),
            _ => rows.OrderBy(row => row.Supplier.Name),
        };
        var page = sorted.Skip(skip);
        return await (take is { } most ? page.Take(most) : page).Select(row => new SupplierRow(
            row.Supplier.Id,
            row.Supplier.Name,
            row.Supplier.Kind,
            row.Supplier.CountryCode,
            row.Country,
            row.Supplier.Language,
            row.Supplier.Email,
            row.OnOffer,
            row.Offers)).ToListAsync(cancellationToken);
    }

    private IQueryable<Supplier> Filtered(string? search) =>
        SearchText.Of(search) is { Length: > 0 } words
            ? db.Suppliers.AsNoTracking().Where(supplier => supplier.SearchText.Contains(words))
            : db.Suppliers.AsNoTracking();
}

using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

/// <summary>A lot with the names of what it points to.</summary>
public sealed record LotRow(Lot Lot, string? Country, string? Supplier, string? Producer, string? Process);

/// <summary>Which lots are listed: every part is optional, and the parts are combined.</summary>
public sealed record LotFilter(string? Search = null, string? Origin = null, Id<ProcessMethod>? Process = null, Id<Supplier>? Supplier = null, Id<Producer>? Producer = null);

/// <summary>Lots as rows, by reference.</summary>
public sealed class LotRowQuery(LedgerContext db)
{
    public Task<int> CountAsync(LotFilter filter, CancellationToken cancellationToken) => Filtered(filter).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<LotRow>> ListAsync(LotFilter filter, int skip, int take, CancellationToken cancellationToken)
    {
        var found = await (
            from lot in Filtered(filter).OrderBy(lot => lot.Ref).ThenBy(lot => lot.Id).Skip(skip).Take(take)
            join country in db.Countries on lot.CountryCode equals country.Code into countries
            from country in countries.DefaultIfEmpty()
            join supplier in db.Suppliers on lot.SupplierId equals supplier.Id into suppliers
            from supplier in suppliers.DefaultIfEmpty()
            join producer in db.Producers on lot.ProducerId equals producer.Id into producers
            from producer in producers.DefaultIfEmpty()
            join method in db.ProcessMethods on lot.ProcessMethodId equals method.Id into methods
            from method in methods.DefaultIfEmpty()
            orderby lot.Ref, lot.Id
            select new { Lot = lot, Country = (string?)country.Name, Supplier = (string?)supplier.Name, Producer = (string?)producer.Name, Process = (string?)method.Name })
            .ToListAsync(cancellationToken);
        return [.. found.Select(row => new LotRow(row.Lot, row.Country, row.Supplier, row.Producer, row.Process))];
    }

    private IQueryable<Lot> Filtered(LotFilter filter)
    {
        var lots = db.Lots.AsNoTracking();
        if (SearchText.Of(filter.Search) is { Length: > 0 } words)
        {
            lots = lots.Where(lot => lot.SearchText.Contains(words));
        }

        if (filter.Origin is { Length: > 0 } origin)
        {
            lots = lots.Where(lot => lot.CountryCode == origin);
        }

        if (filter.Process is { } process)
        {
            lots = lots.Where(lot => lot.ProcessMethodId == process);
        }

        if (filter.Supplier is { } supplier)
        {
            lots = lots.Where(lot => lot.SupplierId == supplier);
        }

        return filter.Producer is { } producer ? lots.Where(lot => lot.ProducerId == producer) : lots;
    }
}

using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

/// <summary>A list that was received, with its counts; <see cref="Waiting"/> are the rows set aside that nobody mended yet.</summary>
public sealed record OfferListRow(
    Id<OfferList> Id,
    string FileName,
    Id<Supplier> SupplierId,
    string Supplier,
    DateOnly ReceivedOn,
    int Accepted,
    int Revised,
    int Unchanged,
    int SetAside,
    int Waiting,
    string By,
    DateTimeOffset At);

/// <summary>Which lists are shown: every part is optional, and the parts are combined.</summary>
public sealed record OfferListFilter(string? Search = null, Id<Supplier>? Supplier = null, bool OnlyWaiting = false);

/// <summary>The lists received, as their page shows and exports them.</summary>
public sealed class OfferListQuery(LedgerContext db)
{
    public Task<int> CountAsync(OfferListFilter filter, CancellationToken cancellationToken) => Filtered(filter).CountAsync(cancellationToken);

    /// <param name="filter">Which lists.</param>
    /// <param name="sort">
    /// <c>file</c>, <c>supplier</c>, <c>received</c> or <c>waiting</c>; a minus in front turns it round. Anything else sorts
    /// by the newest loaded.
    /// </param>
    /// <param name="skip">Rows to leave out at the start.</param>
    /// <param name="take">Rows at the most; null for all of them.</param>
    public async Task<IReadOnlyList<OfferListRow>> ListAsync(
        OfferListFilter filter, string? sort, int skip, int? take, CancellationToken cancellationToken)
    {
        var page = Sorted(Filtered(filter), sort).Skip(skip);
        return await (take is { } most ? page.Take(most) : page).Select(found => new OfferListRow(
            found.List.Id,
            found.List.FileName,
            found.Supplier.Id,
            found.Supplier.Name,
            found.List.ReceivedOn,
            found.List.Accepted,
            found.List.Revised,
            found.List.Unchanged,
            found.List.SetAsideCount,
            found.Waiting,
            db.People.Where(person => person.Id == found.List.By).Select(person => person.Name).First(),
            found.List.At)).ToListAsync(cancellationToken);
    }

    private IQueryable<Found> Filtered(OfferListFilter filter)
    {
        var found =
            from list in db.OfferLists.AsNoTracking()
            join supplier in db.Suppliers on list.SupplierId equals supplier.Id
            select new Found
            {
                List = list,
                Supplier = supplier,
                Waiting = db.SetAsideRows.Count(row => row.ListId == list.Id && row.MendedAt == null),
            };
        if (SearchText.Of(filter.Search) is { Length: > 0 } words)
        {
            found = found.Where(row => row.Supplier.SearchText.Contains(words) || row.List.SearchText.Contains(words));
        }

        if (filter.Supplier is { } from)
        {
            found = found.Where(row => row.List.SupplierId == from);
        }

        return filter.OnlyWaiting ? found.Where(row => row.Waiting > 0) : found;
    }

    private static IQueryable<Found> Sorted(IQueryable<Found> found, string? sort) => (sort switch
    {
        "file" => found.OrderBy(row => row.List.FileName),
        "-file" => found.OrderByDescending(row => row.List.FileName),
        "supplier" => found.OrderBy(row => row.Supplier.Name),
        "-supplier" => found.OrderByDescending(row => row.Supplier.Name),
        "received" => found.OrderBy(row => row.List.ReceivedOn),
        "-received" => found.OrderByDescending(row => row.List.ReceivedOn),
        "waiting" => found.OrderBy(row => row.Waiting),
        "-waiting" => found.OrderByDescending(row => row.Waiting),
        _ => found.OrderByDescending(row => row.List.At),
    }).ThenByDescending(row => row.List.At).ThenBy(row => row.List.Id);

    private sealed class Found
    {
        public required OfferList List { get; init; }

        public required Supplier Supplier { get; init; }

        public int Waiting { get; init; }
    }
}

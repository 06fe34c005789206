using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>Which contracts a list shows; null or empty asks nothing.</summary>
/// <param name="Text">Part of a number, a seller's name, or a lot's reference or name.</param>
/// <param name="Month">The futures month that something is open against.</param>
/// <param name="IsUnsigned">Only those with a version that nobody has signed yet.</param>
public sealed record ContractFilter(
    string? Text = null, GoodsState? Goods = null, PriceState? Price = null, FuturesMonth? Month = null, Id<Supplier>? Supplier = null, bool IsUnsigned = false);

/// <summary>Contracts, as lists and their own pages show them.</summary>
public sealed class ContractQuery(LedgerContext db)
{
    public Task<int> CountAsync(ContractFilter filter, CancellationToken cancellationToken) => Filtered(filter).CountAsync(cancellationToken);

    /// <param name="filter">Which contracts.</param>
    /// <param name="sort">A column of the list, with a minus for the other direction; the newest number first otherwise.</param>
    /// <param name="skip">Rows to leave out at the start.</param>
    /// <param name="take">Rows at the most; null for all of them.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<Contract>> ListAsync(ContractFilter filter, string? sort, int skip, int? take, CancellationToken cancellationToken)
    {
        var sorted = Sorted(Filtered(filter), sort).Skip(skip);
        return await (take is { } most ? sorted.Take(most) : sorted).Whole().ToListAsync(cancellationToken);
    }

    /// <summary>Null when there is no such contract.</summary>
    public Task<Contract?> FindAsync(Id<Contract> id, CancellationToken cancellationToken) =>
        db.Contracts.AsNoTracking().Whole().SingleOrDefaultAsync(contract => contract.Id == id, cancellationToken);

    /// <summary>The name of the file that an earlier contract was taken in from; null for any other.</summary>
    public async Task<string?> SourceNameAsync(Contract contract, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        return contract.SourceId is { } source ? await db.StoredFiles.Where(file => file.Id == source).Select(file => file.Name).SingleAsync(cancellationToken) : null;
    }

    /// <summary>The names of everybody who wrote, signed or moved something of a contract.</summary>
    public async Task<IReadOnlyDictionary<Id<Person>, string>> NamesAsync(Contract contract, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var ids = contract.Versions.SelectMany(version => new[] { version.WrittenBy, version.SignedBy ?? version.WrittenBy })
            .Concat(contract.Moves.Select(move => move.By))
            .Concat(contract.Fixings.SelectMany(fixing => new[] { fixing.By, fixing.TakenBackBy ?? fixing.By }))
            .Concat(contract.Rolls.Select(roll => roll.By))
            .Concat(contract.Approvals.Select(approval => approval.By))
            .Distinct().ToList();
        return await db.People.AsNoTracking().Where(person => ids.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
    }

    private IQueryable<Contract> Filtered(ContractFilter filter)
    {
        var found = SearchText.Of(filter.Text).Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Aggregate(db.Contracts.AsNoTracking(), (contracts, word) => contracts.Where(contract => contract.SearchText.Contains(word)));
        found = filter.Goods is { } goods ? found.Where(contract => contract.Goods == goods) : found;
        found = filter.Price is { } price ? found.Where(contract => contract.Price == price) : found;
        found = filter.Month is { } month ? found.Where(contract => contract.OpenMonth == month && contract.Goods != GoodsState.Drafted) : found;
        found = filter.Supplier is { } supplier ? found.Where(contract => contract.SupplierId == supplier) : found;
        return filter.IsUnsigned
            ? found.Where(contract => contract.Goods != GoodsState.Closed && contract.Goods != GoodsState.Cancelled && contract.Versions.Any(version => version.SignedOn == null))
            : found;
    }

    private static IOrderedQueryable<Contract> Sorted(IQueryable<Contract> contracts, string? sort) => sort switch
    {
        "ref" => contracts.OrderBy(contract => contract.Ref),
        "weight" => contracts.OrderBy(contract => contract.NetWeight.Micrograms).ThenBy(contract => contract.Ref),
        "-weight" => contracts.OrderByDescending(contract => contract.NetWeight.Micrograms).ThenBy(contract => contract.Ref),
        "shipment" => contracts.OrderBy(contract => contract.ShipUntil).ThenBy(contract => contract.Ref),
        "-shipment" => contracts.OrderByDescending(contract => contract.ShipUntil).ThenBy(contract => contract.Ref),
        "open" => contracts.OrderBy(contract => contract.OpenWeight.Micrograms).ThenBy(contract => contract.Ref),
        "-open" => contracts.OrderByDescending(contract => contract.OpenWeight.Micrograms).ThenBy(contract => contract.Ref),
        _ => contracts.OrderByDescending(contract => contract.Ref),
    };
}

using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

/// <summary>Which claims a list shows; null or empty asks nothing.</summary>
/// <param name="Text">Part of a number, a seller's name, a contract, a shipment or a lot.</param>
/// <param name="IsOpen">True for those without an outcome, false for those with one.</param>
/// <param name="IsLate">Only those that were made after a deadline.</param>
public sealed record ClaimFilter(string? Text = null, bool? IsOpen = null, ClaimOutcome? Outcome = null, bool? IsLate = null, Id<Arrival>? Arrival = null, Id<Contract>? Contract = null);

/// <summary>Claims, as lists and their own pages show them.</summary>
public sealed class ClaimQuery(LedgerContext db)
{
    public Task<int> CountAsync(ClaimFilter filter, CancellationToken cancellationToken) => Filtered(filter).CountAsync(cancellationToken);

    /// <param name="filter">Which claims.</param>
    /// <param name="sort">A column of the list, with a minus for the other direction; the newest number first otherwise.</param>
    /// <param name="skip">Rows to leave out at the start.</param>
    /// <param name="take">Rows at the most; null for all of them.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<Claim>> ListAsync(ClaimFilter filter, string? sort, int skip, int? take, CancellationToken cancellationToken)
    {
        var sorted = Sorted(Filtered(filter), sort).Skip(skip);
        return await (take is { } most ? sorted.Take(most) : sorted).Whole().ToListAsync(cancellationToken);
    }

    /// <summary>Null when there is no such claim.</summary>
    public Task<Claim?> FindAsync(Id<Claim> id, CancellationToken cancellationToken) =>
        db.Claims.AsNoTracking().Whole().SingleOrDefaultAsync(claim => claim.Id == id, cancellationToken);

    /// <summary>The names of everybody who opened, wrote or settled something of a claim.</summary>
    public async Task<IReadOnlyDictionary<Id<Person>, string>> NamesAsync(Claim claim, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var ids = claim.Notes.Select(note => note.By).Concat(claim.Settlements.SelectMany(one => new[] { one.By, one.TakenBackBy ?? one.By })).Append(claim.By).Distinct().ToList();
        return await db.People.AsNoTracking().Where(person => ids.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
    }

    /// <summary>How often the receipt of its arrival has been corrected by now; 0 for goods that did not come.</summary>
    public Task<int> CorrectionsAsync(Claim claim, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(claim);
        return db.Arrivals.Where(arrival => arrival.Id == claim.ArrivalId).Select(arrival => arrival.Corrections).SingleOrDefaultAsync(cancellationToken);
    }

    /// <summary>What stands of it in the cost of its lot; null where nothing does.</summary>
    public Task<CostPosting?> PostingAsync(Claim claim, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(claim);
        return db.CostPostings.AsNoTracking().FirstOrDefaultAsync(posting => posting.ClaimId == claim.Id && posting.WithdrawnAt == null, cancellationToken);
    }

    private IQueryable<Claim> Filtered(ClaimFilter filter)
    {
        var found = SearchText.Of(filter.Text).Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Aggregate(db.Claims.AsNoTracking(), (claims, word) => claims.Where(claim => claim.SearchText.Contains(word)));
        found = filter.IsOpen is { } open ? found.Where(claim => claim.Outcome == null == open) : found;
        found = filter.Outcome is { } outcome ? found.Where(claim => claim.Outcome == outcome) : found;
        found = filter.IsLate is { } late ? found.Where(claim => claim.IsLate == late) : found;
        found = filter.Contract is { } contract ? found.Where(claim => claim.ContractId == contract) : found;
        return filter.Arrival is { } arrival ? found.Where(claim => claim.ArrivalId == arrival) : found;
    }

    private static IOrderedQueryable<Claim> Sorted(IQueryable<Claim> claims, string? sort) => sort switch
    {
        "ref" => claims.OrderBy(claim => claim.Ref),
        "made" => claims.OrderBy(claim => claim.On).ThenBy(claim => claim.Ref),
        "-made" => claims.OrderByDescending(claim => claim.On).ThenBy(claim => claim.Ref),
        "last" => claims.OrderBy(claim => claim.LastDay == null).ThenBy(claim => claim.LastDay).ThenBy(claim => claim.Ref),
        "-last" => claims.OrderBy(claim => claim.LastDay == null).ThenByDescending(claim => claim.LastDay).ThenBy(claim => claim.Ref),
        "settled" => claims.OrderBy(claim => claim.SettledOn == null).ThenBy(claim => claim.SettledOn).ThenBy(claim => claim.Ref),
        "-settled" => claims.OrderBy(claim => claim.SettledOn == null).ThenByDescending(claim => claim.SettledOn).ThenBy(claim => claim.Ref),
        _ => claims.OrderByDescending(claim => claim.Ref),
    };
}

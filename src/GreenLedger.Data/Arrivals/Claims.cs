using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

public static class Claims
{
    /// <summary>With its correspondence and its outcomes.</summary>
    public static IQueryable<Claim> Whole(this IQueryable<Claim> claims) => claims
        .Include(claim => claim.Notes.OrderBy(note => note.Number))
        .Include(claim => claim.Settlements.OrderBy(settlement => settlement.Number))
        .AsSplitQuery();

    /// <summary>The other claims under the same contract, those on the same arrival or the same missing goods among them.</summary>
    public static async Task<IReadOnlyList<Claim>> BesideAsync(this IQueryable<Claim> claims, Id<Claim> id, CancellationToken cancellationToken) =>
        await claims.AsNoTracking().Where(other => other.Id != id && claims.Any(claim => claim.Id == id && claim.ContractId == other.ContractId)).ToListAsync(cancellationToken);

    /// <summary>The next free number of a year: C26-003.</summary>
    public static Task<string> NextRefAsync(this IQueryable<Claim> claims, DateOnly on, CancellationToken cancellationToken) =>
        claims.Select(claim => claim.Ref).NextAsync('C', on, cancellationToken);
}

using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

public static class Contracts
{
    /// <summary>With all of its parts, without which a contract has no terms and no price.</summary>
    public static IQueryable<Contract> Whole(this IQueryable<Contract> contracts) => contracts
        .Include(contract => contract.Versions.OrderBy(version => version.Number))
        .Include(contract => contract.Lots.OrderBy(lot => lot.Id))
        .Include(contract => contract.Fixings.OrderBy(fixing => fixing.Number))
        .Include(contract => contract.Rolls.OrderBy(roll => roll.Number))
        .Include(contract => contract.Approvals.OrderBy(approval => approval.At))
        .Include(contract => contract.Moves.OrderBy(move => move.Number))
        .AsSplitQuery();

    /// <summary>Signed, neither closed nor cancelled, and not fixed in full.</summary>
    public static IQueryable<Contract> ToBeFixed(this IQueryable<Contract> contracts) => contracts
        .Where(contract => contract.OpenMonth != null && contract.Goods != GoodsState.Drafted);

    /// <summary>The next free number of a year: P26-014.</summary>
    public static Task<string> NextRefAsync(this IQueryable<Contract> contracts, DateOnly on, CancellationToken cancellationToken) =>
        contracts.Select(contract => contract.Ref).NextAsync('P', on, cancellationToken);

    /// <exception cref="RuleBrokenException">Another contract has this number.</exception>
    public static async Task RequireFreeRefAsync(this IQueryable<Contract> contracts, string @ref, CancellationToken cancellationToken) => Rule.Require(
        !await contracts.AnyAsync(other => other.Ref == @ref, cancellationToken),
        $"There is another contract with the number {@ref}: choose another number.",
        nameof(Contract.Ref));
}

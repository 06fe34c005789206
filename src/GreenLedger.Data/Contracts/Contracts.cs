using System.Globalization;
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
    public static async Task<string> NextRefAsync(this IQueryable<Contract> contracts, DateOnly on, CancellationToken cancellationToken)
    {
        var start = string.Create(CultureInfo.InvariantCulture, $"P{on.Year % 100:00}-");
        var taken = await contracts.Where(contract => contract.Ref.StartsWith(start)).Select(contract => contract.Ref).ToListAsync(cancellationToken);
        var last = taken.Select(one => int.TryParse(one.AsSpan(start.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0).DefaultIfEmpty().Max();
        return start + (last + 1).ToString("000", CultureInfo.InvariantCulture);
    }

    /// <exception cref="RuleBrokenException">Another contract has this number.</exception>
    public static async Task RequireFreeRefAsync(this IQueryable<Contract> contracts, string @ref, CancellationToken cancellationToken) => Rule.Require(
        !await contracts.AnyAsync(other => other.Ref == @ref, cancellationToken),
        $"There is another contract with the number {@ref}: choose another number.",
        nameof(Contract.Ref));
}

using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Costs;

/// <summary>A lot that shares in a cost: what of it weighs, and what that is worth.</summary>
public sealed record CostSharer(Id<Lot> LotId, Weight Weight, decimal Value);

/// <summary>
/// Shares an amount between lots, to the cent: by weight or value, what is left over by the largest remainder, ties to the
/// earlier lot (handbook, trade 1.4 and example E of 3.3).
/// </summary>
public static class CostAllocation
{
    /// <returns>A part for each sharer, in their order; together the amount.</returns>
    /// <exception cref="RuleBrokenException">Nobody shares, or by this basis all shares are nothing.</exception>
    public static IReadOnlyList<Money> Of(Money amount, ShareBasis basis, IReadOnlyList<CostSharer> sharers)
    {
        ArgumentNullException.ThrowIfNull(sharers);
        Rule.Require(sharers.Count > 0, "There is no lot to share the amount: put lots on it first.", nameof(sharers));
        var shares = sharers.Select(sharer => basis == ShareBasis.Weight ? sharer.Weight.Kilograms : sharer.Value).ToList();
        Rule.Require(shares.TrueForAll(share => share >= 0m), "Weights and values lie at zero or above.", nameof(sharers));
        Rule.Require(shares.Sum() > 0m, basis == ShareBasis.Weight ? "The lots weigh nothing: give their weights." : "The lots are worth nothing: give their values.", nameof(sharers));
        return amount.MinorUnits >= 0 ? amount.SplitBy(shares) : [.. (-amount).SplitBy(shares).Select(part => -part)];
    }
}

using GreenLedger.Domain.Choosing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Choosing;

public static class RuleSets
{
    /// <summary>With every revision, without which a rule set has no terms.</summary>
    public static IQueryable<BuyingRules> Whole(this IQueryable<BuyingRules> rules) => rules.Include(set => set.Revisions);

    public static IQueryable<BuyingRules> InUse(this IQueryable<BuyingRules> rules) => rules.Where(set => set.IsInUse);

    /// <summary>The set of this name, or without a name the first by name; null when there is none.</summary>
    public static Task<BuyingRules?> NamedAsync(this IQueryable<BuyingRules> rules, string? name, CancellationToken cancellationToken) =>
        rules.Where(set => string.IsNullOrEmpty(name) || set.Name == name).OrderBy(set => set.Name).FirstOrDefaultAsync(cancellationToken);
}

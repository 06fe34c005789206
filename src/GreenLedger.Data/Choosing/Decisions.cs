using GreenLedger.Domain.Choosing;

namespace GreenLedger.Data.Choosing;

public static class Decisions
{
    /// <summary>Those that were not withdrawn.</summary>
    public static IQueryable<Decision> Standing(this IQueryable<Decision> decisions) => decisions.Where(decision => decision.WithdrawnAt == null);

    public static IQueryable<Decision> NewestFirst(this IQueryable<Decision> decisions) =>
        decisions.OrderByDescending(decision => decision.At).ThenByDescending(decision => decision.Id);
}

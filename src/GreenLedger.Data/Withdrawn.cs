using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data;

/// <summary>Records that no longer count: every query leaves them out that does not ask for them.</summary>
public static class Withdrawn
{
    internal const string Filter = "Withdrawn";

    /// <summary>Those that were withdrawn too.</summary>
    public static IQueryable<T> WithWithdrawn<T>(this IQueryable<T> records)
        where T : class => records.IgnoreQueryFilters([Filter]);
}

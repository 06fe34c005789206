using GreenLedger.Domain;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data;

/// <summary>Reads a table of which a house has one row: its habits in one matter.</summary>
public static class HouseHabits
{
    /// <summary>What the house has stated; what is usual where it has stated nothing.</summary>
    public static async Task<THabits> OfHouseAsync<THabits>(this IQueryable<THabits> habits, CancellationToken cancellationToken)
        where THabits : class, new() => await habits.StatedAsync(cancellationToken) ?? new THabits();

    /// <summary>What the house has stated; null where it has stated nothing.</summary>
    public static Task<THabits?> StatedAsync<THabits>(this IQueryable<THabits> habits, CancellationToken cancellationToken)
        where THabits : class => habits.OrderBy(one => EF.Property<Id<THabits>>(one, "Id")).FirstOrDefaultAsync(cancellationToken);

    /// <summary>The row to be changed, as it was read in this version; a new one, to be stored, where the house has stated nothing.</summary>
    public static async Task<THabits> ToChangeAsync<THabits>(this LedgerContext db, int version, CancellationToken cancellationToken)
        where THabits : class, new()
    {
        ArgumentNullException.ThrowIfNull(db);
        if (await db.Set<THabits>().StatedAsync(cancellationToken) is { } stated)
        {
            db.Entry(stated).Property("Version").OriginalValue = version;
            return stated;
        }

        var first = new THabits();
        db.Add(first);
        return first;
    }
}

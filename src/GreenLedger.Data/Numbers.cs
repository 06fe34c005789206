using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace GreenLedger.Data;

/// <summary>The house's own numbers, counted within a year: P26-014 for a contract, S26-003 for a shipment, C26-001 for a claim.</summary>
public static class Numbers
{
    /// <summary>A longer one was typed by hand and is not counted on from.</summary>
    private const int MostDigits = 6;

    /// <summary>
    /// Begins the transaction in which a record gets its number: whoever else numbers one waits until it ends, and then reads
    /// the number it took. Taken before <see cref="NextAsync"/>.
    /// </summary>
    public static async Task<IDbContextTransaction> NumberAsync(this LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        var turn = await db.Database.BeginTransactionAsync(cancellationToken);
        await db.TakeTurnAsync(Turn.Numbering, cancellationToken);
        return turn;
    }

    /// <summary>The next free number of a year.</summary>
    /// <param name="numbers">Those that are taken.</param>
    /// <param name="letter">What they begin with.</param>
    /// <param name="on">A day of the year.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public static async Task<string> NextAsync(this IQueryable<string> numbers, char letter, DateOnly on, CancellationToken cancellationToken)
    {
        var start = string.Create(CultureInfo.InvariantCulture, $"{letter}{on.Year % 100:00}-");
        var taken = await numbers.Where(number => number.StartsWith(start)).ToListAsync(cancellationToken);
        var last = taken.Select(one => one.Length - start.Length <= MostDigits && int.TryParse(one.AsSpan(start.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0).DefaultIfEmpty().Max();
        return start + (last + 1).ToString("000", CultureInfo.InvariantCulture);
    }

    /// <summary>Gives this number, then one after the other those that follow it.</summary>
    public static Func<string> From(string first)
    {
        ArgumentNullException.ThrowIfNull(first);
        var end = first.LastIndexOf('-') + 1;
        var next = int.Parse(first.AsSpan(end), NumberStyles.None, CultureInfo.InvariantCulture);
        return () => first[..end] + next++.ToString("000", CultureInfo.InvariantCulture);
    }
}

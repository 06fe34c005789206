using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Summaries;

/// <summary>A quarter of what was cupped in a season.</summary>
public enum SeasonQuarter
{
    Upper = 0,
    UpperMiddle = 1,
    LowerMiddle = 2,
    Lower = 3,
}

/// <summary>A lot of another supplier that was cupped in the season.</summary>
public readonly record struct SeasonLot(Id<Supplier> SupplierId, Score Score);

/// <summary>
/// Where a score stands among lots of other suppliers cupped on the same form in the months up to its day that the house calls a season: a quarter,
/// never a rank, and only among so many lots of so many suppliers that nobody is recognised. Our own choice, no source.
/// </summary>
public static class SeasonStanding
{
    /// <summary>Null where the others are too few to stay unknown. Equal scores count half.</summary>
    /// <param name="own">The score that is told.</param>
    /// <param name="others">Each lot once, with its newest score; none of the supplier who is told.</param>
    /// <param name="habits">How many others there have to be; null for the usual numbers.</param>
    public static SeasonQuarter? Of(Score own, IReadOnlyCollection<SeasonLot> others, RecordHabits? habits = null)
    {
        ArgumentNullException.ThrowIfNull(others);
        habits ??= new RecordHabits();
        if (others.Count < habits.SeasonLots || others.Select(other => other.SupplierId).Distinct().Count() < habits.SeasonSuppliers)
        {
            return null;
        }

        var below = others.Count(other => other.Score < own) + others.Count(other => other.Score == own) / 2m;
        return (below / others.Count) switch
        {
            >= 0.75m => SeasonQuarter.Upper,
            >= 0.5m => SeasonQuarter.UpperMiddle,
            >= 0.25m => SeasonQuarter.LowerMiddle,
            _ => SeasonQuarter.Lower,
        };
    }
}

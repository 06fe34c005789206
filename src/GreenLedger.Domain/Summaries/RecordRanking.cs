namespace GreenLedger.Domain.Summaries;

/// <summary>By what suppliers, producers or origins are ranked.</summary>
public enum RankedBy
{
    /// <summary>Arrival less approved sample, the higher the better.</summary>
    Cup = 0,
    FirstTime = 1,
    InTime = 2,

    /// <summary>Landed against shipped weight, the higher the better.</summary>
    Weight = 3,
    Bought = 4,
}

public static class RankedByWords
{
    public static string Word(this RankedBy by) => by switch
    {
        RankedBy.Cup => "arrival less approved",
        RankedBy.FirstTime => "approved at once",
        RankedBy.InTime => "shipped in time",
        RankedBy.Weight => "weight landed",
        RankedBy.Bought => "bought of what was offered",
        _ => throw new ArgumentOutOfRangeException(nameof(by)),
    };

    /// <summary>The figure that ranks, the higher the better, and how many it rests on.</summary>
    public static (decimal? Figure, int Number) Figure(this RankedBy by, SupplierRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return by switch
        {
            RankedBy.Cup => (record.Differences.Mean is { } mean ? (decimal)mean : null, record.Differences.Number),
            RankedBy.FirstTime => (record.FirstTime.Percent?.Points, record.FirstTime.Of),
            RankedBy.InTime => (record.InTime.Percent?.Points, record.InTime.Of),
            RankedBy.Weight => (record.Weight.Difference?.Points, record.Weight.Number),
            RankedBy.Bought => (record.Bought.Percent?.Points, record.Bought.Of),
            _ => throw new ArgumentOutOfRangeException(nameof(by)),
        };
    }
}

/// <summary>One row of a ranking.</summary>
/// <param name="Key">Whose record it is.</param>
/// <param name="Place">From 1, those that are level share one; null where there is too little behind the figure.</param>
/// <param name="Number">How many the figure rests on.</param>
public sealed record RankedRecord<T>(T Key, SupplierRecord Record, int? Place, int Number);

/// <summary>Ranks records by one figure; those with too little behind it stand below, without a place.</summary>
public static class RecordRanking
{
    /// <param name="records">Each with whose it is.</param>
    /// <param name="by">The figure.</param>
    /// <param name="least">The least number behind a figure that is ranked.</param>
    public static IReadOnlyList<RankedRecord<T>> Of<T>(IEnumerable<(T Key, SupplierRecord Record)> records, RankedBy by, int least)
    {
        var rows = records.Select(one => (one.Key, one.Record, by.Figure(one.Record).Figure, by.Figure(one.Record).Number)).ToList();
        var enough = rows.Where(row => row.Figure is not null && row.Number >= least).OrderByDescending(row => row.Figure).ThenByDescending(row => row.Number).ToList();
        return
        [
            .. enough.Select(row => new RankedRecord<T>(row.Key, row.Record, 1 + enough.Count(other => other.Figure > row.Figure), row.Number)),
            .. rows.Except(enough).OrderByDescending(row => row.Number).Select(row => new RankedRecord<T>(row.Key, row.Record, null, row.Number)),
        ];
    }
}

/// <summary>How much the house wants behind a figure before it ranks by it. One row.</summary>
public sealed class RecordHabits
{
    public Id<RecordHabits> Id { get; private set; } = Id<RecordHabits>.New();

    public int Version { get; private set; }

    /// <summary>Below this number a figure is too little to rank by (handbook, trade 11: below 5 the counts only).</summary>
    public int LeastNumber { get; private set; } = 5;

    /// <exception cref="RuleBrokenException">The number is out of range.</exception>
    public void Ask(int least)
    {
        Rule.Require(least is >= 2 and <= 100, "The least number lies between 2 and 100.", nameof(LeastNumber));
        LeastNumber = least;
    }

    /// <summary>Calendar months up to its day in which a score is held beside those of other suppliers.</summary>
    public int SeasonMonths { get; private set; } = 12;

    /// <summary>Of fewer lots of others nothing is said to a supplier.</summary>
    public int SeasonLots { get; private set; } = 5;

    /// <summary>Of fewer other suppliers nothing is said, so that none is recognised.</summary>
    public int SeasonSuppliers { get; private set; } = 3;

    /// <summary>What a season is, and how many others there have to be. Our own numbers, no source.</summary>
    /// <exception cref="RuleBrokenException">A number is out of range.</exception>
    public void HoldBeside(int months, int lots, int suppliers)
    {
        Rule.Require(months is >= 1 and <= 60, "A season lasts 1 to 60 months.", nameof(SeasonMonths));
        Rule.Require(lots is >= 3 and <= 200, "At least 3 and at most 200 lots of others are asked for.", nameof(SeasonLots));
        Rule.Require(suppliers is >= 3 and <= 50, "At least 3 other suppliers are asked for, and at most 50: of two each could reckon the other's.", nameof(SeasonSuppliers));
        (SeasonMonths, SeasonLots, SeasonSuppliers) = (months, lots, suppliers);
    }
}

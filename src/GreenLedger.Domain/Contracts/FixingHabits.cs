using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>
/// How the house counts the days of the futures markets, and how long before first notice it wants to be fixed. The counts are
/// those of the exchanges' specifications as far as they were at hand (handbook, trade 2.1; that of New York from memory);
/// the margin and the warning are common practice, no source.
/// </summary>
public sealed class FixingHabits
{
    public FixingHabits() => Id = Id<FixingHabits>.New();

    public Id<FixingHabits> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>First notice, New York: so many business days before the first business day of the month. From memory.</summary>
    public int ArabicaNoticeDays { get; private set; } = 7;

    /// <summary>First notice, London: likewise (exchange specification).</summary>
    public int RobustaNoticeDays { get; private set; } = 4;

    /// <summary>Last trading, New York: so many business days before the last business day of the month. From memory; it gives all ten dates of a published list.</summary>
    public int ArabicaTradingDays { get; private set; } = 8;

    /// <summary>Last trading, London: likewise (exchange specification).</summary>
    public int RobustaTradingDays { get; private set; } = 4;

    /// <summary>So many business days before first notice the house wants to be fixed or rolled.</summary>
    public int MarginDays { get; private set; } = 3;

    /// <summary>So many calendar days before its last sensible day a fixing shows as a task.</summary>
    public int WarningDays { get; private set; } = 21;

    /// <exception cref="RuleBrokenException">A count of days is out of range.</exception>
    public void Count(int arabicaNotice, int robustaNotice, int arabicaTrading, int robustaTrading)
    {
        ArabicaNoticeDays = Days(arabicaNotice, nameof(ArabicaNoticeDays), 30);
        RobustaNoticeDays = Days(robustaNotice, nameof(RobustaNoticeDays), 30);
        ArabicaTradingDays = Days(arabicaTrading, nameof(ArabicaTradingDays), 30);
        RobustaTradingDays = Days(robustaTrading, nameof(RobustaTradingDays), 30);
    }

    /// <exception cref="RuleBrokenException">A count of days is out of range.</exception>
    public void Keep(int margin, int warning)
    {
        MarginDays = Days(margin, nameof(MarginDays), 60);
        WarningDays = Days(warning, nameof(WarningDays), 365);
    }

    internal int NoticeDays(FuturesMarket market) => market == FuturesMarket.Arabica ? ArabicaNoticeDays : RobustaNoticeDays;

    internal int TradingDays(FuturesMarket market) => market == FuturesMarket.Arabica ? ArabicaTradingDays : RobustaTradingDays;

    private static int Days(int days, string field, int most)
    {
        Rule.Require(days >= 0 && days <= most, $"These days lie between 0 and {most}.", field);
        return days;
    }
}

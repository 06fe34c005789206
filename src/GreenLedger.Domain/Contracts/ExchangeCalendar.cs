using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>The business days of the two markets, and the days that a futures month brings (handbook, trade 2.1).</summary>
public sealed class ExchangeCalendar
{
    private readonly HashSet<(FuturesMarket Market, DateOnly Day)> _closed;

    public ExchangeCalendar(IEnumerable<ExchangeHoliday> holidays, FixingHabits habits)
    {
        _closed = [.. holidays.Select(holiday => (holiday.Market, holiday.On))];
        Habits = habits;
    }

    public FixingHabits Habits { get; }

    public bool IsBusinessDay(FuturesMarket market, DateOnly day) =>
        day.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday) && !_closed.Contains((market, day));

    /// <summary>From this day on who holds the month may be called on to take delivery.</summary>
    public DateOnly FirstNotice(FuturesMonth month) =>
        Before(month.Market, OnOrAfter(month.Market, month.FirstDay), Habits.NoticeDays(month.Market));

    public DateOnly LastTrading(FuturesMonth month) =>
        Before(month.Market, OnOrBefore(month.Market, month.FirstDay.AddMonths(1).AddDays(-1)), Habits.TradingDays(month.Market));

    /// <summary>
    /// The last sensible day to fix or roll: the margin of the house before first notice, or the day that the contract sets if
    /// that comes sooner.
    /// </summary>
    public DateOnly LastSensible(FuturesMonth month, DateOnly? fixBy)
    {
        var last = Before(month.Market, FirstNotice(month), Habits.MarginDays);
        return fixBy < last ? fixBy.Value : last;
    }

    /// <summary>Whether the table of closing days says anything about the year of a day.</summary>
    public bool Knows(FuturesMarket market, int year) => _closed.Any(closed => closed.Market == market && closed.Day.Year == year);

    private DateOnly Before(FuturesMarket market, DateOnly day, int businessDays)
    {
        for (var left = businessDays; left > 0; left--)
        {
            day = OnOrBefore(market, day.AddDays(-1));
        }

        return day;
    }

    private DateOnly OnOrBefore(FuturesMarket market, DateOnly day)
    {
        while (!IsBusinessDay(market, day))
        {
            day = day.AddDays(-1);
        }

        return day;
    }

    private DateOnly OnOrAfter(FuturesMarket market, DateOnly day)
    {
        while (!IsBusinessDay(market, day))
        {
            day = day.AddDays(1);
        }

        return day;
    }
}

using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>
/// The closing days that a new ledger starts with, by the rules of the calendar: from memory, to be held against the lists of
/// the exchanges. New York: New Year, Martin Luther King Day, Presidents' Day, Good Friday, Memorial Day, Juneteenth (from
/// 2022), Independence Day, Labor Day, Thanksgiving, Christmas. London: New Year, Good Friday, Easter Monday, the bank
/// holidays of May and August, Christmas and Boxing Day.
/// </summary>
public static class StandardHolidays
{
    public static IEnumerable<ExchangeHoliday> Of(int year)
    {
        var easter = EasterSunday(year);
        (DateOnly On, string Name)[] newYork =
        [
            (Nearest(year, 1, 1), "New Year"),
            (Nth(year, 1, DayOfWeek.Monday, 3), "Martin Luther King Day"),
            (Nth(year, 2, DayOfWeek.Monday, 3), "Presidents' Day"),
            (easter.AddDays(-2), "Good Friday"),
            (Last(year, 5, DayOfWeek.Monday), "Memorial Day"),
            (year >= 2022 ? Nearest(year, 6, 19) : default, "Juneteenth"),
            (Nearest(year, 7, 4), "Independence Day"),
            (Nth(year, 9, DayOfWeek.Monday, 1), "Labor Day"),
            (Nth(year, 11, DayOfWeek.Thursday, 4), "Thanksgiving"),
            (Nearest(year, 12, 25), "Christmas"),
        ];
        var christmas = Following(new DateOnly(year, 12, 25));
        (DateOnly On, string Name)[] london =
        [
            (Following(new DateOnly(year, 1, 1)), "New Year"),
            (easter.AddDays(-2), "Good Friday"),
            (easter.AddDays(1), "Easter Monday"),
            (Nth(year, 5, DayOfWeek.Monday, 1), "Early May bank holiday"),
            (Last(year, 5, DayOfWeek.Monday), "Spring bank holiday"),
            (Last(year, 8, DayOfWeek.Monday), "Summer bank holiday"),
            (christmas, "Christmas"),
            (Following(christmas.AddDays(1)), "Boxing Day"),
        ];
        return newYork.Where(day => day.On != default && !IsWeekend(day.On)).Select(day => new ExchangeHoliday(FuturesMarket.Arabica, day.On, day.Name))
            .Concat(london.Select(day => new ExchangeHoliday(FuturesMarket.Robusta, day.On, day.Name)));
    }

    /// <summary>Easter Sunday of the Gregorian calendar (the anonymous algorithm of 1876).</summary>
    public static DateOnly EasterSunday(int year)
    {
        int a = year % 19, b = year / 100, c = year % 100;
        var h = ((19 * a) + b - (b / 4) - ((b - ((b + 8) / 25) + 1) / 3) + 15) % 30;
        var l = (32 + (2 * (b % 4)) + (2 * (c / 4)) - h - (c % 4)) % 7;
        var m = (a + (11 * h) + (22 * l)) / 451;
        var n = h + l - (7 * m) + 114;
        return new DateOnly(year, n / 31, (n % 31) + 1);
    }

    private static bool IsWeekend(DateOnly day) => day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday;

    private static DateOnly Nth(int year, int month, DayOfWeek weekday, int number)
    {
        var first = new DateOnly(year, month, 1);
        return first.AddDays((((int)weekday - (int)first.DayOfWeek + 7) % 7) + (7 * (number - 1)));
    }

    private static DateOnly Last(int year, int month, DayOfWeek weekday)
    {
        var last = new DateOnly(year, month, DateTime.DaysInMonth(year, month));
        return last.AddDays(-(((int)last.DayOfWeek - (int)weekday + 7) % 7));
    }

    /// <summary>New York keeps a day that falls on a Sunday on Monday, and one on a Saturday on the Friday before, but New Year then not at all.</summary>
    private static DateOnly Nearest(int year, int month, int day)
    {
        var on = new DateOnly(year, month, day);
        return on.DayOfWeek switch
        {
            DayOfWeek.Sunday => on.AddDays(1),
            DayOfWeek.Saturday when month != 1 => on.AddDays(-1),
            _ => on,
        };
    }

    private static DateOnly Following(DateOnly on)
    {
        while (IsWeekend(on))
        {
            on = on.AddDays(1);
        }

        return on;
    }
}

using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Contracts;

public sealed class ExchangeCalendarTests
{
    private static readonly ExchangeCalendar Calendar = new(
        new[] { 2009, 2010, 2026, 2027, 2028 }.SelectMany(StandardHolidays.Of), new FixingHabits());

    [Theory] // a published list of last trading days of 8 August 2008 (handbook, trade 12 no. 22 and 23)
    [InlineData("KCH09", "2009-03-19")]
    [InlineData("KCK09", "2009-05-18")]
    [InlineData("KCN09", "2009-07-21")]
    [InlineData("KCU09", "2009-09-18")]
    [InlineData("KCZ09", "2009-12-18")]
    [InlineData("KCH10", "2010-03-19")]
    [InlineData("KCN10", "2010-07-20")]
    [InlineData("KCU10", "2010-09-20")]
    [InlineData("KCH27", "2027-03-18")] // no. 24, computed
    public void The_last_trading_day_of_New_York(string month, string day) =>
        Assert.Equal(Day(day), Calendar.LastTrading(FuturesMonth.Parse(month, null)));

    [Fact] // handbook, trade 12 no. 24
    public void First_notice_comes_seven_business_days_before_the_month() =>
        Assert.Equal(new DateOnly(2027, 2, 18), Calendar.FirstNotice(FuturesMonth.Parse("KCH27", null)));

    [Theory] // worked by hand on the calendar of 2027 by the exchange's rule: the fourth business day before the first of the month
    [InlineData("RCH27", "2027-02-23")] // 1 March is a Monday: 26, 25, 24, 23 February
    [InlineData("RCK27", "2027-04-27")] // 1 and 2 May a weekend, Monday 3 May a holiday, so 4 May: 30, 29, 28, 27 April
    [InlineData("RCF27", "2026-12-24")] // 1 January a Friday and closed, so Monday the 4th: 31, 30, 29, then 24 December, as 25 and 28 are kept
    public void First_notice_of_London(string month, string day) =>
        Assert.Equal(Day(day), Calendar.FirstNotice(FuturesMonth.Parse(month, null)));

    [Fact] // worked by hand: 17, 16 and 12 February 2027, since the 15th is Presidents' Day
    public void The_last_sensible_day_is_the_margin_before_first_notice() =>
        Assert.Equal(new DateOnly(2027, 2, 12), Calendar.LastSensible(FuturesMonth.Parse("KCH27", null), null));

    [Fact]
    public void A_day_that_the_contract_sets_counts_if_it_comes_sooner()
    {
        var month = FuturesMonth.Parse("KCH27", null);

        Assert.Equal(new DateOnly(2027, 1, 29), Calendar.LastSensible(month, new DateOnly(2027, 1, 29)));
        Assert.Equal(new DateOnly(2027, 2, 12), Calendar.LastSensible(month, new DateOnly(2027, 3, 1)));
    }

    [Theory] // Gauss' tables; the first is in the handbook (Good Friday 2027-03-26)
    [InlineData(2027, "2027-03-28")]
    [InlineData(2026, "2026-04-05")]
    [InlineData(2000, "2000-04-23")]
    [InlineData(2038, "2038-04-25")]
    public void Easter_Sunday(int year, string day) => Assert.Equal(Day(day), StandardHolidays.EasterSunday(year));

    [Fact] // worked by hand: 25 and 26 December 2027 are Saturday and Sunday, kept on Monday and Tuesday in London, on Friday the 24th in New York
    public void Christmas_on_a_weekend_is_kept_on_other_days()
    {
        var days = StandardHolidays.Of(2027).Where(day => day.On.Month == 12).Select(day => (day.Market, day.On.Day)).ToList();

        Assert.Equal([(FuturesMarket.Arabica, 24), (FuturesMarket.Robusta, 27), (FuturesMarket.Robusta, 28)], days);
    }

    [Fact]
    public void Counts_of_days_are_the_houses_own()
    {
        var habits = new FixingHabits();
        habits.Count(5, 4, 8, 4);
        var calendar = new ExchangeCalendar([], habits);

        Assert.Equal(new DateOnly(2027, 2, 22), calendar.FirstNotice(FuturesMonth.Parse("KCH27", null))); // worked by hand: 26, 25, 24, 23, 22
        Assert.Throws<RuleBrokenException>(() => habits.Keep(-1, 21));
    }

    private static DateOnly Day(string day) => DateOnly.Parse(day, CultureInfo.InvariantCulture);
}

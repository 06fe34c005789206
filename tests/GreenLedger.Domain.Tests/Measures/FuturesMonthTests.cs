using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class FuturesMonthTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(
            FuturesMonth.Of(FuturesMarket.Arabica, 2026, 12),
            FuturesMonth.Of(FuturesMarket.Robusta, 2027, 1),
            FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3),
            FuturesMonth.Of(FuturesMarket.Robusta, 2027, 3),
            FuturesMonth.Of(FuturesMarket.Robusta, 2027, 11));

    [Fact] // handbook, trade 12 no. 26, and others that no market lists
    public void A_symbol_of_no_listed_month_is_not_read() =>
        MeasureContract.IsNotRead<FuturesMonth>(null, "", "KCF27", "RCZ27", "KCH7", "XXH27", "KCA27", "KCH2", "KCHAB", "KCH-7");

    [Theory] // handbook, trade 12 no. 25 and 2.1: a one-digit year is the next such year on or after today
    [InlineData("KCH7", 2027, 3)]
    [InlineData("KCH27", 2027, 3)]
    [InlineData("kch2027", 2027, 3)]
    [InlineData("KCZ6", 2026, 12)]
    [InlineData("KCU6", 2036, 9)]
    [InlineData("RCX6", 2026, 11)]
    public void A_symbol_is_read_on_a_day(string symbol, int year, int month)
    {
        Assert.True(FuturesMonth.TryParse(symbol, Today, out var read));

        Assert.Equal((year, month), (read.Year, read.Month));
    }

    [Theory] // handbook, trade 12 no. 26
    [InlineData(FuturesMarket.Arabica, 1)]
    [InlineData(FuturesMarket.Robusta, 12)]
    public void A_month_that_the_market_does_not_list_is_refused(FuturesMarket market, int month) =>
        Assert.Throws<RuleBrokenException>(() => FuturesMonth.Of(market, 2027, month));
}

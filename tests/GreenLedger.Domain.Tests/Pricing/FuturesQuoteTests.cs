using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Pricing;

public sealed class FuturesQuoteTests
{
    private static readonly FuturesMonth Robusta = FuturesMonth.Of(FuturesMarket.Robusta, 2027, 5);

    [Fact] // handbook, trade 12 no. 21
    public void A_level_between_two_ticks_is_refused()
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => PricingDemo.Quote(ExampleD.March, 285.42m, PricingDemo.Today));

        Assert.Contains("steps of 0.05 US cents/lb", refusal.Message);
        Assert.Throws<RuleBrokenException>(() => PricingDemo.Quote(Robusta, 4_000.5m, PricingDemo.Today));
    }

    [Fact] // handbook, trade 12 no. 15: a tick of a lot is 18.75 USD for arabica and 10 USD for robusta
    public void A_tick_of_a_lot_is_worth_what_the_exchanges_say()
    {
        Assert.Equal(18.75m, TickOfALot(FuturesMarket.Arabica));
        Assert.Equal(10m, TickOfALot(FuturesMarket.Robusta));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-286.65)]
    [InlineData(200_000)]
    public void A_quote_that_no_market_shows_is_refused(double quoted) =>
        Assert.Throws<RuleBrokenException>(() => PricingDemo.Quote(ExampleD.March, (decimal)quoted, PricingDemo.Today));

    [Fact]
    public void The_last_earlier_quote_of_the_month_holds_and_no_other_months()
    {
        var quotes = new FuturesQuotes([PricingDemo.Quote(ExampleD.March, 280m, new(2026, 11, 19)), PricingDemo.Quote(ExampleD.March, 285.40m, new(2026, 11, 20)), PricingDemo.Quote(ExampleD.March, 300m, new(2026, 11, 23))]);

        Assert.Equal(285.40m, quotes.Find(ExampleD.March, new(2026, 11, 22))!.Quoted);
        Assert.Null(quotes.Find(ExampleD.March, new(2026, 11, 18)));
        Assert.Null(quotes.Find(Robusta, new(2026, 11, 22)));
    }

    [Fact]
    public void A_file_of_quotes_is_taken_once_and_its_bad_lines_are_told()
    {
        QuoteLine[] lines = [new(2, ExampleD.March, PricingDemo.Today, 286.65m), new(3, ExampleD.March, PricingDemo.Today.AddDays(-1), 286.66m)];

        var first = QuoteTaking.Of(lines, [], "file", null, PricingDemo.Now);
        var again = QuoteTaking.Of(lines[..1], first.Added, "file", null, PricingDemo.Now);

        Assert.Equal(3, Assert.Single(first.Problems).Row);
        Assert.Equal((0, 0, 1), (again.Added.Count, again.Corrected, again.Unchanged));
    }

    private static decimal TickOfALot(FuturesMarket market) => (market.Price(market.Tick()) * market.LotWeight()).Amount;
}

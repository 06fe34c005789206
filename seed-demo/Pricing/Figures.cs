using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.SeedDemo.Pricing;

/// <summary>The market's figures as the buyer entered them day by day.</summary>
internal static class Figures
{
    /// <summary>So that nobody takes them for the market's own.</summary>
    private const string Source = "Invented for the demo";

    public static IEnumerable<ExchangeRate> Rates(Market market, Id<Person> by) => market.Days.SelectMany(day => new[]
    {
        Rate(Currency.Usd, day, market.On(day).Usd, by),
        Rate(Currency.Gbp, day, market.On(day).Gbp, by),
    });

    /// <summary>Of every business day the five nearest months of arabica and the four nearest of robusta.</summary>
    public static IEnumerable<FuturesQuote> Quotes(Market market, Id<Person> by) => market.Days.SelectMany(day =>
        Market.Months(FuturesMarket.Arabica, day, 5).Concat(Market.Months(FuturesMarket.Robusta, day, 4))
            .Select(month => new FuturesQuote(month, day, market.Quote(month, day), Source, by, Evening(day))));

    private static ExchangeRate Rate(Currency currency, DateOnly day, double rate, Id<Person> by) =>
        new(currency, day, Math.Round((decimal)rate, 4), Source, by, Evening(day));

    private static DateTimeOffset Evening(DateOnly day) => new(day.ToDateTime(new TimeOnly(16, 30)), TimeSpan.Zero);
}

using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Summaries;

/// <summary>
/// The mean over a period of what the nearest month of a market closed at, one figure a day, each converted at the rate of its
/// own day. Days without a quote of the nearest month, or without a rate, do not count.
/// </summary>
/// <param name="PerKilogram">In the house currency, unrounded.</param>
/// <param name="Quoted">As the market quotes: US cents/lb or USD/t, unrounded.</param>
/// <param name="Days">How many days it rests on.</param>
public sealed record FuturesAverage(FuturesMarket Market, decimal PerKilogram, decimal Quoted, int Days)
{
    /// <summary>Null where no day counts.</summary>
    public static FuturesAverage? Of(FuturesMarket market, Period period, IEnumerable<FuturesQuote> quotes, ExchangeRates rates, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(period);
        ArgumentNullException.ThrowIfNull(rates);
        var days = quotes.Where(quote => quote.Month.Market == market && period.Holds(quote.On) && quote.Month == FuturesMonth.After(market, quote.On, 1)[0])
            .Select(quote => (quote.Quoted, Price: market.Price(quote.Quoted), quote.On))
            .Select(day => (day.Quoted, PerKilogram: rates.Find(day.Price.Currency, currency, day.On)?.Of(day.Price.PerKilogram)))
            .Where(day => day.PerKilogram is not null).ToList();
        return days.Count == 0 ? null : new FuturesAverage(market, days.Average(day => day.PerKilogram!.Value), days.Average(day => day.Quoted), days.Count);
    }
}

using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Data.Pricing;

public static class Quotations
{
    /// <summary>The one entry for a kind, a currency and a day.</summary>
    public static IQueryable<ExchangeRate> Of(this IQueryable<ExchangeRate> rates, RateKind kind, Currency currency, DateOnly on) =>
        rates.Where(rate => rate.Kind == kind && rate.Currency == currency && rate.On == on);

    /// <summary>For each currency the newest entry of the kind on or before the day.</summary>
    public static IQueryable<ExchangeRate> HoldingOn(this IQueryable<ExchangeRate> rates, RateKind kind, DateOnly on)
    {
        var earlier = rates.Where(rate => rate.Kind == kind && rate.On <= on);
        return from rate in earlier
               join newest in earlier.GroupBy(other => other.Currency).Select(found => new { Currency = found.Key, On = found.Max(other => other.On) })
                   on new { rate.Currency, rate.On } equals new { newest.Currency, newest.On }
               select rate;
    }

    /// <summary>For each month the newest quote on or before the day.</summary>
    public static IQueryable<FuturesQuote> HoldingOn(this IQueryable<FuturesQuote> quotes, DateOnly on)
    {
        var earlier = quotes.Where(quote => quote.On <= on);
        return from quote in earlier
               join newest in earlier.GroupBy(other => other.Month).Select(found => new { Month = found.Key, On = found.Max(other => other.On) })
                   on new { quote.Month, quote.On } equals new { newest.Month, newest.On }
               select quote;
    }

    public static IQueryable<ExchangeRate> Between(this IQueryable<ExchangeRate> rates, DateOnly? from, DateOnly? until)
    {
        rates = from is { } first ? rates.Where(rate => rate.On >= first) : rates;
        return until is { } last ? rates.Where(rate => rate.On <= last) : rates;
    }

    public static IQueryable<FuturesQuote> Between(this IQueryable<FuturesQuote> quotes, DateOnly? from, DateOnly? until)
    {
        quotes = from is { } first ? quotes.Where(quote => quote.On >= first) : quotes;
        return until is { } last ? quotes.Where(quote => quote.On <= last) : quotes;
    }
}

using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// Finds the rate between two currencies that held on a day: that day's, or the last earlier one, which keeps its date
/// (handbook, trade 9.4). Rates of one kind only.
/// </summary>
public sealed class ExchangeRates
{
    private readonly Dictionary<Currency, ExchangeRate[]> _byCurrency;

    public ExchangeRates(IEnumerable<ExchangeRate> rates, RateKind kind = RateKind.Market) =>
        _byCurrency = rates.Where(rate => rate.Kind == kind)
            .GroupBy(rate => rate.Currency)
            .ToDictionary(currency => currency.Key, currency => currency.OrderBy(rate => rate.On).ToArray());

    /// <summary>
    /// The conversion from one currency to another over the euro; null when one of the two has no rate on or before
    /// the day.
    /// </summary>
    public Conversion? Find(Currency from, Currency to, DateOnly on)
    {
        if (from == to)
        {
            return new Conversion(from, to, null, null);
        }

        var paid = Rate(from, on);
        var bought = Rate(to, on);
        return (paid is null && from != Currency.Eur) || (bought is null && to != Currency.Eur)
            ? null
            : new Conversion(from, to, paid, bought);
    }

    /// <summary>The one of two currencies that has no rate on or before the day; used to say which is missing.</summary>
    public Currency Missing(Currency from, Currency to, DateOnly on) =>
        from != Currency.Eur && Rate(from, on) is null ? from : to;

    private ExchangeRate? Rate(Currency currency, DateOnly on) =>
        _byCurrency.TryGetValue(currency, out var rates) ? Array.FindLast(rates, rate => rate.On <= on) : null;
}

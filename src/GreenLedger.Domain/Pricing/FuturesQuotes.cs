using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>Finds the quote of a month that held on a day: that day's, or the last earlier one, which keeps its date.</summary>
public sealed class FuturesQuotes
{
    private readonly Dictionary<FuturesMonth, FuturesQuote[]> _byMonth;

    public FuturesQuotes(IEnumerable<FuturesQuote> quotes) =>
        _byMonth = quotes.GroupBy(quote => quote.Month)
            .ToDictionary(month => month.Key, month => month.OrderBy(quote => quote.On).ToArray());

    /// <summary>Null when the month has no quote on or before the day.</summary>
    public FuturesQuote? Find(FuturesMonth month, DateOnly on) =>
        _byMonth.TryGetValue(month, out var quotes) ? Array.FindLast(quotes, quote => quote.On <= on) : null;
}

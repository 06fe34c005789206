using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// A delivery month of a market: <c>KCH27</c> is arabica for March 2027. Letters F G H J K M N Q U V X Z stand for
/// January to December (handbook, trade 2.1). The <c>default</c> is no month.
/// </summary>
public readonly record struct FuturesMonth(FuturesMarket Market, int Year, int Month)
    : IComparable<FuturesMonth>, IParsable<FuturesMonth>
{
    private const string Letters = "FGHJKMNQUVXZ";

    public DateOnly FirstDay => new(Year, Month, 1);

    /// <summary>The months that the market lists after a day, the nearest first.</summary>
    public static IReadOnlyList<FuturesMonth> After(FuturesMarket market, DateOnly day, int count) =>
    [
        .. Enumerable.Range(0, 12 * (count + 1)).Select(ahead => new DateOnly(day.Year, day.Month, 1).AddMonths(ahead))
            .Where(first => first > day && market.Months().Contains(first.Month))
            .Take(count)
            .Select(first => new FuturesMonth(market, first.Year, first.Month)),
    ];

    /// <summary>The months that the market lists after this one, the nearest first.</summary>
    public IReadOnlyList<FuturesMonth> Following(int count) => After(Market, FirstDay, count);

    /// <exception cref="RuleBrokenException">The market does not list this month.</exception>
    public static FuturesMonth Of(FuturesMarket market, int year, int month)
    {
        Rule.Require(year is >= 1990 and <= 2099, "The year of a futures month lies between 1990 and 2099.", "FuturesMonth");
        Rule.Require(
            market.Months().Contains(month),
            $"{market.Root()} has no such month: it lists {string.Join(", ", market.Months().Select(m => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(m)))}.",
            "FuturesMonth");
        return new FuturesMonth(market, year, month);
    }

    /// <summary>
    /// Reads <c>KCH27</c>, <c>KCH2027</c> or <c>KCH7</c>; a one-digit year is the next such year on or after
    /// <paramref name="today"/>.
    /// </summary>
    public static bool TryParse(string? symbol, DateOnly today, out FuturesMonth month)
    {
        month = default;
        var text = (symbol ?? "").Trim().ToUpperInvariant();
        if (text.Length is not (4 or 5 or 7) || !TryMarket(text[..2], out var market))
        {
            return false;
        }

        var number = Letters.IndexOf(text[2], StringComparison.Ordinal) + 1;
        if (!market.Months().Contains(number)
            || !int.TryParse(text[3..], NumberStyles.None, CultureInfo.InvariantCulture, out var digits))
        {
            return false;
        }

        var year = text.Length switch { 4 => NextYearEndingIn(digits, number, today), 5 => 2000 + digits, _ => digits };
        if (year is < 1990 or > 2099)
        {
            return false;
        }

        month = new FuturesMonth(market, year, number);
        return true;
    }

    public static FuturesMonth Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var month) ? month : throw new FormatException($"'{s}' is not a futures month.");

    /// <summary>Reads symbols with a two- or four-digit year only, since no date is at hand.</summary>
    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out FuturesMonth result)
    {
        result = default;
        return s?.Trim().Length != 4 && TryParse(s, DateOnly.MinValue, out result);
    }

    public int CompareTo(FuturesMonth other) => (Year, Month, Market).CompareTo((other.Year, other.Month, other.Market));

    /// <summary>The symbol with a two-digit year: <c>KCH27</c>.</summary>
    public override string ToString() => Month is < 1 or > 12
        ? ""
        : Market.Root() + Letters[Month - 1] + (Year % 100).ToString("00", CultureInfo.InvariantCulture);

    public static bool operator <(FuturesMonth left, FuturesMonth right) => left.CompareTo(right) < 0;

    public static bool operator <=(FuturesMonth left, FuturesMonth right) => left.CompareTo(right) <= 0;

    public static bool operator >(FuturesMonth left, FuturesMonth right) => left.CompareTo(right) > 0;

    public static bool operator >=(FuturesMonth left, FuturesMonth right) => left.CompareTo(right) >= 0;

    private static bool TryMarket(string root, out FuturesMarket market)
    {
        market = root == "RC" ? FuturesMarket.Robusta : FuturesMarket.Arabica;
        return root is "KC" or "RC";
    }

    private static int NextYearEndingIn(int digit, int month, DateOnly today)
    {
        var year = today.Year - (today.Year % 10) + digit;
        return year < today.Year || (year == today.Year && month < today.Month) ? year + 10 : year;
    }
}

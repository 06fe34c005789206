using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// An ISO 4217 currency code that the ledger knows with its number of decimals.
/// The <c>default</c> is no currency; money in it cannot be added to any other.
/// Source of the decimals: ISO 4217, from memory (handbook, trade 1.4).
/// </summary>
public readonly record struct Currency : IParsable<Currency>, IComparable<Currency>
{
    private static readonly FrozenDictionary<string, int> DecimalsByCode = Table();

    private readonly string? _code;

    private Currency(string code) => _code = code;

    public static Currency Eur { get; } = new("EUR");

    public static Currency Usd { get; } = new("USD");

    public static Currency Gbp { get; } = new("GBP");

    public string Code => _code ?? "";

    /// <summary>How many decimals the smallest coin or book unit has: 2 for EUR, 0 for JPY, 3 for KWD.</summary>
    public int Decimals => DecimalsByCode.GetValueOrDefault(Code, 2);

    public static IReadOnlyList<string> Codes { get; } = [.. DecimalsByCode.Keys.Order(StringComparer.Ordinal)];

    /// <exception cref="RuleBrokenException">The code is not one of ISO 4217 that the ledger knows.</exception>
    public static Currency Of(string? code)
    {
        Rule.Require(TryParse(code, null, out var currency), $"'{code}' is not a currency code of ISO 4217, such as USD or EUR.", "Currency");
        return currency;
    }

    public static Currency Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var currency) ? currency : throw new FormatException($"'{s}' is not a currency code.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Currency result)
    {
        var code = s?.Trim().ToUpperInvariant() ?? "";
        var known = DecimalsByCode.ContainsKey(code);
        result = known ? new Currency(code) : default;
        return known;
    }

    public int CompareTo(Currency other) => string.CompareOrdinal(Code, other.Code);

    public override string ToString() => Code;

    public static bool operator <(Currency left, Currency right) => left.CompareTo(right) < 0;

    public static bool operator <=(Currency left, Currency right) => left.CompareTo(right) <= 0;

    public static bool operator >(Currency left, Currency right) => left.CompareTo(right) > 0;

    public static bool operator >=(Currency left, Currency right) => left.CompareTo(right) >= 0;

    private static FrozenDictionary<string, int> Table()
    {
        var none = "BIF CLP JPY KRW PYG RWF UGX VND XAF XOF";
        var two = "AUD BOB BRL CAD CHF CNY COP CRC CZK DKK DOP ETB EUR GBP GTQ HKD HNL HUF IDR ILS INR ISK KES LAK LKR "
            + "MMK MWK MXN MYR NIO NOK NZD PEN PGK PHP PLN RON RUB SAR SEK SGD THB TRY TWD TZS USD YER ZAR ZMW AED BGN CDF";
        var three = "BHD JOD KWD OMR TND";
        return none.Split(' ').Select(code => (code, 0))
            .Concat(two.Split(' ').Select(code => (code, 2)))
            .Concat(three.Split(' ').Select(code => (code, 3)))
            .ToFrozenDictionary(pair => pair.code, pair => pair.Item2);
    }
}

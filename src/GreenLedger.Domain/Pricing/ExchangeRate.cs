using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// What an exchange rate is for. Customs uses monthly rates of its own (handbook, trade 9.4), which never mix with
/// those of the market.
/// </summary>
public enum RateKind
{
    Market = 0,
    Customs = 1,
}

/// <summary>
/// How many units of a currency one euro buys on a day, as the European Central Bank states its reference rates,
/// exact to the hundred-millionth. The euro itself has no entry: it is always 1.
/// </summary>
public sealed class ExchangeRate
{
    private const decimal Scale = 100_000_000m;

    private ExchangeRate()
    {
        Source = "";
    }

    /// <exception cref="RuleBrokenException">The rate is not above zero, has more than eight decimals, or is the euro's.</exception>
    public ExchangeRate(
        Currency currency, DateOnly on, decimal unitsPerEuro, string source, Id<Person>? by, DateTimeOffset at, RateKind kind = RateKind.Market)
    {
        Rule.Require(currency != default, "Choose the currency of the rate.", nameof(Currency));
        Rule.Require(currency != Currency.Eur, "The euro needs no rate: rates are stated per euro.", nameof(Currency));
        Id = Id<ExchangeRate>.New();
        Currency = currency;
        On = on;
        Kind = kind;
        Source = "";
        Correct(unitsPerEuro, source, by, at);
    }

    public Id<ExchangeRate> Id { get; private set; }

    public int Version { get; private set; }

    public Currency Currency { get; private set; }

    public DateOnly On { get; private set; }

    public RateKind Kind { get; private set; }

    public long HundredMillionthsPerEuro { get; private set; }

    /// <summary>Where the rate comes from: the bank or person, or the file it came in.</summary>
    public string Source { get; private set; }

    public Id<Person>? By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>Units of the currency for 1 EUR.</summary>
    public decimal UnitsPerEuro => HundredMillionthsPerEuro / Scale;

    /// <summary>Replaces the rate of this currency and day.</summary>
    /// <exception cref="RuleBrokenException">The rate is not above zero or has more than eight decimals.</exception>
    public void Correct(decimal unitsPerEuro, string source, Id<Person>? by, DateTimeOffset at)
    {
        Rule.Require(
            unitsPerEuro is > 0m and <= 1_000_000_000m,
            "An exchange rate is above zero: state how many units of the currency one euro buys.",
            nameof(UnitsPerEuro));
        Rule.Require(
            unitsPerEuro * Scale == Math.Truncate(unitsPerEuro * Scale),
            "An exchange rate has at most eight decimals.",
            nameof(UnitsPerEuro));
        HundredMillionthsPerEuro = decimal.ToInt64(unitsPerEuro * Scale);
        Source = Rule.Text(source, "The source of the rate", field: nameof(Source));
        By = by;
        At = at;
    }
}

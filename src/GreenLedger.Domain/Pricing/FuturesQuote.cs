using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Pricing;

/// <summary>What a futures month closed at on a day, as its market quotes it: US cents/lb or USD/t.</summary>
public sealed class FuturesQuote
{
    private FuturesQuote()
    {
        Source = "";
    }

    /// <exception cref="RuleBrokenException">The figure is not a price that the market can show.</exception>
    public FuturesQuote(FuturesMonth month, DateOnly on, decimal quoted, string source, Id<Person>? by, DateTimeOffset at)
    {
        Rule.Require(month != default, "Name the futures month, such as KCH27.", nameof(Month));
        Id = Id<FuturesQuote>.New();
        Month = month;
        On = on;
        Source = "";
        Correct(quoted, source, by, at);
    }

    public Id<FuturesQuote> Id { get; private set; }

    public int Version { get; private set; }

    public FuturesMonth Month { get; private set; }

    public DateOnly On { get; private set; }

    public long QuotedTenThousandths { get; private set; }

    /// <summary>Where the figure comes from: who read it where, or the file it came in.</summary>
    public string Source { get; private set; }

    public Id<Person>? By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>Cents per pound for arabica, dollars per tonne for robusta.</summary>
    public decimal Quoted => QuotedTenThousandths / 10_000m;

    /// <summary>Replaces the figure of this month and day.</summary>
    /// <exception cref="RuleBrokenException">The figure is not above zero or not a multiple of the market's tick.</exception>
    public void Correct(decimal quoted, string source, Id<Person>? by, DateTimeOffset at)
    {
        var tick = Month.Market.Tick();
        Rule.Require(quoted is > 0m and <= 100_000m, "A futures quote lies above zero and at most 100,000: please check the figure and its unit.", nameof(Quoted));
        Rule.Require(
            quoted % tick == 0m,
            $"{quoted.ToString("0.####", CultureInfo.InvariantCulture)} is no price of {Month.Market.Root()}: it moves in steps of {tick.ToString("0.##", CultureInfo.InvariantCulture)} {Month.Market.QuoteUnit()}.",
            nameof(Quoted));
        QuotedTenThousandths = decimal.ToInt64(quoted * 10_000m);
        Source = Rule.Text(source, "The source of the quote", field: nameof(Source));
        By = by;
        At = at;
    }
}

using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.People;

/// <summary>
/// The buying house's own settings: one row. What the handbook marks as habit or from memory is set here and is
/// nowhere a constant.
/// </summary>
public sealed class House
{
    private House()
    {
        Name = "";
    }

    public House(string name, Currency currency)
    {
        Id = Id<House>.New();
        Name = Rule.Text(name, "The name of the house", field: nameof(Name));
        Currency = currency;
    }

    public Id<House> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    /// <summary>The currency of landed cost, shortlists and summaries.</summary>
    public Currency Currency { get; private set; }

    public bool ShowsPounds { get; private set; }

    /// <summary>
    /// Between cuppers on the same coffee, one standard deviation in points, for a panel with too few sheets to
    /// estimate its own. Common practice, no source: set it from the house's own sessions.
    /// </summary>
    public Score Reproducibility { get; private set; } = Score.Of(1.00m);

    /// <summary>One cupper on the same coffee twice, one standard deviation in points. Common practice, no source.</summary>
    public Score Repeatability { get; private set; } = Score.Of(0.50m);

    /// <summary>
    /// Codes of the currencies whose interest year has 365 days; all others have 360. Money-market convention, from
    /// memory (handbook, trade 3.3): sterling.
    /// </summary>
    public string LongYears { get; private set; } = "GBP";

    /// <summary>The currencies of <see cref="LongYears"/>.</summary>
    public IReadOnlySet<Currency> LongYearCurrencies => LongYears
        .Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Currency.Of).ToHashSet();

    /// <summary>In which clock times are shown and entered, by its IANA name; UTC until the house says otherwise.</summary>
    public string TimeZone { get; private set; } = ClockZone.Utc.Name;

    /// <exception cref="RuleBrokenException">There is no such zone.</exception>
    public void ReadClocksIn(string? zone) => TimeZone = ClockZone.Of(zone, nameof(TimeZone)).Name;

    public void Rename(string name) => Name = Rule.Text(name, "The name of the house", field: nameof(Name));

    public void UseCurrency(Currency currency)
    {
        Rule.Require(currency != default, "Choose the currency of the house.", nameof(Currency));
        Currency = currency;
    }

    /// <summary>States the currencies whose interest year has 365 days, by their codes with spaces or commas between.</summary>
    /// <exception cref="RuleBrokenException">One of them is no currency code.</exception>
    public void CountInterestIn365DaysFor(string? codes)
    {
        var currencies = (codes ?? "").Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        foreach (var code in currencies)
        {
            Rule.Require(Currency.TryParse(code, null, out _), $"'{code}' is not a currency code of ISO 4217, such as GBP.", nameof(LongYears));
        }

        LongYears = string.Join(' ', currencies.Select(code => code.ToUpperInvariant()).Distinct().Order(StringComparer.Ordinal));
    }

    public void ShowWeightsIn(bool pounds) => ShowsPounds = pounds;

    public void Expect(Score reproducibility, Score repeatability)
    {
        Rule.Require(reproducibility.Points is > 0m and <= 10m, "Reproducibility lies between 0 and 10 points.", nameof(Reproducibility));
        Rule.Require(repeatability.Points is > 0m and <= 10m, "Repeatability lies between 0 and 10 points.", nameof(Repeatability));
        Rule.Require(repeatability <= reproducibility, "Repeatability (one cupper) cannot exceed reproducibility (between cuppers).", nameof(Repeatability));
        Reproducibility = reproducibility;
        Repeatability = repeatability;
    }
}

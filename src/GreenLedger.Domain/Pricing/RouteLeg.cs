using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>How a route answers a stage: with an amount, with "in another leg", or with "does not occur".</summary>
public enum LegAnswer
{
    Amount = 0,
    Included = 1,
    None = 2,
}

/// <summary>What the amount or rate of a leg is counted on.</summary>
public enum LegBasis
{
    PerKilogram = 0,
    PerBag = 1,
    PerContainer = 2,
    PerShipment = 3,
    PercentOfValue = 4,

    /// <summary>At the insurance stage on the insured share of CIF, which contains the premium; elsewhere on CIF.</summary>
    PercentOfCif = 5,

    /// <summary>A year's interest on the price, by days.</summary>
    Interest = 6,

    /// <summary>For a tonne and a month; started months count in full (common practice, no source).</summary>
    PerTonneMonth = 7,
}

/// <summary>How many days an interest year has.</summary>
public enum InterestYear
{
    /// <summary>365 days for the currencies that the house lists so, 360 for all others.</summary>
    ByCurrency = 0,
    Act360 = 1,
    Act365 = 2,
}

/// <summary>One cost of a route at one stage. A stage may have several (freight and its surcharges).</summary>
public sealed class RouteLeg
{
    private const decimal Million = 1_000_000m;

    private RouteLeg()
    {
        Name = "";
    }

    private RouteLeg(CostStage stage, string? name, LegAnswer answer)
    {
        Id = Id<RouteLeg>.New();
        Stage = stage;
        Name = Rule.OptionalText(name, "The name of the leg", 80, nameof(Name)) ?? stage.Word();
        Answer = answer;
    }

    public Id<RouteLeg> Id { get; private set; }

    public int Position { get; private set; }

    public CostStage Stage { get; private set; }

    /// <summary>As the invoice calls it; the stage's own word when left empty.</summary>
    public string Name { get; private set; }

    public LegAnswer Answer { get; private set; }

    public LegBasis Basis { get; private set; }

    public long AmountMillionths { get; private set; }

    /// <summary>Of the amount; for a rate it follows the price and stands empty.</summary>
    public Currency Currency { get; private set; }

    /// <summary>For the bases that are a share: per cent, for interest per cent a year.</summary>
    public Percent Rate { get; private set; }

    /// <summary>Days of interest: from payment to use or sale, first day excluded, last included.</summary>
    public int Days { get; private set; }

    /// <summary>Started months of storage.</summary>
    public int Months { get; private set; }

    public InterestYear Year { get; private set; }

    /// <summary>For one unit of the basis, in <see cref="Currency"/>.</summary>
    public decimal Amount => AmountMillionths / Million;

    public bool IsShare => Basis is LegBasis.PercentOfValue or LegBasis.PercentOfCif or LegBasis.Interest;

    /// <summary>The cost is in another leg of the route.</summary>
    public static RouteLeg Included(CostStage stage, string? name = null) => new(stage, name, LegAnswer.Included);

    /// <summary>The cost does not occur on this route.</summary>
    public static RouteLeg None(CostStage stage, string? name = null) => new(stage, name, LegAnswer.None);

    /// <summary>An amount of money per kilogram, bag, container or shipment.</summary>
    /// <exception cref="RuleBrokenException">The amount is negative or too large, or the currency is missing.</exception>
    public static RouteLeg Of(CostStage stage, LegBasis basis, decimal amount, Currency currency, string? name = null)
    {
        Rule.Require(basis is LegBasis.PerKilogram or LegBasis.PerBag or LegBasis.PerContainer or LegBasis.PerShipment, "This basis needs more than an amount.", nameof(Basis));
        return new RouteLeg(stage, name, LegAnswer.Amount).With(basis, amount, currency);
    }

    /// <summary>A share of the price or of CIF.</summary>
    /// <exception cref="RuleBrokenException">The rate lies outside 0 to 100 %, or CIF is asked for before it is known.</exception>
    public static RouteLeg Share(CostStage stage, LegBasis basis, Percent rate, string? name = null)
    {
        Rule.Require(basis is LegBasis.PercentOfValue or LegBasis.PercentOfCif, "Choose whether the share is of the value or of CIF.", nameof(Basis));
        Rule.Require(
            basis == LegBasis.PercentOfValue || stage >= CostStage.Insurance,
            $"{stage.Word()} comes before CIF is known: state it as a share of the value.",
            nameof(Basis));
        return new RouteLeg(stage, name, LegAnswer.Amount).With(basis, rate);
    }

    /// <summary>Interest on the price for a number of days.</summary>
    /// <exception cref="RuleBrokenException">The rate or the days are out of range.</exception>
    public static RouteLeg Interest(
        CostStage stage, Percent rate, int days, InterestYear year = InterestYear.ByCurrency, string? name = null)
    {
        Rule.Require(days is >= 0 and <= 3650, "Interest runs for 0 to 3650 days.", nameof(Days));
        var leg = new RouteLeg(stage, name, LegAnswer.Amount).With(LegBasis.Interest, rate);
        leg.Days = days;
        leg.Year = year;
        return leg;
    }

    /// <summary>Storage for a tonne and a started month.</summary>
    /// <exception cref="RuleBrokenException">The amount or the months are out of range, or the currency is missing.</exception>
    public static RouteLeg PerTonneMonth(CostStage stage, decimal amount, Currency currency, int months, string? name = null)
    {
        Rule.Require(months is >= 0 and <= 120, "Storage lasts 0 to 120 started months.", nameof(Months));
        var leg = new RouteLeg(stage, name, LegAnswer.Amount).With(LegBasis.PerTonneMonth, amount, currency);
        leg.Months = months;
        return leg;
    }

    internal void Place(int position) => Position = position;

    private RouteLeg With(LegBasis basis, decimal amount, Currency currency)
    {
        Rule.Require(amount is >= 0m and <= 1_000_000_000m, $"{Stage.Word()}: an amount is zero or more.", nameof(Amount));
        Rule.Require(amount * Million == Math.Truncate(amount * Million), $"{Stage.Word()}: an amount has at most six decimals.", nameof(Amount));
        Rule.Require(currency != default, $"{Stage.Word()}: choose the currency of the amount.", nameof(Currency));
        Basis = basis;
        AmountMillionths = decimal.ToInt64(amount * Million);
        Currency = currency;
        return this;
    }

    private RouteLeg With(LegBasis basis, Percent rate)
    {
        Rule.Require(rate.Points is >= 0m and <= 100m, $"{Stage.Word()}: a rate lies between 0 and 100 %.", nameof(Rate));
        Basis = basis;
        Rate = rate;
        return this;
    }
}

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

    /// <summary>The one word for answer and basis together.</summary>
    public LegWay Way => Answer switch
    {
        LegAnswer.Included => LegWay.Included,
        LegAnswer.None => LegWay.None,
        _ => Basis switch
        {
            LegBasis.PerKilogram => LegWay.PerKilogram,
            LegBasis.PerBag => LegWay.PerBag,
            LegBasis.PerContainer => LegWay.PerContainer,
            LegBasis.PerShipment => LegWay.PerShipment,
            LegBasis.PercentOfValue => LegWay.PercentOfValue,
            LegBasis.PercentOfCif => LegWay.PercentOfCif,
            LegBasis.PerTonneMonth => LegWay.PerTonneMonth,
            _ => LegWay.Interest + (int)Year,
        },
    };

    /// <summary>The leg as it was stated.</summary>
    public LegLine Line => new(
        Stage,
        Way,
        !Way.HasFigure() ? null : Way.IsRate() ? Rate.Points : Amount,
        Currency == default ? null : Currency,
        Basis == LegBasis.Interest ? Days : Basis == LegBasis.PerTonneMonth ? Months : null,
        Name);

    /// <summary>The cost is in another leg of the route.</summary>
    public static RouteLeg Included(CostStage stage, string? name = null) => From(new(stage, LegWay.Included, Name: name));

    /// <summary>The cost does not occur on this route.</summary>
    public static RouteLeg None(CostStage stage, string? name = null) => From(new(stage, LegWay.None, Name: name));

    /// <summary>An amount of money per kilogram, bag, container or shipment.</summary>
    public static RouteLeg Of(CostStage stage, LegBasis basis, decimal amount, Currency currency, string? name = null) =>
        From(new(stage, Enum.Parse<LegWay>(basis.ToString()), amount, currency, Name: name));

    /// <summary>A share of the value or of CIF.</summary>
    public static RouteLeg Share(CostStage stage, LegBasis basis, Percent rate, string? name = null) =>
        From(new(stage, Enum.Parse<LegWay>(basis.ToString()), rate.Points, Name: name));

    /// <summary>Interest on the value for a number of days.</summary>
    public static RouteLeg Interest(
        CostStage stage, Percent rate, int days, InterestYear year = InterestYear.ByCurrency, string? name = null) =>
        From(new(stage, LegWay.Interest + (int)year, rate.Points, Time: days, Name: name));

    /// <summary>Storage for a tonne and a started month.</summary>
    public static RouteLeg PerTonneMonth(CostStage stage, decimal amount, Currency currency, int months, string? name = null) =>
        From(new(stage, LegWay.PerTonneMonth, amount, currency, months, name));

    /// <summary>
    /// The leg that a line states. <paramref name="path"/> stands before the member that a broken rule names, so that a
    /// form with many lines can show the message at the right one.
    /// </summary>
    /// <exception cref="RuleBrokenException">A figure is missing or out of range, or CIF is asked for before it is known.</exception>
    public static RouteLeg From(LegLine line, string path = "")
    {
        Rule.Require(Enum.IsDefined(line.Stage) && Enum.IsDefined(line.Way), "Choose the stage and how it is answered.", path + nameof(LegLine.Way));
        var leg = new RouteLeg
        {
            Id = Id<RouteLeg>.New(),
            Stage = line.Stage,
            Name = Rule.OptionalText(line.Name, "The name of the leg", 80, path + nameof(Name)) ?? line.Stage.Word(),
        };
        switch (line.Way)
        {
            case LegWay.Included: leg.Answer = LegAnswer.Included; break;
            case LegWay.None: leg.Answer = LegAnswer.None; break;
            default: leg.Take(line, path); break;
        }

        return leg;
    }

    internal void Place(int position) => Position = position;

    private void Take(LegLine line, string path)
    {
        Rule.Require(line.Figure is not null, $"{Stage.Word()}: state the {(line.Way.IsRate() ? "rate in per cent" : "amount")}.", path + nameof(LegLine.Figure));
        if (line.Way.IsRate())
        {
            TakeRate(line, path);
        }
        else
        {
            TakeAmount(line, path);
        }

        var needsTime = Basis is LegBasis.Interest or LegBasis.PerTonneMonth;
        var most = Basis == LegBasis.Interest ? 3650 : 120;
        Rule.Require(
            !needsTime || line.Time is { } time && time >= 0 && time <= most,
            Basis == LegBasis.Interest ? $"{Stage.Word()}: state the days of interest, 0 to {most}." : $"{Stage.Word()}: state the started months, 0 to {most}.",
            path + nameof(LegLine.Time));
        Days = Basis == LegBasis.Interest ? line.Time!.Value : 0;
        Months = Basis == LegBasis.PerTonneMonth ? line.Time!.Value : 0;
    }

    private void TakeAmount(LegLine line, string path)
    {
        var amount = line.Figure!.Value;
        Rule.Require(amount is >= 0m and <= 1_000_000_000m, $"{Stage.Word()}: an amount is zero or more.", path + nameof(LegLine.Figure));
        Rule.Require(amount * Million == Math.Truncate(amount * Million), $"{Stage.Word()}: an amount has at most six decimals.", path + nameof(LegLine.Figure));
        Rule.Require(line.Currency is { } currency && currency != default, $"{Stage.Word()}: choose the currency of the amount.", path + nameof(LegLine.Currency));
        AmountMillionths = decimal.ToInt64(amount * Million);
        Currency = line.Currency.Value;
        Basis = line.Way switch
        {
            LegWay.PerKilogram => LegBasis.PerKilogram,
            LegWay.PerBag => LegBasis.PerBag,
            LegWay.PerContainer => LegBasis.PerContainer,
            LegWay.PerShipment => LegBasis.PerShipment,
            _ => LegBasis.PerTonneMonth,
        };
    }

    private void TakeRate(LegLine line, string path)
    {
        var rate = line.Figure!.Value;
        Rule.Require(rate is >= 0m and <= 100m, $"{Stage.Word()}: a rate lies between 0 and 100 %.", path + nameof(LegLine.Figure));
        Rule.Require(rate * 10_000m == Math.Truncate(rate * 10_000m), $"{Stage.Word()}: a rate has at most four decimals.", path + nameof(LegLine.Figure));
        Rule.Require(
            line.Way != LegWay.PercentOfCif || Stage >= CostStage.Insurance,
            $"{Stage.Word()} comes before CIF is known: state it as a share of the value.",
            path + nameof(LegLine.Way));
        Rate = Percent.Of(rate);
        Basis = line.Way switch
        {
            LegWay.PercentOfValue => LegBasis.PercentOfValue,
            LegWay.PercentOfCif => LegBasis.PercentOfCif,
            _ => LegBasis.Interest,
        };
        Year = Basis == LegBasis.Interest ? (InterestYear)(line.Way - LegWay.Interest) : InterestYear.ByCurrency;
    }
}

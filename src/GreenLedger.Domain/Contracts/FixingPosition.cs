using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>A part of a contract whose price is fixed: its weight in the market, the level, and the differential that held on the day.</summary>
/// <param name="Level">As the market quotes: US cents/lb or USD/t.</param>
/// <param name="Differential">In the same unit.</param>
public sealed record FixedPart(FuturesMonth Month, Weight Weight, decimal Level, decimal Differential);

/// <summary>
/// How much of a contract is fixed and at what price. Levels are averaged by weight and never simply; each part keeps the
/// differential that held when it was fixed, so that a roll later on leaves it alone (handbook, trade 2.3).
/// </summary>
public sealed class FixingPosition
{
    private FixingPosition(FuturesMonth month, decimal differential, Weight toFix, IReadOnlyList<FixedPart> parts) =>
        (Month, Differential, ToFix, Parts) = (month, differential, toFix, parts);

    /// <summary>The month that what is open stands against.</summary>
    public FuturesMonth Month { get; }

    /// <summary>The differential of what is open.</summary>
    public decimal Differential { get; }

    /// <summary>All that is to be fixed: whole lots of the market, or the contract's weight.</summary>
    public Weight ToFix { get; }

    public IReadOnlyList<FixedPart> Parts { get; }

    public FuturesMarket Market => Month.Market;

    public Weight Fixed => Parts.Aggregate(Weight.Zero, (sum, part) => sum + part.Weight);

    public Weight Open => ToFix - Fixed;

    public bool IsFixed => Open == Weight.Zero;

    /// <summary>In lots of the market, unrounded.</summary>
    public decimal OpenLots => PriceTerms.LotsOf(Market, Open);

    /// <summary>The levels averaged by weight, unrounded; null while nothing is fixed.</summary>
    public decimal? AverageLevel => Parts.Count == 0 ? null : Parts.Sum(part => part.Weight.Kilograms * part.Level) / Fixed.Kilograms;

    /// <summary>Average with differentials, unrounded, as the market quotes; null while anything is open.</summary>
    public decimal? Final => IsFixed ? PartsSum() / ToFix.Kilograms : null;

    /// <param name="month">What is open stands against.</param>
    /// <param name="differential">Of what is open.</param>
    /// <param name="toFix">All that is to be fixed.</param>
    /// <param name="parts">What is fixed so far.</param>
    /// <exception cref="RuleBrokenException">More is fixed than agreed, or a level is no price of the market.</exception>
    public static FixingPosition Of(FuturesMonth month, decimal differential, Weight toFix, IReadOnlyList<FixedPart> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        Rule.Require(toFix > Weight.Zero, "There is nothing to fix: state lots or a weight.", "Lots");
        foreach (var part in parts)
        {
            Rule.Require(part.Month.Market == month.Market, $"{part.Month} is a month of another market than {month}.", "Month");
            Rule.Require(part.Weight > Weight.Zero, "A fixing is of one lot or more, or of a weight above 0.", "Lots");
            RequireLevel(month.Market, part.Level, nameof(FixedPart.Level));
        }

        var position = new FixingPosition(month, differential, toFix, parts);
        Rule.Require(position.Fixed <= toFix, $"{Said(month.Market, position.Fixed)} would be fixed, but only {Said(month.Market, toFix)} are agreed: fix less, or amend the contract first.", "Lots");
        return position;
    }

    /// <summary>Average with differentials where what is open stands at a settlement, unrounded: always provisional.</summary>
    public decimal Provisional(decimal settlement) =>
        (PartsSum() + (Open.Kilograms * (settlement + Differential))) / ToFix.Kilograms;

    /// <summary>What a weight is worth at the final price; null while anything is open. Rounded once.</summary>
    public Money? FinalValue(Weight net) => IsFixed ? Value(PartsSum(), net) : null;

    /// <summary>What a weight is worth provisionally, with what is open at a settlement. Rounded once.</summary>
    public Money ProvisionalValue(Weight net, decimal settlement) =>
        Value(PartsSum() + (Open.Kilograms * (settlement + Differential)), net);

    /// <summary>What the open part costs more if the market rises by so much, as it quotes.</summary>
    public Money Exposure(decimal rise) => Market.Price(rise) * Open;

    /// <summary>A level is above zero and a multiple of the market's tick.</summary>
    /// <exception cref="RuleBrokenException">It is not.</exception>
    public static void RequireLevel(FuturesMarket market, decimal level, string field)
    {
        var tick = market.Tick();
        Rule.Require(level is > 0m and <= 100_000m, "A level lies above zero and at most at 100,000: please check the figure and its unit.", field);
        Rule.Require(
            level % tick == 0m,
            string.Create(CultureInfo.InvariantCulture, $"{level:0.####} is no price of {market.Root()}: it moves in steps of {tick:0.##} {market.QuoteUnit()}."),
            field);
    }

    /// <summary>In lots where they are whole, else as a weight: <c>2 lots of KC</c>, <c>9,000 kg</c>.</summary>
    public static string Said(FuturesMarket market, Weight weight)
    {
        var lots = PriceTerms.LotsOf(market, weight);
        return lots == decimal.Truncate(lots)
            ? string.Create(CultureInfo.InvariantCulture, $"{lots:#,0} {(lots == 1m ? "lot" : "lots")} of {market.Root()}")
            : string.Create(CultureInfo.InvariantCulture, $"{weight.Kilograms:#,0.###} kg");
    }

    private decimal PartsSum() => Parts.Sum(part => part.Weight.Kilograms * (part.Level + part.Differential));

    /// <summary>Multiplied before divided: an average that does not end loses nothing on the way to money.</summary>
    private Money Value(decimal weighed, Weight net)
    {
        var one = Market.Price(1m);
        return Money.Of(weighed * net.Kilograms * one.Amount / (ToFix.Kilograms * one.Unit.Weight().Kilograms), one.Currency);
    }
}

using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>Who decides on which day a price is fixed.</summary>
public enum Caller
{
    Buyer = 0,
    Seller = 1,
}

/// <summary>
/// An outright price, or a differential to a futures month that is fixed later (handbook, trade 2.2).
/// </summary>
/// <param name="Outright">Null when the price is to be fixed.</param>
/// <param name="Month">The futures month that the differential stands against when the contract is signed.</param>
/// <param name="Differential">As the market quotes: US cents/lb or USD/t.</param>
/// <param name="MarketLots">Whole lots of the market to be fixed, as agreed; null when it is fixed by weight.</param>
/// <param name="Call">Who decides when.</param>
/// <param name="FixBy">The last day that the parties agreed on; null where the market's calendar alone sets one.</param>
/// <param name="ProvisionalShare">What is paid of the provisional value before all is fixed; null where nothing is agreed.</param>
public sealed record PriceTerms(
    PricePerWeight? Outright, FuturesMonth? Month, decimal? Differential, int? MarketLots, Caller? Call, DateOnly? FixBy, Percent? ProvisionalShare)
{
    /// <summary>
    /// Of a purchase from before this ledger began whose price nobody wrote down: it is told as not known, and nothing is worked out from it.
    /// </summary>
    public bool IsNotKnown { get; init; }

    public bool IsOutright() => Outright is not null;

    public static PriceTerms NotKnown() => new(null, null, null, null, null, null, null) { IsNotKnown = true };

    public static PriceTerms AtPrice(PricePerWeight price) => new(price, null, null, null, null, null, null);

    /// <summary>Lots of the market to be fixed for a weight: the nearest whole number; null below one lot, which is fixed by weight.</summary>
    /// <remarks>Common practice, no source; the parties may agree another number, which is the one that counts.</remarks>
    public static int? UsualLots(FuturesMarket market, Weight net)
    {
        var exact = LotsOf(market, net);
        return exact < 1m ? null : decimal.ToInt32(Math.Round(exact, 0, MidpointRounding.AwayFromZero));
    }

    /// <summary>The weight in lots of the market, unrounded.</summary>
    public static decimal LotsOf(FuturesMarket market, Weight weight) => (decimal)weight.Micrograms / market.LotWeight().Micrograms;

    /// <summary>
    /// The month that is usual for a last month of shipment: the first that the market lists two months later or more. For
    /// arabica that is March after shipment from November to January, May for February and March, July for April and May,
    /// September for June and July, December for August to October (common practice, no source; handbook, trade 2.2).
    /// </summary>
    public static FuturesMonth UsualMonth(FuturesMarket market, DateOnly shipUntil)
    {
        var first = new DateOnly(shipUntil.Year, shipUntil.Month, 1).AddMonths(2);
        while (!market.Months().Contains(first.Month))
        {
            first = first.AddMonths(1);
        }

        return FuturesMonth.Of(market, first.Year, first.Month);
    }

    internal PriceState Begins() => IsOutright() ? PriceState.Outright : IsNotKnown ? PriceState.NotKnown : PriceState.Unfixed;

    internal PriceTerms Checked(Weight net)
    {
        if (Outright is { } price)
        {
            Rule.Require(price.Millionths > 0, "The price must be more than 0.", nameof(Outright));
            return AtPrice(price);
        }

        if (IsNotKnown)
        {
            return NotKnown();
        }

        Rule.Require(Month is { Month: > 0 }, "Name an outright price, or a futures month such as KCH27 with its differential.", nameof(Outright));
        Rule.Require(Differential is >= -100_000m and <= 100_000m, "Name the differential to the futures month; 0 where there is none.", nameof(Differential));
        Rule.Require(Call is { } call && Enum.IsDefined(call), "Say who decides when the price is fixed: buyer or seller.", nameof(Call));
        Rule.Require(MarketLots is null or (>= 1 and <= 10_000), "The lots of the market are one or more; leave them empty to fix by weight.", nameof(MarketLots));
        Rule.Require(ProvisionalShare is null or { Points: > 0m and <= 100m }, "What is paid provisionally lies above 0 and at most at 100 %.", nameof(ProvisionalShare));
        var exact = LotsOf(Month.Value.Market, net);
        Rule.Require(
            MarketLots is null || Math.Abs(MarketLots.Value - exact) <= 1m,
            string.Create(CultureInfo.InvariantCulture, $"The lots weigh {exact:0.####} lots of {Month.Value.Market.Root()}: the lots to be fixed may differ from that by one at most."),
            nameof(MarketLots));
        return this;
    }
}

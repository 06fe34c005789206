namespace GreenLedger.Domain.Measures;

/// <summary>
/// The two exchange contracts that coffee is priced against (exchange specifications; handbook, trade 2.1).
/// </summary>
public enum FuturesMarket
{
    /// <summary>Coffee "C", New York: 37,500 lb a lot, quoted in US cents per pound. Symbol root KC.</summary>
    Arabica = 0,

    /// <summary>Robusta, London: 10 t a lot, quoted in US dollars per tonne. Symbol root RC.</summary>
    Robusta = 1,
}

public static class FuturesMarkets
{
    public static string Root(this FuturesMarket market) => market == FuturesMarket.Arabica ? "KC" : "RC";

    /// <summary>The months that the market lists: H K N U Z for arabica; F H K N U X for robusta.</summary>
    public static IReadOnlyList<int> Months(this FuturesMarket market) =>
        market == FuturesMarket.Arabica ? [3, 5, 7, 9, 12] : [1, 3, 5, 7, 9, 11];

    /// <summary>A price as the market quotes it: cents per pound for arabica, dollars per tonne for robusta.</summary>
    public static PricePerWeight Price(this FuturesMarket market, decimal quoted) =>
        market == FuturesMarket.Arabica
            ? PricePerWeight.FromCentsPerPound(quoted)
            : PricePerWeight.Of(quoted, Currency.Usd, PriceUnit.Tonne);

    /// <summary>The figure as the market quotes it, from a price in US dollars for any unit.</summary>
    public static decimal Quoted(this FuturesMarket market, PricePerWeight price) =>
        market == FuturesMarket.Arabica ? price.PerPound * 100m : price.PerKilogram * 1000m;

    /// <summary>The unit beside a quoted figure.</summary>
    public static string QuoteUnit(this FuturesMarket market) =>
        market == FuturesMarket.Arabica ? "US cents/lb" : "USD/t";

    /// <summary>The smallest step of a quote: 0.05 cents/lb for arabica, 1 USD/t for robusta (exchange specifications).</summary>
    public static decimal Tick(this FuturesMarket market) => market == FuturesMarket.Arabica ? 0.05m : 1m;

    /// <summary>What one contract lot weighs: 37,500 lb of arabica, 10 t of robusta.</summary>
    public static Weight LotWeight(this FuturesMarket market) =>
        market == FuturesMarket.Arabica ? Weight.FromPounds(37_500) : Weight.FromKilograms(10_000);
}

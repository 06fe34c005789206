using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class DifferentialTests
{
    private static readonly FuturesMonth May = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 5);
    private static readonly FuturesMonth July = FuturesMonth.Of(FuturesMarket.Robusta, 2027, 7);

    [Fact] // handbook, trade 2.3 Example A: 286.65 + 35.00 = 321.65 c/lb
    public void A_premium_is_added_to_the_futures_price() =>
        Assert.Equal(PricePerWeight.FromCentsPerPound(321.65m), Differential.Of(May, 35m).At(286.65m));

    [Fact] // handbook, trade 2.3 Example C: 4,000 − 150 = 3,850 USD/t
    public void A_robusta_discount_is_in_dollars_per_tonne() =>
        Assert.Equal(PricePerWeight.Of(3_850m, Currency.Usd, PriceUnit.Tonne), Differential.Of(July, -150m).At(4_000m));

    [Fact]
    public void Two_differentials_are_equal_when_month_and_figure_are()
    {
        Assert.Equal(Differential.Of(May, 35m), Differential.Of(May, 35.00m));
        Assert.NotEqual(Differential.Of(May, 35m), Differential.Of(May, -35m));
        Assert.NotEqual(Differential.Of(May, 35m), Differential.Of(July, 35m));
        Assert.Equal(35.25m, Differential.Of(May, 35.25m).Quoted);
        Assert.Equal(PricePerWeight.FromCentsPerPound(-6m), Differential.Of(May, -6m).Price);
    }

    [Fact]
    public void A_differential_that_no_trade_has_seen_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => Differential.Of(May, 200_000m));
}

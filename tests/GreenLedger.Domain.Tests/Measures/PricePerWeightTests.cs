using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class PricePerWeightTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(
            PricePerWeight.FromCentsPerPound(-25m),
            PricePerWeight.Of(300m, Currency.Usd, PriceUnit.FiftyKilograms),
            PricePerWeight.Of(6.85m, Currency.Usd, PriceUnit.Kilogram),
            PricePerWeight.FromCentsPerPound(321.65m),
            PricePerWeight.Of(8_000m, Currency.Usd, PriceUnit.Tonne));

    [Fact]
    public void Every_unit_is_read_back() =>
        Assert.All(Enum.GetValues<PriceUnit>(), unit => MeasureContract.Holds(PricePerWeight.Of(4.125m, Currency.Eur, unit)));

    [Fact]
    public void Text_that_is_no_price_is_not_read() =>
        MeasureContract.IsNotRead<PricePerWeight>(null, "", "4.10 USD", "4.10/lb", "4.10 USD/bag", "x USD/kg", "1e9 USD/kg", "99999999999 USD/kg");

    [Fact] // handbook, trade 12 no. 5
    public void A_cent_per_pound_in_dollars_per_kilogram_and_tonne()
    {
        var cent = PricePerWeight.FromCentsPerPound(1m);

        Assert.Equal(0.0220462262m, Math.Round(cent.PerKilogram, 10));
        Assert.Equal(22.04622622m, Math.Round(cent.PerKilogram * 1000m, 8));
    }

    [Theory] // handbook, trade 12 no. 6 and 7
    [InlineData(250, 5.511557, 1, 6)]
    [InlineData(250, 275.5778, 50, 4)]
    [InlineData(250, 253.5316, 46, 4)]
    [InlineData(321.65, 7.091169, 1, 6)]
    [InlineData(321.65, 7091.1687, 1000, 4)]
    public void Cents_per_pound_in_dollars_for_kilograms(double cents, double dollars, int kilograms, int decimals) =>
        Assert.Equal((decimal)dollars, Math.Round(PricePerWeight.FromCentsPerPound((decimal)cents).PerKilogram * kilograms, decimals));

    [Theory] // handbook, trade 12 no. 8 and 9
    [InlineData(4_000, PriceUnit.Tonne, 181.436948)]
    [InlineData(6.85, PriceUnit.Kilogram, 310.710773)]
    [InlineData(300, PriceUnit.FiftyKilograms, 272.155422)]
    public void Dollars_for_other_units_in_cents_per_pound(double amount, PriceUnit unit, double cents) =>
        Assert.Equal((decimal)cents, Math.Round(PricePerWeight.Of((decimal)amount, Currency.Usd, unit).PerPound * 100m, 6));

    [Fact] // handbook, trade 12 no. 19
    public void Price_times_weight_is_rounded_once() =>
        Assert.Equal(Money.Of(611_613.30m, Currency.Usd), PricePerWeight.FromCentsPerPound(321.65m) * Weight.FromKilograms(86_250));

    [Fact] // handbook, trade 2.3 Example C
    public void Robusta_at_a_discount_of_150() =>
        Assert.Equal(
            Money.Of(73_920m, Currency.Usd),
            PricePerWeight.Of(3_850m, Currency.Usd, PriceUnit.Tonne) * Weight.FromKilograms(19_200));

    [Fact] // handbook, trade 1.1: 46 kg and 100 lb are different quintals
    public void The_two_quintals_are_different_prices()
    {
        var central = PricePerWeight.Of(250m, Currency.Usd, PriceUnit.Quintal46);
        var pounds = PricePerWeight.Of(250m, Currency.Usd, PriceUnit.Quintal100Pounds);

        Assert.NotEqual(central, pounds);
        Assert.True(central < pounds);
    }

    [Fact]
    public void Prices_in_two_currencies_are_not_compared() =>
        Assert.Throws<InvalidOperationException>(() =>
            PricePerWeight.Of(1m, Currency.Usd, PriceUnit.Kilogram) < PricePerWeight.Of(1m, Currency.Eur, PriceUnit.Kilogram));

    [Fact]
    public void A_price_that_no_coffee_has_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => PricePerWeight.Of(2_000_000_000m, Currency.Usd, PriceUnit.Tonne));
}

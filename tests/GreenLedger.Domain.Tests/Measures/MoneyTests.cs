using CsCheck;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class MoneyTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(Usd(-12.50m), Usd(0m), Usd(0.01m), Usd(611_613.30m));

    [Fact]
    public void Yen_have_no_decimals_and_dinars_have_three() // ISO 4217, from memory (handbook, trade 1.4)
    {
        MeasureContract.Holds(Money.Of(1, Currency.Of("JPY")), Money.Of(2, Currency.Of("JPY")));
        MeasureContract.Holds(Money.Of(1.001m, Currency.Of("KWD")), Money.Of(1.002m, Currency.Of("KWD")));

        Assert.Equal("3 JPY", Money.Of(2.5m, Currency.Of("JPY")).ToString());
        Assert.Equal("1.235 KWD", Money.Of(1.2345m, Currency.Of("KWD")).ToString());
    }

    [Fact]
    public void Text_that_is_no_money_is_not_read() =>
        MeasureContract.IsNotRead<Money>(null, "", "12.50", "USD", "12,50 USD", "12.50 XYZ", "12.50 USD more");

    [Theory] // handbook, trade 12 no. 10, 11; and the same by hand below zero
    [InlineData(2.345, 2.35)]
    [InlineData(360.525, 360.53)]
    [InlineData(-2.345, -2.35)]
    public void An_amount_is_rounded_once_half_away_from_zero(double exact, double rounded) =>
        Assert.Equal((decimal)rounded, Usd((decimal)exact).Amount);

    [Fact] // handbook, trade 12 no. 13
    public void A_hundred_in_three_parts_loses_no_cent() =>
        Assert.Equal([33.34m, 33.33m, 33.33m], Usd(100m).SplitBy([1m, 1m, 1m]).Select(part => part.Amount));

    [Fact] // handbook, trade 12 no. 30 (Example E by weight)
    public void Container_costs_are_shared_by_weight() =>
        Assert.Equal(
            [2_000.99m, 1_333.99m, 883.77m],
            Money.Of(4_218.75m, Currency.Eur).SplitBy([9_000m, 6_000m, 3_975m]).Select(part => part.Amount));

    [Fact] // handbook, trade 12 no. 31 (Example E by value)
    public void Container_costs_are_shared_by_value() =>
        Assert.Equal(
            [1_497.78m, 1_397.93m, 1_323.04m],
            Money.Of(4_218.75m, Currency.Eur).SplitBy([45_000m, 42_000m, 39_750m]).Select(part => part.Amount));

    [Fact]
    public void Two_currencies_are_never_added_or_compared()
    {
        var euros = Money.Of(1m, Currency.Eur);

        Assert.Throws<InvalidOperationException>(() => euros + Usd(1m));
        Assert.Throws<InvalidOperationException>(() => euros - Usd(1m));
        Assert.Throws<InvalidOperationException>(() => euros < Usd(1m));
        Assert.NotEqual(euros, Usd(1m));
    }

    [Fact]
    public void Splitting_among_nobody_is_a_mistake()
    {
        Assert.Throws<ArgumentException>(() => Usd(1m).SplitBy([]));
        Assert.Throws<ArgumentException>(() => Usd(1m).SplitBy([0m, 0m]));
        Assert.Throws<ArgumentException>(() => Usd(1m).SplitBy([2m, -1m]));
    }

    [Fact]
    public void Splitting_never_loses_a_cent_and_no_part_is_a_cent_off() =>
        Gen.Select(Gen.Long[-9_000_000_000, 9_000_000_000], Gen.Int[0, 1_000_000].Array[1, 12])
            .Where((_, shares) => shares.Any(share => share > 0))
            .Sample((units, shares) =>
            {
                var parts = new Money(units, Currency.Usd).SplitBy([.. shares.Select(share => (decimal)share)]);
                var whole = shares.Sum(share => (decimal)share);

                Assert.Equal(units, parts.Sum(part => part.MinorUnits));
                Assert.All(parts.Zip(shares), pair => Assert.True(Math.Abs(pair.First.MinorUnits - (units * (pair.Second / whole))) < 1m));
            });

    private static Money Usd(decimal amount) => Money.Of(amount, Currency.Usd);
}

using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class WeightVerdictTests
{
    private static readonly PricePerWeight Price = PricePerWeight.FromCentsPerPound(321.65m);

    [Fact]
    public void The_excess_over_the_franchise_is_refunded_at_the_contracts_price()
    {
        var verdict = WeightVerdict.Of(Kg(18_975m), Kg(18_790m), Percent.Of(0.5m), Price);

        // Handbook, trade 8, example G, and check value 65.
        Assert.Equal(Kg(185m), verdict.Loss);
        Assert.Equal(0.9750m, Math.Round(verdict.LossShare.Points, 4));
        Assert.Equal(Kg(94.875m), verdict.FranchiseWeight);
        Assert.Equal(Kg(90.125m), verdict.Refunded);
        Assert.Equal(Money.Of(639.09m, Currency.Usd), verdict.Worth);
        Assert.Equal(
            [
                "Shipped 18,975 kg less landed 18,790 kg: 185 kg lost, 0.975 % of the shipped weight.",
                "Franchise 0.5 % of 18,975 kg: 94.875 kg stay with the buyer.",
                "To be refunded: 185 kg less 94.875 kg is 90.125 kg, at 321.65 ¢/lb worth 639.09 USD.",
            ],
            verdict.Sentences);
    }

    /// <summary>Worked by hand: 950 ÷ 0.45359237 × 3.2165 is 6,736.61; 37,950 × 0.97 = 36,811.5 and × 1.03 = 39,088.5; the part alone would lie far below.</summary>
    [Fact]
    public void The_agreed_quantity_is_held_against_all_parts_of_the_contract()
    {
        var agreed = AgreedQuantity.Of(Kg(37_950m), Percent.Of(3m));

        Assert.Equal(
            "Under the whole contract 37,000 kg were shipped, which lies within the agreed quantity, 36,811.5 kg to 39,088.5 kg (37,950 kg with 3 % more or less). That is 950 kg less than agreed, at 321.65 ¢/lb worth 6736.61 USD, which the tolerance allows.",
            WeightVerdict.Of(Kg(18_975m), Kg(18_975m), default, Price, agreed with { InAll = Kg(37_000m) }).Sentences[^1]);
        Assert.False((agreed with { InAll = Kg(36_811m) }).Allows(Kg(37_950m)));
    }

    [Fact]
    public void A_loss_within_the_franchise_is_no_claim()
    {
        var verdict = WeightVerdict.Of(Kg(18_975m), Kg(18_900m), Percent.Of(0.5m), Price);

        // Handbook, trade, check value 66.
        Assert.Equal(0.3953m, verdict.LossShare.Points);
        Assert.False(verdict.IsShort);
        Assert.Equal(Money.Zero(Currency.Usd), verdict.Worth);
    }

    [Fact]
    public void Exactly_the_franchise_is_no_claim() =>
        Assert.False(WeightVerdict.Of(Kg(20_000m), Kg(19_900m), Percent.Of(0.5m), Price).IsShort);

    [Fact]
    public void Without_a_franchise_every_kilogram_counts()
    {
        var verdict = WeightVerdict.Of(Kg(18_975m), Kg(18_790m), default, Price);

        // Handbook, trade 8: all 185 kg; 185 ÷ 0.45359237 × 3.2165, worked by hand to the cent.
        Assert.Equal(Kg(185m), verdict.Refunded);
        Assert.Equal(Money.Of(1311.87m, Currency.Usd), verdict.Worth);
    }

    [Fact]
    public void More_than_was_shipped_is_no_claim()
    {
        var verdict = WeightVerdict.Of(Kg(18_975m), Kg(19_000m), Percent.Of(0.5m), Price);

        Assert.False(verdict.IsShort);
        Assert.Equal(["Landed 19,000 kg against shipped 18,975 kg: 25 kg more than was shipped."], verdict.Sentences);
    }

    [Theory]
    [InlineData(18_405.75, true)]
    [InlineData(18_405.74, false)]
    [InlineData(19_544.25, true)]
    [InlineData(19_544.26, false)]
    public void The_tolerance_is_held_against_what_was_shipped(decimal shipped, bool allowed)
    {
        var agreed = AgreedQuantity.Of(Kg(18_975m), Percent.Of(3m));

        // Handbook, trade, check value 67: 18,405.75 to 19,544.25 kg.
        Assert.Equal((Kg(18_405.75m), Kg(19_544.25m)), (agreed.Least, agreed.Most));
        Assert.Equal(allowed, agreed.Allows(Kg(shipped)));
        Assert.Contains(allowed ? "lies within the agreed quantity" : "lies outside the agreed quantity", WeightVerdict.Of(Kg(shipped), Kg(shipped), default, Price, agreed).Sentences[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void What_lies_beyond_the_tolerance_is_worth_its_weight_at_the_contracts_price()
    {
        var agreed = AgreedQuantity.Of(Kg(18_975m), Percent.Of(3m));

        var verdict = WeightVerdict.Of(Kg(18_305.75m), Kg(18_305.75m), default, Price, agreed);

        // Handbook, trade, check value 67: 18,405.75 kg at least; worked by hand: 100 ÷ 0.45359237 × 3.2165 is 709.12.
        Assert.Equal(-100m, verdict.BeyondAgreed!.Value.Kilograms);
        Assert.Equal(Money.Of(709.12m, Currency.Usd), verdict.BeyondWorth);
        Assert.EndsWith("That is 100 kg less than the tolerance allows, at 321.65 ¢/lb worth 709.12 USD.", verdict.Sentences[^1], StringComparison.Ordinal);
        Assert.EndsWith("of which the price is not fixed yet.", WeightVerdict.Of(Kg(18_305.75m), Kg(18_305.75m), default, null, agreed).Sentences[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Drying_explains_a_part_of_the_loss()
    {
        var verdict = WeightVerdict.Of(Kg(18_975m), Kg(18_790m), Percent.Of(0.5m), Price);

        // Handbook, trade, check value 68: 18,975 kg from 11.5 to 10.8 % is 18,826.093 kg.
        Assert.Equal(18_975m - 18_826.093m, verdict.Drying(Percent.Of(11.5m), Percent.Of(10.8m)).Kilograms, 3);
    }

    [Theory]
    [InlineData(0, 10, 0.5, "Shipped")]
    [InlineData(10, -1, 0.5, "Landed")]
    [InlineData(10, 20.1, 0.5, "Landed")]
    [InlineData(10, 10, 10.1, "Franchise")]
    public void Figures_that_cannot_be_are_refused_with_their_field(decimal shipped, decimal landed, decimal franchise, string field)
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => WeightVerdict.Of(Kg(shipped), Kg(landed), Percent.Of(franchise), Price));

        Assert.Equal(field, refusal.Field);
    }

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}

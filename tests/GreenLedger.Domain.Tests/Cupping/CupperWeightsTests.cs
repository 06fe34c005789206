using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class CupperWeightsTests
{
    private static readonly CupperWeights Rule = new(0.50);

    /// <summary>Our own rule, no source: (stated ÷ own)², at least 0.1; worked by hand.</summary>
    [Theory]
    [InlineData(0.40, 10, 1)]
    [InlineData(0.50, 10, 1)]
    [InlineData(1.00, 10, 0.25)]
    [InlineData(0.625, 40, 0.64)]
    [InlineData(3.00, 12, 0.1)]
    [InlineData(3.00, 9, 1)]
    public void A_cupper_who_repeats_worse_than_stated_counts_less(double own, int repeats, double weight)
    {
        Assert.Equal(weight, Rule.Of(new Repeatability(own, repeats, 0, 0)).Weight, 12);
    }

    [Fact]
    public void The_rule_and_each_weight_are_said()
    {
        Assert.Equal("Cuppers whose repeatability over past sessions is worse than 0.50 points count (0.50 ÷ own)², at least 0.1; all others, and those with fewer than 10 repeats, count 1.", Rule.Rule);
        Assert.Equal("Counts 0.25: repeats within 1.00 points (14 repeats).", Rule.Of(new Repeatability(1, 14, 0, 0)).Reason);
        Assert.Equal("Counts 1: repeats within 0.31 points (14 repeats).", Rule.Of(new Repeatability(0.31, 14, 0, 0)).Reason);
        Assert.Equal("Counts 1: 0 repeats so far, 10 are needed to judge.", Rule.Of(null).Reason);
        Assert.Equal(1, Rule.Of(null).Weight);
    }

    [Fact]
    public void A_rule_without_a_repeatability_is_refused()
    {
        Assert.Throws<RuleBrokenException>(() => new CupperWeights(0).Of(null));
    }
}

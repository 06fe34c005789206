using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Tests.Stock;

public sealed class BlendCostTests
{
    private static readonly BlendPart Base = new("Base", Percent.Of(60m), 6m, 82m);
    private static readonly BlendPart Lift = new("Lift", Percent.Of(40m), 8.5m, 86m);

    [Fact]
    public void A_blend_costs_the_mean_of_its_components_by_share()
    {
        var blend = BlendCost.Of([Base, Lift]);

        // Worked by hand: 0.6 × 6.00 + 0.4 × 8.50 = 7.00; 0.6 × 82 + 0.4 × 86 = 83.6.
        Assert.Equal((7.00m, 83.6m, true), (blend.CostPerKilogram, blend.Points, blend.IsWhole));
    }

    [Fact]
    public void A_substitution_changes_cost_and_score_by_its_share()
    {
        var other = BlendCost.Of([Base, Lift]).With("Lift", 7m, 85m);

        // Worked by hand: 0.4 × (7.00 − 8.50) = −0.60; 0.4 × (85 − 86) = −0.4.
        Assert.Equal((6.40m, 83.2m), (other.CostPerKilogram, other.Points));
    }

    [Fact]
    public void Shares_that_do_not_add_up_stand_to_each_other()
    {
        var blend = BlendCost.Of([Base with { Share = Percent.Of(30m) }, Lift with { Share = Percent.Of(20m) }]);

        Assert.Equal((7.00m, false), (blend.CostPerKilogram, blend.IsWhole));
    }

    [Fact]
    public void A_component_without_a_cost_leaves_the_blend_without_one()
    {
        Assert.Null(BlendCost.Of([Base, Lift with { CostPerKilogram = null }]).CostPerKilogram);
        Assert.Throws<RuleBrokenException>(() => BlendCost.Of([Base]).With("Lift", 7m, 85m));
        Assert.Throws<RuleBrokenException>(() => BlendCost.Of([]));
    }
}

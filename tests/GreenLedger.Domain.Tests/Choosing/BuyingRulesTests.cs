using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Choosing;

public sealed class BuyingRulesTests
{
    [Fact]
    public void Terms_survive_being_written_down_and_read_again()
    {
        var terms = Demo.Rules with
        {
            Gates = new Gates
            {
                LeastScore = Score.Of(79.9167m),
                HighestCostPerKilogram = 9.5m,
                HighestMoisture = Percent.Of(12m),
                HighestWaterActivity = WaterActivity.Of(0.65m),
                HighestCategory2 = FullDefects.Of(5m),
                LeastQuantity = Weight.FromPounds(152m),
                Certificates = ["organic"],
            },
            Processes = [new ProcessChoice(Demo.Natural, "natural", false, 0.5m)],
            Sessions = SessionRule.InverseVariance,
        };

        var read = FrozenJson.Read<RuleTerms>(FrozenJson.Write(terms));

        Assert.Equal(FrozenJson.Write(terms), FrozenJson.Write(read));
        Assert.Equal(Score.Of(79.9167m), read.Gates.LeastScore);
        Assert.Equal(Weight.FromPounds(152m), read.Gates.LeastQuantity);
        Assert.Equal(FullDefects.Of(5m), read.Gates.HighestCategory2);
        Assert.Equal(terms.Processes, read.Processes);
    }

    [Fact]
    public void Weights_that_are_all_nothing_are_refused()
    {
        var terms = Demo.Rules with { Weights = new Weights { Score = 0m, Cost = 0m } };

        var broken = Assert.Throws<RuleBrokenException>(() => new BuyingRules("House", terms, null, DateTimeOffset.UnixEpoch));

        Assert.Equal("At least one weight must be above 0.", broken.Message);
    }

    [Fact]
    public void Anchors_that_do_not_lie_apart_are_refused()
    {
        var terms = Demo.Rules with { Anchors = Demo.Rules.Anchors with { HighScore = Demo.Rules.Anchors.LowScore } };

        var broken = Assert.Throws<RuleBrokenException>(() => new BuyingRules("House", terms, null, DateTimeOffset.UnixEpoch));

        Assert.Equal("LowScore", broken.Field);
    }

    [Fact]
    public void A_screen_gate_needs_both_the_screen_and_the_share()
    {
        var terms = Demo.Rules with { Gates = new Gates { Screen = 16 } };

        var broken = Assert.Throws<RuleBrokenException>(terms.Check);

        Assert.Equal("A screen gate needs the screen and the share that it keeps.", broken.Message);
    }
}

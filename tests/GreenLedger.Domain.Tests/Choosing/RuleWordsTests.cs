using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Choosing;

public sealed class RuleWordsTests
{
    [Fact]
    public void Rules_without_gates_say_how_they_rank_and_nothing_else()
    {
        var words = new RuleWords(Demo.Rules, "100-point form, 2004");

        Assert.Equal(
            [
                ("Form", "100-point form, 2004"),
                ("Several sessions", "the latest counts"),
                ("Stated scores", "not ranked"),
                ("Cost per point", "cost divided by the score"),
                ("Weight of score", "60 %; 84.00 counts 0, 87.50 counts 1"),
                ("Weight of landed cost", "40 %; 11.50 USD/kg counts 0, 6.90 USD/kg counts 1"),
            ],
            words.Lines);
    }

    [Fact]
    public void Every_gate_is_said_with_its_figure()
    {
        var terms = Demo.Rules with
        {
            MeasurementsRequired = true,
            OtherProcessesAllowed = false,
            Processes = [new ProcessChoice(Demo.Washed, "washed", true, 1m), new ProcessChoice(Demo.Natural, "natural", true, 0.5m)],
            Gates = new Gates
            {
                LeastScore = Score.Of(84m),
                LeastLowerBound = Score.Of(83.5m),
                HighestCostPerKilogram = 9.5m,
                LeastMoisture = Percent.Of(9m),
                HighestMoisture = Percent.Of(12m),
                HighestWaterActivity = WaterActivity.Of(0.6m),
                HighestCategory1 = FullDefects.Of(0m),
                HighestCategory2 = FullDefects.Of(5m),
                HighestQuakers = 3,
                Screen = 15,
                LeastRetained = Percent.Of(95m),
                LeastQuantity = Weight.FromKilograms(600m),
                EarliestCropYear = "2025/26",
                Certificates = ["organic"],
            },
        };

        var said = new RuleWords(terms, null).Lines.Skip(6);

        Assert.Equal(
            [
                ("Score", "at least 84.00"),
                ("Lower bound of the score", "at least 83.50"),
                ("Landed cost", "at most 9.50 USD/kg"),
                ("Process", "washed, natural"),
                ("Moisture", "9 % to 12 %"),
                ("Water activity", "at most 0.60"),
                ("Category 1 defects", "at most 0"),
                ("Category 2 defects", "at most 5"),
                ("Quakers", "at most 3"),
                ("Screen", "at least 95 % kept by screen 15"),
                ("Quantity", "at least 600 kg"),
                ("Crop year", "2025/26 or later"),
                ("Certificates", "organic"),
                ("What was not measured", "fails its gate"),
            ],
            said);
    }

    [Fact]
    public void A_change_says_what_stood_before_and_after()
    {
        var before = new RuleWords(Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(82m) } }, "100-point form");
        var after = new RuleWords(Demo.Rules with { Sessions = SessionRule.Mean, Gates = new Gates { LeastQuantity = Weight.FromKilograms(60m) } }, "100-point form");

        var changes = RuleWords.Changes(before, after);

        Assert.Equal(
            [
                new RuleChange("Several sessions", "the latest counts", "their mean"),
                new RuleChange("Quantity", null, "at least 60 kg"),
                new RuleChange("Score", "at least 82.00", null),
            ],
            changes);
    }

    [Fact]
    public void Processes_are_named_by_what_is_not_as_with_the_others()
    {
        var terms = Demo.Rules with { Processes = [new ProcessChoice(Demo.Natural, "natural", false, 0m)], Weights = new Weights { Process = 100m } };

        var lines = new RuleWords(terms, null).Lines;

        Assert.Contains(("Process", "any but natural"), lines);
        Assert.Contains(("Weight of process", "50 %; none preferred, any other 0"), lines);
    }
}

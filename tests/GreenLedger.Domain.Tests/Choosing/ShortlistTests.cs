using CsCheck;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Choosing;

public sealed class ShortlistTests
{
    /// <summary>Handbook quality.md section 9, value 27: weights 0.6 and 0.4, anchors at the least and the best.</summary>
    [Theory]
    [InlineData("A", 0.6634)]
    [InlineData("B", 0.5534)]
    [InlineData("C", 0.4000)]
    [InlineData("D", 0.3739)]
    [InlineData("E", 0.6000)]
    public void The_running_example_has_the_weighted_scores_of_the_handbook(string lot, double expected)
    {
        var shortlist = Demo.Ranked(Demo.RunningExample);

        var entry = shortlist.Ranked.Single(ranked => ranked.Candidate.Ref == lot);

        Assert.Equal(expected, entry.Terms.Total, 4);
    }

    /// <summary>By the weighted scores of value 27: 0.6634, 0.6000, 0.5534, 0.4000, 0.3739.</summary>
    [Fact]
    public void The_highest_weighted_score_comes_first()
    {
        var shortlist = Demo.Ranked(Demo.RunningExample);

        Assert.Equal("A E B C D", shortlist.Ranked.Order());
        Assert.Equal([1, 2, 3, 4, 5], shortlist.Ranked.Select(entry => entry.Rank));
    }

    /// <summary>Handbook quality.md section 5 and section 9, value 27: E, A, B, C; C is the cheapest.</summary>
    [Fact]
    public void Its_front_and_its_reference_are_those_of_the_handbook()
    {
        var shortlist = Demo.Ranked(Demo.RunningExample);

        Assert.Equal("C B A E", shortlist.Front.Order());
        Assert.Equal("C", shortlist.Reference!.Candidate.Ref);
    }

    /// <summary>Handbook quality.md section 5, cost per point (i), (ii) and (iii).</summary>
    [Theory]
    [InlineData(CostPerPointRule.PricePerPoint, ".1017 .0891 .0821 .0857 .1314")]
    [InlineData(CostPerPointRule.PricePerPointAbove, "1.3538 1.4476 1.7250 1.8000 1.5333")]
    [InlineData(CostPerPointRule.StepUp, ".7600 .5600 - - 1.3143")]
    public void Cost_per_point_follows_the_definition_that_the_rules_name(CostPerPointRule rule, string expected)
    {
        var shortlist = Demo.Ranked(Demo.RunningExample, Demo.Rules with { CostPerPoint = rule });

        var found = shortlist.Ranked.OrderBy(entry => entry.Candidate.Ref).Select(entry => entry.CostPerPoint is { } cost
            ? cost.ToString("#.0000", System.Globalization.CultureInfo.InvariantCulture)
            : "-");

        Assert.Equal(expected, string.Join(" ", found));
    }

    [Fact]
    public void At_or_below_the_base_score_there_is_no_cost_per_point_above_it()
    {
        var rules = Demo.Rules with { CostPerPoint = CostPerPointRule.PricePerPointAbove };

        var shortlist = Demo.Ranked([Demo.Lot("A", 80m, 7m)], rules);

        Assert.Null(shortlist.Ranked.Single().CostPerPoint);
    }

    /// <summary>79.9167 is not 80: the issue's own example, ten attributes' mean of three cups.</summary>
    [Fact]
    public void A_gate_tests_the_unrounded_value()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(80m) } };

        var shortlist = Demo.Ranked([Demo.Lot("A", 79.9167m, 7m), Demo.Lot("B", 80m, 7m)], rules);

        Assert.Equal("B", shortlist.Ranked.Order());
        Assert.Equal(Gate.LeastScore, shortlist.Failed.Single().FailedGates);
    }

    [Fact]
    public void A_lot_that_fails_several_gates_stays_below_with_each_named()
    {
        var gates = new Gates { LeastScore = Score.Of(85m), HighestCostPerKilogram = 8m, LeastQuantity = Weight.FromKilograms(3000m) };

        var shortlist = Demo.Ranked([Demo.Lot("A", 84m, 9m)], Demo.Rules with { Gates = gates });

        Assert.Empty(shortlist.Ranked);
        Assert.Equal(Gate.LeastScore | Gate.HighestCost | Gate.Quantity, shortlist.Failed.Single().FailedGates);
    }

    /// <summary>Worked by hand: 85.5 − 1.96 × 0.4 = 84.716.</summary>
    [Fact]
    public void The_lower_bound_may_fail_where_the_score_itself_passes()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(85m), LeastLowerBound = Score.Of(85m) } };

        var shortlist = Demo.Ranked([Demo.Lot("A", 85.5m, 8m)], rules);

        Assert.Equal(Gate.LeastLowerBound, shortlist.Failed.Single().FailedGates);
    }

    [Theory]
    [InlineData(true, Gate.Moisture)]
    [InlineData(false, Gate.None)]
    public void An_unmeasured_moisture_fails_only_where_the_rules_require_it(bool required, Gate expected)
    {
        var rules = Demo.Rules with { Gates = new Gates { HighestMoisture = Percent.Of(12m) }, MeasurementsRequired = required };

        var shortlist = Demo.Ranked([Demo.Lot("A", 85m, 8m)], rules);

        Assert.Equal(expected, shortlist.Entries.Single().FailedGates);
    }

    [Theory]
    [InlineData("12.0", Gate.None)]
    [InlineData("12.0001", Gate.Moisture)]
    [InlineData("9.9999", Gate.Moisture)]
    public void Moisture_must_lie_in_the_range(string moisture, Gate expected)
    {
        var gates = new Gates { LeastMoisture = Percent.Of(10m), HighestMoisture = Percent.Of(12m) };
        var lot = Demo.Lot("A", 85m, 8m).With(moisture: Percent.Parse(moisture, null));

        var shortlist = Demo.Ranked([lot], Demo.Rules with { Gates = gates });

        Assert.Equal(expected, shortlist.Entries.Single().FailedGates);
    }

    [Fact]
    public void A_process_that_the_rules_do_not_allow_fails()
    {
        var rules = Demo.Rules with { Processes = [new ProcessChoice(Demo.Natural, "natural", false, 0m)] };

        var shortlist = Demo.Ranked([Demo.Lot("A", 85m, 8m), Demo.Lot("B", 86m, 8m).With(process: Demo.Natural)], rules);

        Assert.Equal("A", shortlist.Ranked.Order());
        Assert.Equal(Gate.Process, shortlist.Failed.Single().FailedGates);
    }

    [Theory]
    [InlineData("2025", Gate.CropYear)]
    [InlineData("2025/26", Gate.None)]
    [InlineData("2026", Gate.None)]
    [InlineData(null, Gate.CropYear)]
    public void An_older_crop_fails(string? cropYear, Gate expected)
    {
        var rules = Demo.Rules with { Gates = new Gates { EarliestCropYear = "2025/26" } };

        var shortlist = Demo.Ranked([Demo.Lot("A", 85m, 8m).With(cropYear: cropYear)], rules);

        Assert.Equal(expected, shortlist.Entries.Single().FailedGates);
    }

    [Fact]
    public void Every_certificate_asked_for_must_be_there()
    {
        var rules = Demo.Rules with { Gates = new Gates { Certificates = ["organic", "fairtrade"] } };

        var shortlist = Demo.Ranked([Demo.Lot("A", 85m, 8m).With(certificates: ["organic"])], rules);

        Assert.Equal(Gate.Certificates, shortlist.Failed.Single().FailedGates);
    }

    [Fact]
    public void A_lot_without_a_landed_cost_is_not_ranked_as_free()
    {
        var shortlist = Demo.Ranked([Demo.Lot("A", 85m, null)]);

        Assert.Equal(Gate.NoCost, shortlist.Failed.Single().FailedGates);
    }

    [Fact]
    public void A_lot_scored_on_another_form_stands_apart()
    {
        var lot = Demo.Lot("A", 85m, 8m).With(results: [Demo.Result(88m, 0.4, form: CuppingForm.AffectiveId)]);

        var shortlist = Demo.Ranked([lot, Demo.Lot("B", 85m, 8m)]);

        Assert.Equal("B", shortlist.Ranked.Order());
        Assert.Equal("A", shortlist.OtherForm.Order());
    }

    [Fact]
    public void A_stated_score_is_ranked_only_where_the_rules_say_so()
    {
        var lot = Demo.Lot("A", 85m, 8m).With(results: [], stated: Score.Of(88m));

        var without = Demo.Ranked([lot]);
        var with = Demo.Ranked([lot], Demo.Rules with { RanksStatedScores = true, StatedDoubt = Score.Of(2m) });

        Assert.Equal(Gate.NoScore, without.Failed.Single().FailedGates);
        Assert.Equal(ScoreOrigin.Stated, with.Ranked.Single().Score!.Value.Origin);
        Assert.Equal(2.0, with.Ranked.Single().Score!.Value.StandardError);
    }

    [Fact]
    public void Rules_in_another_currency_are_refused()
    {
        var broken = Assert.Throws<RuleBrokenException>(() => Shortlist.Rank(Demo.RunningExample, Demo.Rules, Currency.Eur));

        Assert.Equal("These rules are written in USD, landed costs are in EUR: please edit the rules.", broken.Message);
    }

    /// <summary>Worked by hand: process weighs 1 of 2, so a preference of 1 gives 0.5 and one of 0.25 gives 0.125.</summary>
    [Fact]
    public void A_preferred_process_lifts_a_lot()
    {
        var rules = Demo.Rules with
        {
            Weights = new Weights { Score = 1m, Cost = 0m, Process = 1m },
            Processes = [new ProcessChoice(Demo.Washed, "washed", true, 0.25m), new ProcessChoice(Demo.Natural, "natural", true, 1m)],
        };

        var shortlist = Demo.Ranked([Demo.Lot("A", 85m, 8m), Demo.Lot("B", 85m, 8m).With(process: Demo.Natural)], rules);

        Assert.Equal("B A", shortlist.Ranked.Order());
        Assert.Equal(0.5, shortlist.Ranked[0].Terms.Process, 12);
        Assert.Equal(0.125, shortlist.Ranked[1].Terms.Process, 12);
    }

    [Fact]
    public void Ranks_follow_the_weighted_score_whatever_the_lots_and_weights() =>
        Gen.Select(
            Gen.Select(Gen.Int[7000, 9500], Gen.Int[300, 2000]).Array[0, 30],
            Gen.Int[0, 5],
            Gen.Int[1, 5]).Sample((figures, score, cost) =>
        {
            var lots = figures.Select((lot, i) => Demo.Lot($"L{i}", lot.Item1 / 100m, lot.Item2 / 100m)).ToList();

            var ranked = Demo.Ranked(lots, Demo.Rules with { Weights = new Weights { Score = score, Cost = cost } }).Ranked;

            Assert.Equal(lots.Count, ranked.Count);
            Assert.All(ranked.Zip(ranked.Skip(1)), pair => Assert.True(pair.First.Terms.Total >= pair.Second.Terms.Total));
            Assert.Equal(ranked.OrderByDescending(entry => Weighted(entry, score, cost)).Select(entry => Math.Round(Weighted(entry, score, cost), 9)), ranked.Select(entry => Math.Round(entry.Terms.Total, 9)));
        });

    /// <summary>The formula of handbook quality.md section 5 with the anchors of the demo rules.</summary>
    private static double Weighted(ShortlistEntry entry, int score, int cost) =>
        (score * ((double)entry.Score!.Value.Score.Points - 84) / 3.5 + cost * (11.5 - (double)entry.Candidate.CostPerKilogram!.Value) / 4.6) / (score + cost);
}

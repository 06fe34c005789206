using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class PanelWeightsTests
{
    private static readonly ExpectedErrors House = new(1.00, 0.50);

    [Fact]
    public void A_result_states_its_rule_and_what_each_cupper_counted()
    {
        var weights = new PanelWeights(new CupperWeights(0.50), new Dictionary<string, Repeatability> { ["INES"] = new(1.00, 20, 0.77, 1.44), ["TOM"] = new(0.30, 12, 0.22, 0.50) });

        var result = PanelResult.Of(Session(), House, weights);

        // Worked by hand: Ines counts (0.50 ÷ 1.00)² = 0.25; (84 + 0.25 × 86) ÷ 1.25 and (81 + 0.25 × 82.5) ÷ 1.25.
        Assert.Equal([84.4m, 81.3m], result.Samples.Select(sample => Math.Round(sample.Fitted.Points, 4, MidpointRounding.AwayFromZero)));
        Assert.Equal([85m, 81.75m], result.Samples.Select(sample => sample.PlainMean.Points));
        Assert.Equal([("Tom", 1.0), ("Ines", 0.25)], result.Cuppers.Select(cupper => (cupper.CupperName, cupper.Weight)));
        Assert.Equal("Counts 0.25: repeats within 1.00 points (20 repeats).", result.Cuppers[1].WeightReason);
        Assert.Equal(weights.Rule.Rule, result.WeightRule);
        Assert.Contains(weights.Rule.Rule, PanelNotes.Of(result));
        // The house's repeatability: 0.50² over a weight of 1.25.
        Assert.Equal(0.2, result.Samples[0].OwnVariance, 10);
    }

    [Fact]
    public void Without_a_rule_everyone_counts_alike_and_nothing_is_said()
    {
        var result = PanelResult.Of(Session(), House);

        Assert.Equal([85m, 81.75m], result.Samples.Select(sample => sample.Fitted.Points));
        Assert.All(result.Cuppers, cupper => Assert.Equal((1.0, null), (cupper.Weight, cupper.WeightReason)));
        Assert.Null(result.WeightRule);
    }

    [Fact]
    public void A_cupper_without_a_record_counts_fully()
    {
        var result = PanelResult.Of(Session(), House, new PanelWeights(new CupperWeights(0.50), new Dictionary<string, Repeatability>()));

        Assert.Equal([85m, 81.75m], result.Samples.Select(sample => sample.Fitted.Points));
        Assert.All(result.Cuppers, cupper => Assert.StartsWith("Counts 1: 0 repeats so far", cupper.WeightReason, StringComparison.Ordinal));
    }

    /// <summary>Tom scores 84 and 81, Ines 86 and 82.5.</summary>
    private static CuppingSession Session()
    {
        var session = CuppingSession.OfPast("Two cuppers", new DateOnly(2026, 11, 24), CuppingForm.HundredPoint());
        decimal[][] scores = [[84m, 86m], [81m, 82.5m]];
        foreach (var row in scores)
        {
            var sample = new Sample(Id<Lot>.New(), SampleKind.Offer, $"QX{session.Samples.Count}", new DateOnly(2026, 11, 20), Weight.FromGrams(300m));
            session.Pour(sample, new Random(session.Samples.Count));
            session.TakeIn(sample, Past("Tom", row[0]), default);
            session.TakeIn(sample, Past("Ines", row[1]), default);
        }

        return session;
    }

    /// <summary>Marks of 7.5 and three tens; the first two marks make up the total.</summary>
    private static PastResult Past(string cupper, decimal total)
    {
        var lines = CuppingForm.HundredPoint().Rules.Attributes;
        var points = lines.Select(line => line.MarkedBy == MarkedBy.Cups ? 10m : 7.5m).ToList();
        var rest = (total - points.Sum()) / 2m;
        (points[0], points[1]) = (points[0] + rest, points[1] + rest);
        return new PastResult(cupper, points, [0m, 0m], null, [], null);
    }
}

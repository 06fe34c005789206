using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public class AdditiveFitTests
{
    /// <summary>Handbook quality.md section 4.6: cuppers C1-C4, samples P Q R S T.</summary>
    internal static readonly PanelScore[] Handbook =
    [
        new(0, 0, 84.50), new(1, 0, 85.50), new(2, 0, 86.25), new(3, 0, 83.00),
        new(0, 1, 82.25), new(1, 1, 83.75), new(4, 1, 84.75),
        new(2, 2, 87.75), new(3, 2, 84.50), new(4, 2, 88.50),
        new(0, 3, 83.75), new(1, 3, 84.50), new(2, 3, 86.00), new(4, 3, 86.25),
    ];

    public static TheoryData<int> Designs => [.. Enumerable.Range(1, 30)];

    [Fact]
    public void The_handbooks_unbalanced_table_gives_its_adjusted_means()
    {
        var fit = AdditiveFit.Of(Handbook, 5, 4);

        // Handbook quality.md section 4.6 and check value 21 (R and NumPy).
        Same([84.093414, 85.176747, 86.098057, 82.713893, 86.597324], fit.Adjusted, 6);
        Same([0.291972, -1.705828, 1.780242, -0.366386], fit.CupperEffects, 6);
        Same([0.146842, 0.146842, 0.146354, 0.187268, 0.144880], Enumerable.Range(0, 5).Select(i => fit.ResidualDeviation * Math.Sqrt(fit.UnitVariance(i))), 6);
        Assert.Equal(0.351295, fit.ResidualSumOfSquares, 6);
        Assert.Equal(6, fit.DegreesOfFreedom);
        Assert.Equal(0.241969, fit.ResidualDeviation, 6);
        Assert.Equal(94.3284, fit.SampleF(), 4);
        Assert.Equal(0.208833, fit.DifferenceError(4, 2), 6);
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void A_random_connected_table_is_fitted_as_R_fits_it(int design)
    {
        var (scores, samples, cuppers) = Design(design);
        var values = Recorded.Rows("additive-fit-values.csv").Where(row => row.Whole("design") == design).ToList();

        var fit = AdditiveFit.Of(scores, samples, cuppers);

        // tests/R/additive-fit.R: R 4.2, lm with sum contrasts.
        Assert.NotEmpty(values);
        foreach (var row in values)
        {
            int one = row.Whole("one"), other = row.Whole("other");
            var found = row["what"] switch
            {
                "adjusted" => fit.Adjusted[one],
                "se" => fit.ResidualDeviation * Math.Sqrt(fit.UnitVariance(one)),
                "effect" => fit.CupperEffects[one],
                "difference-se" => fit.DifferenceError(one, other),
                "rss" => fit.ResidualSumOfSquares,
                "df" => fit.DegreesOfFreedom,
                "f" => fit.SampleF(),
                _ => double.NaN,
            };
            if (row["what"] != "t95")
            {
                Assert.Equal(row.Number("value"), found, 1e-8 * Math.Max(1, Math.Abs(found)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Alternating_means_converge_to_the_same_fit(int design)
    {
        var (scores, samples, cuppers) = Design(design);

        var fit = AdditiveFit.Of(scores, samples, cuppers);

        // Backfitting as an oracle of another kind: handbook quality.md section 4.6.
        var (sample, cupper) = Backfit(scores, samples, cuppers);
        Same(sample, fit.Adjusted, 7);
        Same(cupper, fit.CupperEffects, 7);
    }

    [Fact]
    public void A_balanced_table_is_fitted_by_its_plain_means()
    {
        PanelScore[] scores = [new(0, 0, 84), new(0, 1, 86), new(1, 0, 81), new(1, 1, 82.5)];

        var fit = AdditiveFit.Of(scores, 2, 2);

        Same([85, 81.75], fit.Adjusted, 10);
        // Worked by hand: grand mean 83.375, cuppers 82.5 and 84.25.
        Same([-0.875, 0.875], fit.CupperEffects, 10);
        // Worked by hand: cell residuals are ±0.125, so 4 × 0.015625.
        Assert.Equal(0.0625, fit.ResidualSumOfSquares, 10);
        Assert.Equal(1, fit.DegreesOfFreedom);
    }

    [Fact]
    public void One_cupper_gives_the_sheets_and_no_error()
    {
        var fit = AdditiveFit.Of([new(0, 0, 84.25), new(1, 0, 86)], 2, 1);

        Same([84.25, 86], fit.Adjusted, 10);
        Assert.Equal(0, fit.DegreesOfFreedom);
        Assert.True(double.IsNaN(fit.ResidualDeviation));
        Assert.Equal(1, fit.UnitVariance(0), 10);
    }

    [Fact]
    public void Two_tables_that_nothing_connects_are_fitted_apart()
    {
        PanelScore[] scores = [new(0, 0, 84), new(1, 0, 85), new(0, 1, 85), new(1, 1, 86.5), new(2, 2, 80), new(3, 2, 82), new(2, 3, 81), new(3, 3, 82.5)];

        var fit = AdditiveFit.Of(scores, 4, 4);

        Assert.Equal(2, fit.Parts);
        Same([84.5, 85.75, 80.5, 82.25], fit.Adjusted, 10);
        Assert.Equal(2, fit.DegreesOfFreedom);
        Assert.Equal(0, fit.UnitCovariance(0, 2), 10);
        Assert.True(fit.DifferenceError(0, 1) > 0);
    }

    [Fact]
    public void A_comparison_across_unconnected_tables_is_refused()
    {
        var fit = AdditiveFit.Of([new(0, 0, 84), new(1, 1, 85)], 2, 2);

        var refused = Assert.Throws<RuleBrokenException>(() => fit.DifferenceError(0, 1));

        Assert.Contains("cannot be compared", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sample_without_a_score_is_our_own_mistake()
    {
        Assert.Throws<ArgumentException>(() => AdditiveFit.Of([new(0, 0, 84)], 2, 1));
    }

    internal static void Same(IEnumerable<double> expected, IEnumerable<double> found, int decimals) =>
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, decimals));

    private static (PanelScore[] Scores, int Samples, int Cuppers) Design(int design)
    {
        var scores = Recorded.Rows("additive-fit-scores.csv").Where(row => row.Whole("design") == design)
            .Select(row => new PanelScore(row.Whole("sample"), row.Whole("cupper"), row.Number("points"))).ToArray();
        return (scores, scores.Max(score => score.Sample) + 1, scores.Max(score => score.Cupper) + 1);
    }

    private static (double[] Samples, double[] Cuppers) Backfit(PanelScore[] scores, int samples, int cuppers)
    {
        double[] sample = new double[samples], cupper = new double[cuppers];
        for (var round = 0; round < 20_000; round++)
        {
            for (var i = 0; i < samples; i++)
            {
                sample[i] = scores.Where(score => score.Sample == i).Average(score => score.Points - cupper[score.Cupper]);
            }

            for (var j = 0; j < cuppers; j++)
            {
                cupper[j] = scores.Where(score => score.Cupper == j).Average(score => score.Points - sample[score.Sample]);
            }

            var level = cupper.Average();
            cupper = [.. cupper.Select(effect => effect - level)];
            sample = [.. sample.Select(mean => mean + level)];
        }

        return (sample, cupper);
    }
}

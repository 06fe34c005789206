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
        var (sample, cupper) = Backfit(scores, [.. Enumerable.Repeat(1.0, cuppers)], samples);
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

    [Theory]
    [MemberData(nameof(Designs))]
    public void A_table_whose_cuppers_count_differently_is_fitted_as_R_fits_it(int design)
    {
        var (scores, samples, cuppers) = Design(design);
        var values = Recorded.Rows("weighted-fit-values.csv").Where(row => row.Whole("design") == design).ToList();

        var fit = AdditiveFit.Of(scores, samples, cuppers, Weights(design));

        // tests/R/telling-apart.R: R 4.2, lm with weights.
        Assert.NotEmpty(values);
        Assert.All(values.Where(row => row["what"] != "weight"), row =>
        {
            var found = row["what"] switch
            {
                "adjusted" => fit.Adjusted[row.Whole("one")],
                "se" => fit.ResidualDeviation * Math.Sqrt(fit.UnitVariance(row.Whole("one"))),
                "effect" => fit.CupperEffects[row.Whole("one")],
                "rss" => fit.ResidualSumOfSquares,
                "f" => fit.SampleF(),
                _ => double.NaN,
            };
            Assert.Equal(row.Number("value"), found, 1e-8 * Math.Max(1, Math.Abs(found)));
        });
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Alternating_weighted_means_converge_to_the_same_fit(int design)
    {
        var (scores, samples, cuppers) = Design(design);

        var fit = AdditiveFit.Of(scores, samples, cuppers, Weights(design));

        var (sample, cupper) = Backfit(scores, Weights(design), samples);
        Same(sample, fit.Adjusted, 7);
        Same(cupper, fit.CupperEffects, 7);
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Cuppers_who_all_count_1_change_nothing(int design)
    {
        var (scores, samples, cuppers) = Design(design);

        AdditiveFit plain = AdditiveFit.Of(scores, samples, cuppers), ones = AdditiveFit.Of(scores, samples, cuppers, [.. Enumerable.Repeat(1.0, cuppers)]);

        Assert.Equal(plain.Adjusted, ones.Adjusted);
        Assert.Equal(plain.CupperEffects, ones.CupperEffects);
        Assert.Equal(plain.Loadings.SelectMany(row => row), ones.Loadings.SelectMany(row => row));
        Assert.Equal(plain.ResidualSumOfSquares, ones.ResidualSumOfSquares);
        Assert.Equal(cuppers, plain.CuppersInPart(0), 12);
        Assert.Equal(scores.Count(score => score.Sample == 0), plain.WeightOf(0), 12);
    }

    [Fact]
    public void In_a_complete_table_a_weighted_fit_is_the_weighted_mean()
    {
        PanelScore[] scores = [new(0, 0, 84), new(0, 1, 86), new(1, 0, 81), new(1, 1, 82.5)];

        var fit = AdditiveFit.Of(scores, 2, 2, [1, 0.25]);

        // Worked by hand: (84 + 0.25 × 86) ÷ 1.25 and (81 + 0.25 × 82.5) ÷ 1.25; level fixed as by 1.25² ÷ 1.0625 cuppers.
        Same([84.4, 81.3], fit.Adjusted, 10);
        Assert.Equal(1.470588, fit.CuppersInPart(0), 6);
    }

    [Theory]
    [InlineData(0.0, 1.0)]
    [InlineData(-1.0, 1.0)]
    [InlineData(double.NaN, 1.0)]
    [InlineData(double.PositiveInfinity, 1.0)]
    public void A_weight_that_is_none_is_our_own_mistake(double one, double other)
    {
        Assert.Throws<ArgumentException>(() => AdditiveFit.Of([new(0, 0, 84), new(0, 1, 85)], 1, 2, [one, other]));
        Assert.Throws<ArgumentException>(() => AdditiveFit.Of([new(0, 0, 84), new(0, 1, 85)], 1, 2, [1.0]));
    }

    [Fact]
    public void One_cuppers_repeats_do_not_stand_for_other_cuppers()
    {
        var scores = new[] { 84, 84.25, 84, 84.25 }.SelectMany((points, sample) => new PanelScore[] { new(sample, 0, points), new(sample, 0, points + 0.25) }).ToList();

        var errors = PanelErrors.Of(AdditiveFit.Of(scores, 4, 1), new ExpectedErrors(1.00, 0.50));

        Assert.Equal(ErrorSource.HouseSetting, errors.From);
        // Worked by hand: two sheets of 0.50 each and the variance between cuppers, 1.00² − 0.50².
        Assert.Equal(Math.Sqrt(0.25 / 2 + 0.75), errors.Estimate(0).StandardError, 10);
        Assert.Equal(HoldsFor.AnyCupper, errors.Estimate(0).HoldsFor);
    }

    [Fact]
    public void A_sample_without_a_score_is_our_own_mistake()
    {
        Assert.Throws<ArgumentException>(() => AdditiveFit.Of([new(0, 0, 84)], 2, 1));
    }

    [Fact]
    public void A_table_larger_than_any_panel_is_refused_before_its_matrices_are_made()
    {
        var scores = Enumerable.Range(0, 301).Select(cupper => new PanelScore(0, cupper, 84)).ToList();

        Assert.Contains("at most 300 cuppers", Assert.Throws<RuleBrokenException>(() => AdditiveFit.Of(scores, 1, 301)).Message, StringComparison.Ordinal);
    }

    internal static void Same(IEnumerable<double> expected, IEnumerable<double> found, int decimals)
    {
        var (wanted, had) = (expected.ToList(), found.ToList());
        Assert.NotEmpty(wanted);
        Assert.Equal(wanted.Count, had.Count);
        Assert.All(wanted.Zip(had), pair => Assert.Equal(pair.First, pair.Second, decimals));
    }

    internal static (PanelScore[] Scores, int Samples, int Cuppers) Design(int design)
    {
        var scores = Recorded.Rows("additive-fit-scores.csv").Where(row => row.Whole("design") == design)
            .Select(row => new PanelScore(row.Whole("sample"), row.Whole("cupper"), row.Number("points"))).ToArray();
        return (scores, scores.Max(score => score.Sample) + 1, scores.Max(score => score.Cupper) + 1);
    }

    private static double[] Weights(int design) => [.. Recorded.Rows("weighted-fit-values.csv")
        .Where(row => row.Whole("design") == design && row["what"] == "weight").Select(row => row.Number("value"))];

    private static (double[] Samples, double[] Cuppers) Backfit(PanelScore[] scores, double[] weights, int samples)
    {
        double[] sample = new double[samples], cupper = new double[weights.Length];
        for (var round = 0; round < 20_000; round++)
        {
            for (var i = 0; i < samples; i++)
            {
                var own = scores.Where(score => score.Sample == i).ToList();
                sample[i] = own.Sum(score => weights[score.Cupper] * (score.Points - cupper[score.Cupper])) / own.Sum(score => weights[score.Cupper]);
            }

            for (var j = 0; j < cupper.Length; j++)
            {
                cupper[j] = scores.Where(score => score.Cupper == j).Average(score => score.Points - sample[score.Sample]);
            }

            var level = cupper.Zip(weights, (effect, weight) => effect * weight).Sum() / weights.Sum();
            cupper = [.. cupper.Select(effect => effect - level)];
            sample = [.. sample.Select(mean => mean + level)];
        }

        return (sample, cupper);
    }
}

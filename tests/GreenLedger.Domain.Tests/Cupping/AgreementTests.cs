using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public class AgreementTests
{
    public static TheoryData<int> Tables => [.. Enumerable.Range(1, 20)];

    [Fact]
    public void Shrout_and_Fleiss_published_table_gives_their_six_figures()
    {
        double[][] judges = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];

        var icc = IntraclassCorrelation.Of(judges);

        // Shrout and Fleiss 1979; six decimals from handbook quality.md section 4.1, check value 8.
        AdditiveFitTests.Same(
            [0.165742, 0.289764, 0.714841, 0.442797, 0.620051, 0.909316],
            [icc.OneRandom, icc.TwoRandom, icc.Fixed, icc.OneRandomMean, icc.TwoRandomMean, icc.FixedMean],
            6);
        // By their published names, to the published two decimals.
        Assert.Equal(
            "ICC(1,1) .17 ICC(2,1) .29 ICC(3,1) .71 ICC(1,k) .44 ICC(2,k) .62 ICC(3,k) .91",
            string.Join(' ', icc.Forms.Select(form => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{form.Name} {form.Value:.00}"))));
    }

    [Fact]
    public void Siegel_and_Castellans_three_raters_agree_as_published()
    {
        var ranks = RankAgreement.Of(Columns([5, 6, 7, 1, 2, 4, 3, 8], [1, 7, 6, 2, 3, 5, 4, 8], [4, 5, 1, 3, 2, 7, 6, 8]));

        // Siegel and Castellan 1988; handbook quality.md section 4.2, check value 9.
        Assert.Equal([10, 18, 14, 6, 7, 16, 13, 24], ranks.RankSums);
        Assert.Equal(0.656085, ranks.W, 6);
        Assert.Equal(13.77778, ranks.ChiSquared, 5);
        Assert.Equal(7, ranks.DegreesOfFreedom);
        Assert.Equal(0.055278, ranks.P, 6);
    }

    [Fact]
    public void Ties_are_corrected_for_as_in_the_anxiety_data()
    {
        var ranks = RankAgreement.Of(Columns(
            [3, 3, 3, 4, 5, 5, 2, 3, 5, 2, 2, 6, 1, 5, 2, 2, 1, 2, 4, 3],
            [3, 6, 4, 6, 2, 4, 2, 4, 3, 3, 2, 3, 3, 3, 2, 2, 1, 3, 3, 4],
            [2, 1, 4, 4, 3, 2, 1, 6, 1, 1, 1, 2, 3, 3, 1, 1, 3, 3, 2, 2]));

        // R package irr, help of kendall; handbook quality.md section 9, check value 10.
        Assert.Equal(0.539657, ranks.W, 6);
        Assert.Equal(0.501921, ranks.WithoutTies, 6);
        Assert.Equal(30.76044, ranks.ChiSquared, 5);
        Assert.Equal(0.042883, ranks.P, 6);
    }

    [Fact]
    public void Friedmans_test_of_the_rounding_times_comes_out()
    {
        const string times = "5.40 5.50 5.55/5.85 5.70 5.75/5.20 5.60 5.50/5.55 5.50 5.40/5.90 5.85 5.70/5.45 5.55 5.60/5.40 5.40 5.35/5.45 5.50 5.35/5.25 5.15 5.00/5.85 5.80 5.70/5.25 5.20 5.10/5.65 5.55 5.45/5.60 5.35 5.45/5.05 5.00 4.95/5.50 5.50 5.40/5.45 5.55 5.50/5.55 5.55 5.35/5.45 5.50 5.55/5.50 5.45 5.25/5.65 5.60 5.40/5.70 5.65 5.55/6.30 6.30 6.25";
        var runners = times.Split('/').Select(runner => runner.Split(' ').Select(time => double.Parse(time, System.Globalization.CultureInfo.InvariantCulture)).ToArray()).ToArray();

        var ranks = RankAgreement.Of(Columns(runners));

        // Hollander and Wolfe 1973, R help of friedman.test; handbook quality.md section 9, check value 11.
        Assert.Equal([53, 47, 32], ranks.RankSums);
        Assert.Equal(11.142857, ranks.ChiSquared, 6);
        Assert.Equal(0.003805041, ranks.P, 9);
        Assert.Equal(0.253247, ranks.W, 6);
    }

    [Fact]
    public void A_replicated_panel_is_tested_against_the_interaction()
    {
        double[][][] table =
        [
            [[84.00, 84.50], [82.50, 83.00], [85.25, 85.00], [83.75, 84.25]],
            [[86.00, 85.75], [84.25, 84.50], [87.50, 87.00], [84.75, 85.50]],
            [[83.25, 83.00], [82.75, 82.25], [84.00, 84.75], [82.00, 83.00]],
        ];
        var scores = table.SelectMany((row, sample) => row.SelectMany((cell, cupper) => cell.Select(points => new PanelScore(sample, cupper, points))));

        var agreement = Agreement.Of([.. scores]);

        // Handbook quality.md section 4.3, check value 13 (R and SciPy).
        var two = agreement.TwoWay!;
        AdditiveFitTests.Same([26.317708, 18.177083, 1.307292, 1.8125], [two.SampleSquares, two.CupperSquares, two.InteractionSquares, two.ErrorSquares], 6);
        Assert.Equal(60.394422, two.SampleF, 6);
        Assert.Equal(0.000105977, two.SampleP, 9);
        Assert.Equal(1.442529, two.InteractionF, 6);
        Assert.Equal(0.276910, two.InteractionP, 6);
        AdditiveFitTests.Same([0.151042, 0.033420, 0.973524], [two.ErrorVariance, two.InteractionVariance, two.CupperVariance], 6);
        Assert.Equal(0.599100, agreement.Correlation!.TwoRandom, 6);
        Assert.Equal(0.936903, agreement.Correlation.Fixed, 6);
    }

    [Fact]
    public void Ergonomic_stools_come_out_as_published()
    {
        const string subjects = "12 15 12 10/10 14 13 12/7 14 13 9/7 11 10 9/8 11 8 7/9 11 11 10/8 12 12 11/7 11 8 7/9 13 10 8";
        var stools = Columns([.. subjects.Split('/').Select(subject => subject.Split(' ').Select(double.Parse).ToArray())]);

        var two = TwoWayTable.Of([.. stools.Select(row => (IReadOnlyList<IReadOnlyList<double>>)[.. row.Select(value => (IReadOnlyList<double>)[value])])]);

        // Pinheiro and Bates 2000; handbook quality.md section 9, check value 12.
        Assert.Equal(22.35564, two.SampleF, 5);
        Assert.Equal(3.9346e-7, two.SampleP, 11);
        AdditiveFitTests.Same([1.775463, 1.210648], [two.CupperVariance, two.ErrorVariance], 6);
        Assert.True(double.IsNaN(two.InteractionF));
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void Random_complete_tables_agree_as_R_says(int table)
    {
        var scores = Recorded.Rows("agreement-scores.csv").Where(row => row.Whole("table") == table)
            .Select(row => new PanelScore(row.Whole("sample"), row.Whole("cupper"), row.Number("points"))).ToList();

        var agreement = Agreement.Of(scores);

        // tests/R/agreement.R: R 4.2, lm and friedman.test.
        var values = Recorded.Rows("agreement-values.csv").Where(row => row.Whole("table") == table).ToDictionary(row => row["what"], row => row.Number("value"));
        var icc = agreement.Correlation!;
        AdditiveFitTests.Same(
            [values["icc11"], values["icc21"], values["icc31"], values["icc1k"], values["icc2k"], values["icc3k"], values["w"], values["p"], values["chi2"]],
            [icc.OneRandom, icc.TwoRandom, icc.Fixed, icc.OneRandomMean, icc.TwoRandomMean, icc.FixedMean, agreement.Ranks!.W, agreement.Ranks.P, agreement.Ranks.ChiSquared],
            8);
    }

    [Fact]
    public void Samples_that_not_everyone_cupped_are_left_out_of_the_agreement()
    {
        var agreement = Agreement.Of([new(0, 0, 84), new(0, 1, 85), new(1, 0, 82), new(1, 1, 82.5), new(2, 0, 90)]);

        Assert.Equal(2, agreement.Samples);
        Assert.NotNull(agreement.Correlation);
        Assert.StartsWith("Over the 2 samples that all 2 cuppers scored.", agreement.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void One_cupper_agrees_with_nobody()
    {
        var agreement = Agreement.Of([new(0, 0, 84), new(1, 0, 82)]);

        Assert.Null(agreement.Correlation);
        Assert.Null(agreement.Ranks);
        Assert.Equal("One cupper: there is nobody to agree with.", agreement.Sentence);
    }

    /// <summary>One column of the table per cupper.</summary>
    private static IReadOnlyList<IReadOnlyList<double>> Columns(params double[][] columns) =>
        [.. Enumerable.Range(0, columns[0].Length).Select(row => (IReadOnlyList<double>)[.. columns.Select(column => column[row])])];
}

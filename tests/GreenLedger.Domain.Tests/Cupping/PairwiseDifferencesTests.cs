using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class PairwiseDifferencesTests
{
    private static readonly ExpectedErrors House = new(1.00, 0.50);

    private static readonly string[] Names = ["A", "B", "C", "D"];

    public static TheoryData<int> Designs => [.. Enumerable.Range(1, 30)];

    [Fact]
    public void Warp_breaks_by_tension_differ_as_published()
    {
        string[] wool = ["26 30 54 25 70 52 51 26 67|18 21 29 17 12 18 35 30 36|36 21 24 18 10 43 28 15 26", "27 14 29 19 29 31 41 20 44|42 26 19 16 39 28 21 39 29|20 21 24 17 13 15 15 16 28"];
        var scores = wool.SelectMany((row, seat) => row.Split('|').SelectMany((cell, place) => cell.Split(' ').Select(breaks => new PanelScore(place, seat, int.Parse(breaks, null))))).ToList();

        var differences = Of(scores, 3, 2);

        // R help of TukeyHSD, breaks ~ wool + tension; handbook quality.md section 4.7, check value 25.
        Assert.Equal(50, differences.DegreesOfFreedom);
        Same(10.0, 0.6465793, 19.35342, 0.0336262, differences.Between(0, 1)!);
        Same(14.7222, 5.3688, 24.0756, 0.00112, differences.Between(0, 2)!);
        Same(4.7222, -4.6312, 14.0756, 0.44742, differences.Between(1, 2)!);
        Assert.Equal([[0], [1, 2]], differences.Groups);
    }

    [Fact]
    public void The_handbooks_panel_tells_its_three_samples_apart()
    {
        var differences = Of(SessionScores.CellsOf(CupperPerformanceTests.Scores(CupperPerformanceTests.Replicated)), 3, 4);

        // Handbook quality.md section 4.7: 4.339195 × √(0.217882 ÷ 8) = 0.7161; all three pairs differ.
        Assert.Equal(0.7161, differences.Needed()!.Value.Least, 4);
        Assert.Equal(0.7161, differences.Needed()!.Value.Most, 4);
        Assert.All(differences.Pairs, pair => Assert.True(pair.Differ));
        Assert.Equal("The panel tells every sample from every other.", PairwiseWords.Of(differences, Names)[0]);
        Assert.Equal("Two samples must lie 0.72 points apart to be told apart (Tukey's test, 95 % for all 3 pairs together; the error comes from these sheets, with 6 degrees of freedom).", PairwiseWords.Of(differences, Names)[1]);
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Differences_of_an_incomplete_panel_are_those_of_R(int design)
    {
        var (scores, samples, cuppers) = AdditiveFitTests.Design(design);
        var fit = AdditiveFit.Of(scores, samples, cuppers);
        if (fit.DegreesOfFreedom < ExpectedErrors.LeastDegreesOfFreedom)
        {
            Assert.Equal(ErrorSource.HouseSetting, Of(scores, samples, cuppers).ErrorFrom);
            return;
        }

        var differences = Of(scores, samples, cuppers);

        // tests/R/telling-apart.R: R 4.2, lm and the studentized range by integrate.
        var rows = Recorded.Rows("pairwise-values.csv").Where(row => row.Whole("design") == design).ToList();
        Assert.Equal(rows.Count, differences.Pairs.Count);
        Assert.All(rows, row =>
        {
            var pair = differences.Between(row.Whole("one"), row.Whole("other"))!;
            AdditiveFitTests.Same([row.Number("points"), row.Number("se")], [pair.Points, pair.StandardError], 8);
            Assert.Equal(row.Number("p"), pair.P, 1e-7);
            Assert.Equal(pair.Differ, pair.Low > 0 || pair.High < 0);
        });
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Groups_are_the_largest_sets_without_a_pair_that_differs(int design)
    {
        var (scores, samples, cuppers) = AdditiveFitTests.Design(design);

        var differences = Of(scores, samples, cuppers);

        // Every subset is looked at, which is another way than splitting.
        var alike = Enumerable.Range(1, (1 << samples) - 1).Where(set => differences.Pairs.All(pair => !pair.Differ || (set >> pair.One & set >> pair.Other & 1) == 0)).ToList();
        var largest = alike.Where(set => !alike.Exists(other => other != set && (other & set) == set)).Order();
        Assert.Equal(largest, differences.Groups.Select(group => group.Sum(sample => 1 << sample)).Order());
    }

    [Fact]
    public void One_cuppers_two_sheets_are_held_against_the_houses_repeatability()
    {
        var differences = Of([new(0, 0, 84), new(1, 0, 85.25)], 2, 1);

        // Worked by hand: 1.959964 × 0.50 × √2 = 1.3859; the sheets lie 1.25 apart.
        Assert.Equal(1.3859, differences.Needed()!.Value.Most, 4);
        Assert.True(double.IsInfinity(differences.DegreesOfFreedom));
        Assert.Equal(
            ["The panel cannot tell any of these samples from another.", "Two samples must lie 1.39 points apart to be told apart (Tukey's test, 95 % for the one pair; the error is the house's repeatability, because these sheets cannot show their own; other cuppers may see it otherwise)."],
            PairwiseWords.Of(differences, Names));
    }

    [Fact]
    public void Groups_are_put_into_words_and_who_stands_between_is_named()
    {
        PanelScore[] scores = [new(0, 0, 88), new(1, 0, 85), new(2, 0, 84), new(3, 0, 83)];

        var words = PairwiseWords.Of(Of(scores, 4, 1), Names);

        // Worked by hand: 3.633 (q of 4 means, infinite degrees, R qtukey) × 0.50 = 1.82: of B, C and D only B and D differ.
        Assert.Equal(["A is told from every other sample.", "B and C cannot be told apart.", "C and D cannot be told apart.", "C stands in between: it cannot be told from samples that are told from each other."], words.SkipLast(1));
        Assert.Contains("1.82 points", words[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_that_nothing_connects_are_not_compared()
    {
        PanelScore[] scores = [new(0, 0, 84), new(1, 0, 88), new(2, 1, 80), new(3, 1, 80.5)];

        var differences = Of(scores, 4, 2);

        Assert.Equal(2, differences.Pairs.Count);
        Assert.Null(differences.Between(0, 2));
        var words = PairwiseWords.Of(differences, Names);
        Assert.Contains("B is told from every sample of its part.", words);
        Assert.Contains("D and C cannot be told apart.", words);
        Assert.StartsWith("The table falls into 2 parts", words[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_beyond_reading_are_counted_instead()
    {
        // Two blocks of 15 samples, each known exactly within itself and only by a thin chain against the other: whichever one
        // of each block is taken, the two cannot be told apart, which makes 15 × 15 groups.
        var blocks = Enumerable.Range(0, 30).SelectMany(sample => Enumerable.Repeat(new PanelScore(sample, sample / 15, 80 + 0.3 * (sample % 15)), 100));
        PanelScore[] chain = [new(0, 2, 80), new(30, 2, 82), new(30, 3, 82), new(31, 3, 82), new(31, 4, 82), new(32, 4, 82), new(32, 5, 82), new(15, 5, 80)];

        var differences = Of([.. blocks, .. chain], 33, 6);

        Assert.Empty(differences.Groups);
        // Worked by hand: 15 × 14 ÷ 2 pairs in each block.
        Assert.StartsWith("The panel tells 210 of 528 pairs of samples apart", PairwiseWords.Of(differences, [.. Enumerable.Range(0, 33).Select(sample => $"{sample}")])[0], StringComparison.Ordinal);
    }

    [Fact]
    public void One_sample_has_nothing_to_be_told_from()
    {
        Assert.Equal(["One sample: there is nothing to tell apart."], PairwiseWords.Of(Of([new(0, 0, 84), new(0, 1, 85)], 1, 2), Names));
    }

    private static PairwiseDifferences Of(IReadOnlyList<PanelScore> scores, int samples, int cuppers)
    {
        var fit = AdditiveFit.Of(scores, samples, cuppers);
        return PairwiseDifferences.Of(fit, PanelErrors.Of(fit, House));
    }

    /// <summary>To the digits that were published.</summary>
    private static void Same(double points, double low, double high, double p, PairwiseDifference pair) =>
        AdditiveFitTests.Same([points, low, high, p], [pair.Points, pair.Low, pair.High, pair.P], 4);
}

using GreenLedger.Domain.Choosing;

namespace GreenLedger.Domain.Tests.Choosing;

public sealed class ShrunkenScoreTests
{
    private static readonly decimal[] Scores = [80m, 82m, 84m, 86m, 88m, 84m, 84m, 84m];

    /// <summary>Handbook quality.md section 4.12 and section 9, value 31: four scores with a standard deviation of 1.0 leave an error of 0.5.</summary>
    [Fact]
    public void The_best_of_many_is_drawn_towards_the_mean_by_its_error()
    {
        var read = ShrunkenScore.Of(87, 1.0 / Math.Sqrt(4), new LotSpread(84, 1.5, 12));

        Assert.Equal(86.70, read.Points, 6);
        Assert.Equal(0.474342, read.StandardError, 6);
    }

    /// <summary>Worked by hand: mean 84, variance 40 ÷ 7, less 1 for the errors of 1 point each.</summary>
    [Fact]
    public void The_spread_of_the_lots_is_what_their_errors_do_not_explain()
    {
        var shortlist = Demo.Ranked([.. Lots(error: 1)]);

        var spread = LotSpread.Of(shortlist.Entries)!.Value;

        Assert.Equal((84, 8), (spread.Mean, spread.Lots));
        Assert.Equal(Math.Sqrt(40.0 / 7 - 1), spread.Deviation, 9);
    }

    /// <summary>Worked by hand: with nothing but errors between them all lots are worth their mean.</summary>
    [Fact]
    public void Errors_that_explain_the_whole_spread_leave_the_mean()
    {
        var spread = LotSpread.Of(Demo.Ranked([.. Lots(error: 5)]).Entries)!.Value;

        Assert.Equal(0, spread.Deviation);
        Assert.Equal((84, 0), (ShrunkenScore.Of(88, 5, spread).Points, ShrunkenScore.Of(88, 5, spread).StandardError));
    }

    [Fact]
    public void Too_few_lots_say_nothing_about_luck()
    {
        var few = Demo.Ranked([.. Lots(error: 0.5).Take(LotSpread.Fewest - 1)]);
        var enough = Demo.Ranked([.. Lots(error: 0.6)]);

        Assert.Null(LotSpread.Of(few.Entries));
        Assert.DoesNotContain(new ShortlistWords(few).Reasons(few.Ranked[0]), reason => reason.Contains("luck", StringComparison.Ordinal));
        // Worked by hand: between 5.7143 − 0.36 = 5.3543; weight 5.3543 ÷ 5.7143 = 0.937; 84 + 0.937 × 4 = 87.748; 0.6 × √0.937 = 0.581.
        Assert.Contains(
            "Who scores high among many owes some of it to luck: drawn towards 84.00, the mean of 8 lots, the score reads 87.75 ± 0.58 (one standard error).",
            new ShortlistWords(enough).Reasons(enough.Ranked.Single(entry => entry.Candidate.Ref == "L4")));
        // 80 is below the mean: luck did not lift it.
        Assert.DoesNotContain(new ShortlistWords(enough).Reasons(enough.Ranked.Single(entry => entry.Candidate.Ref == "L0")), reason => reason.Contains("luck", StringComparison.Ordinal));
    }

    private static IEnumerable<Candidate> Lots(double error) =>
        Scores.Select((score, i) => Demo.Lot($"L{i}", score, 8m + i * 0.01m, error));
}

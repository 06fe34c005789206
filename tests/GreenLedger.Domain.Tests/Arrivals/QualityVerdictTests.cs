using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class QualityVerdictTests
{
    [Fact]
    public void A_match_says_what_was_found_and_how_sure_it_is()
    {
        var verdict = QualityVerdict.Of(Found(CupComparisonTests.Approved, CupComparisonTests.Arrival), Score.Of(1m));

        // Handbook quality.md section 4.8: −0.375, lower bound −0.547068.
        Assert.Equal(
            [
                "The arrival matches: it cupped 0.38 points below the approved sample.",
                "With 95 % confidence it lies less than 0.55 points below, within the tolerance of 1.00 points.",
                "Both were cupped blind in one session: 85.04 the approved sample, 84.67 the arrival, 6 cuppers each.",
            ],
            verdict.Sentences);
        Assert.Null(verdict.CuppersNeeded);
    }

    [Fact]
    public void A_short_arrival_is_short_by_more_than_the_tolerance_beyond_doubt()
    {
        var verdict = QualityVerdict.Of(Found([86, 85, 85.5, 86.25], [84, 83.25, 83.25, 84.25]), Score.Of(1m));

        // Worked by hand: differences −2, −1.75, −2.25, −2; sd 0.204124, t(3; 0.95) 2.353363 from a printed table.
        Assert.Equal(-2 + 2.353363 * 0.204124 / 2, verdict.Upper!.Value, 5);
        Assert.Equal(ArrivalOutcome.Short, verdict.Outcome);
        Assert.Equal("The arrival is short: it cupped 2.00 points below the approved sample.", verdict.Sentences[0]);
        Assert.Equal("With 95 % confidence it lies more than 1.76 points below, beyond the tolerance of 1.00 points.", verdict.Sentences[1]);
    }

    [Fact]
    public void A_difference_at_the_tolerance_is_never_decided()
    {
        var verdict = QualityVerdict.Of(Found([86, 85, 85.5], [85.25, 84, 84.25]), Score.Of(1m));

        Assert.Equal(-1, verdict.Difference.Points, 9);
        Assert.Equal(ArrivalOutcome.Undecided, verdict.Outcome);
        Assert.Equal(0.5, verdict.ShortP!.Value, 9);
        Assert.Null(verdict.CuppersNeeded);
        Assert.Contains("settle it in talk", verdict.Sentences[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void An_undecided_arrival_says_how_many_more_sheets_would_likely_decide()
    {
        var verdict = QualityVerdict.Of(Found([86, 85, 85.5, 86.25], [85.25, 84.75, 84.25, 86.25]), Score.Of(1m));

        // Differences −0.75, −0.25, −1.25, 0: mean −0.5625, sd 0.5543389. R 4.2: the least n with
        // (qt(.95, n - 1) + qt(.80, n - 1)) * 0.5543389 / sqrt(n) <= 0.4375 is 12 (at 11: 0.4499).
        Assert.Equal(0.5543389, verdict.Difference.PairDeviation!.Value, 7);
        Assert.Equal(ArrivalOutcome.Undecided, verdict.Outcome);
        Assert.Equal(12, verdict.CuppersNeeded);
        Assert.Equal(24, verdict.SheetsNeeded);
        Assert.Contains("12 cuppers taste both, 24 sheets", verdict.Sentences[^1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(10.01)]
    public void A_tolerance_out_of_range_is_refused(double points) =>
        Assert.Throws<RuleBrokenException>(() => QualityVerdict.Of(Found([86, 85], [85, 84.5]), Score.Of((decimal)points)));

    private static CupDifference Found(double[] approved, double[] arrival) =>
        CupComparison.OneSession([.. CupComparisonTests.Sheets(0, approved), .. CupComparisonTests.Sheets(1, arrival)], 0, 1);
}

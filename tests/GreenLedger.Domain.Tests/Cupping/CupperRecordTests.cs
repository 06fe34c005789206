using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class CupperRecordTests
{
    /// <summary>Handbook quality.md section 4.4 (R), as for one session.</summary>
    [Theory]
    [InlineData(0, 0.1944, 0.2500, 61.1667, 1.1024)]
    [InlineData(1, -1.4167, 0.3062, 22.1111, 0.7044)]
    [InlineData(2, 1.7500, 0.3819, 30.5000, 1.2116)]
    [InlineData(3, -0.5278, 0.5496, 11.4828, 0.9678)]
    public void One_session_is_the_handbooks_table(int cupper, double bias, double repeatability, double f, double slope)
    {
        var record = CupperRecord.Of([Handbook(1, cupper)]);

        AdditiveFitTests.Same([bias, repeatability, f, slope], [record.Bias!.Points, record.Repeatability!.Deviation, record.Discrimination!.F, record.Scale!.Value.Slope], 4);
        Assert.Null(record.Bias.Low);
        Assert.Null(record.BiasChart);
    }

    [Fact]
    public void Sessions_are_pooled_around_their_own_means()
    {
        // The second session's coffees score 5 points less, which is no work of the cupper's.
        var record = CupperRecord.Of([Handbook(1, 3), Handbook(2, 3, level: -5)]);

        // The same figures twice over: F of C4 in handbook quality.md section 4.4, with twice the degrees of freedom.
        Assert.Equal(11.4828, record.Discrimination!.F, 4);
        Assert.Equal((4, 6), (record.Discrimination.BetweenFreedom, record.Discrimination.WithinFreedom));
        Assert.Equal(0.5496, record.Repeatability!.Deviation, 4);
        Assert.Equal(6, record.Repeatability.DegreesOfFreedom);
        Assert.Equal(0.9678, record.Scale!.Value.Slope, 4);
        Assert.Equal(4, record.Scale.Value.Samples);
    }

    [Fact]
    public void Who_missed_samples_is_held_against_the_others_on_equal_terms()
    {
        var record = CupperRecord.Of([Session(1, 2, AdditiveFitTests.Handbook)]);

        // Handbook quality.md section 4.6 (R): 1.780242 − (0.291972 − 1.705828 − 0.366386) ÷ 3.
        Assert.Equal(2.373656, record.Bias!.Points, 6);
        Assert.Null(record.Repeatability);
        Assert.Null(record.Scale);
    }

    [Fact]
    public void Mean_bias_has_an_interval_from_three_sessions_on()
    {
        var record = CupperRecord.Of([Pair(1, 84.5), Pair(2, 85.0), Pair(3, 85.5)]);

        // Worked by hand: 0.5, 1.0, 1.5; deviation 0.5, error 0.5 ÷ √3 = 0.288675, t(0.975; 2) = 4.302653 (NIST/SEMATECH 1.3.6.7.2).
        AdditiveFitTests.Same([1.0, -0.242068, 2.242068], [record.Bias!.Points, record.Bias.Low!.Value, record.Bias.High!.Value], 5);
        Assert.Equal("No bias against the others shows: +1.00 points on average (−0.24 to +2.24 with 95 %, 3 sessions).", CupperRecordWords.OfBias(record));
    }

    [Fact]
    public void Twelve_sessions_have_control_limits_and_the_one_outside_is_found()
    {
        double[] scores = [84.5, 84.7, 84.4, 84.6, 84.5, 84.8, 84.5, 84.6, 84.4, 84.6, 84.5, 87.0];

        var record = CupperRecord.Of(scores.Select((score, day) => Pair(day + 1, score)).Reverse(), basePeriod: 10);

        // Worked by hand: the first ten differ by 1.9 ÷ 9 from one to the next, mean 0.56; 3 × 0.211111 ÷ 1.128 = 0.561466.
        AdditiveFitTests.Same([0.56, -0.001466, 1.121466], [record.BiasChart!.Mean, record.BiasChart.Lower, record.BiasChart.Upper], 5);
        Assert.Equal([11], record.BiasChart.Outside);
        Assert.Equal("Limits 0.00 to +1.12 points from the first 10 sessions. One session lies outside.", CupperRecordWords.OfChart(record));
    }

    [Fact]
    public void Too_little_is_said_to_be_too_little()
    {
        var record = CupperRecord.Of([Handbook(1, 0)]);

        Assert.Equal("Too little to judge: +0.19 points against the others over 1 session; 3 are needed.", CupperRecordWords.OfBias(record));
        Assert.Equal("Too little to judge: control limits are drawn from 10 sessions on; so far 1.", CupperRecordWords.OfChart(record));
        Assert.Equal("Too little to judge: 0.25 points from 3 repeats; 10 are needed.", CupperRecordWords.OfRepeatability(record));
        Assert.Equal("Too little to judge: 3 repeats; 10 are needed.", CupperRecordWords.OfDiscrimination(record));
        Assert.Equal("Too little to judge: 2 differences between samples; 10 are needed.", CupperRecordWords.OfScale(record));
    }

    [Fact]
    public void Enough_sessions_are_judged()
    {
        var record = CupperRecord.Of(Enumerable.Range(1, 5).Select(day => Handbook(day, 1, level: day)));

        Assert.Equal("Scores below the others: −1.42 points on average (−1.42 to −1.42 with 95 %, 5 sessions).", CupperRecordWords.OfBias(record));
        // Handbook quality.md section 4.4, C2: s_r 0.3062; NIST/SEMATECH 1.3.6.7.4: chi-squared of 15 is 27.488 and 6.262.
        Assert.Equal("Repeats within 0.31 points, one standard deviation (0.23 to 0.47 with 95 %, 15 repeats).", CupperRecordWords.OfRepeatability(record));
        Assert.StartsWith("Tells samples apart (F = 22.1, 10 and 15 degrees of freedom, p below 0.001)", CupperRecordWords.OfDiscrimination(record), StringComparison.Ordinal);
        // Slope ÷ correlation = 0.7044 ÷ 0.9565.
        Assert.Equal("Compresses the scale: own scores spread 0.74 times as far as the others', and a point of theirs is 0.70 points of this cupper's (slope), correlation 0.96.", CupperRecordWords.OfScale(record));
    }

    [Fact]
    public void A_cupper_alone_has_no_bias_but_may_repeat()
    {
        var record = CupperRecord.Of([Session(1, 0, [new(0, 0, 84), new(0, 0, 84.5), new(1, 0, 82)])]);

        Assert.Equal("Nobody else cupped the same samples yet: a bias against the panel cannot be seen.", CupperRecordWords.OfBias(record));
        Assert.Equal(1, record.Repeatability!.DegreesOfFreedom);
        Assert.NotNull(record.Discrimination);
    }

    [Fact]
    public void No_sessions_are_no_record()
    {
        var record = CupperRecord.Of([]);

        Assert.Null(record.Bias);
        Assert.StartsWith("Met no coffee twice", CupperRecordWords.OfRepeatability(record), StringComparison.Ordinal);
        Assert.StartsWith("No two samples", CupperRecordWords.OfScale(record), StringComparison.Ordinal);
    }

    private static CuppedSession Handbook(int day, int cupper, double level = 0) =>
        Session(day, cupper, [.. CupperPerformanceTests.Scores(CupperPerformanceTests.Replicated).Select(score => score with { Points = score.Points + level })]);

    /// <summary>Two cuppers, one sample: the other scores 84.</summary>
    private static CuppedSession Pair(int day, double points) => Session(day, 0, [new(0, 0, points), new(0, 1, 84)]);

    private static CuppedSession Session(int day, int cupper, IReadOnlyList<PanelScore> scores) =>
        new(Id<CuppingSession>.New(), $"Day {day}", new DateOnly(2026, 10, 1).AddDays(day), scores, cupper);
}

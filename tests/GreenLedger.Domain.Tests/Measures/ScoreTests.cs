using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class ScoreTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(Score.Of(-4m), default, Score.Of(79.9167m), Score.Of(80m), Score.Of(86.25m), Score.Of(100m));

    [Fact]
    public void Text_that_is_no_score_is_not_read() =>
        MeasureContract.IsNotRead<Score>(null, "", "100.5", "86,25", "eighty");

    [Fact] // the issue: gates test the unrounded value
    public void A_score_just_below_eighty_is_not_eighty()
    {
        var mean = Score.Of(959m / 12m);

        Assert.Equal("79.916667", mean.ToString());
        Assert.True(mean < Score.Of(80m));
    }

    [Fact]
    public void A_score_above_a_hundred_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => Score.Of(100.01m));
}

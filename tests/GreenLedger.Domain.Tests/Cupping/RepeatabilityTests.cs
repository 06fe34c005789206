using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class RepeatabilityTests
{
    [Fact]
    public void The_handbooks_replicated_panel_repeats_as_tabled()
    {
        var scores = CupperPerformanceTests.Scores(CupperPerformanceTests.Replicated);

        var each = Repeatability.OfEach(scores);
        var panel = Repeatability.Of(scores)!;

        // Handbook quality.md section 4.4 (R): s_r of C1 to C4; section 4.3: error variance 0.151042 with 12 degrees.
        AdditiveFitTests.Same([0.2500, 0.3062, 0.3819, 0.5496], Enumerable.Range(0, 4).Select(cupper => each[cupper].Deviation), 4);
        Assert.All(each.Values, own => Assert.Equal(3, own.DegreesOfFreedom));
        Assert.Equal(Math.Sqrt(0.151042), panel.Deviation, 6);
        Assert.Equal(12, panel.DegreesOfFreedom);
        // NIST/SEMATECH 1.3.6.7.4: chi-squared of 12 at 0.975 is 23.337, at 0.025 is 4.404.
        Assert.Equal(Math.Sqrt(12 * 0.151042 / 23.337), panel.Low, 4);
        Assert.Equal(Math.Sqrt(12 * 0.151042 / 4.404), panel.High, 4);
    }

    [Fact]
    public void Who_cupped_nothing_twice_has_no_repeatability()
    {
        PanelScore[] scores = [new(0, 0, 84), new(0, 0, 84.5), new(1, 0, 82), new(0, 1, 85), new(1, 1, 82.5)];

        Assert.Equal([0], Repeatability.OfEach(scores).Keys);
        Assert.Null(Repeatability.Of(scores.Where(score => score.Cupper == 1)));
        // Worked by hand: 84 and 84.5 lie 0.25 from their mean; √(0.125 ÷ 1).
        Assert.Equal(0.353553, Repeatability.Of(scores)!.Deviation, 6);
    }

    [Fact]
    public void A_coffees_level_may_differ_between_sessions()
    {
        PanelScore[] monday = [new(0, 0, 84), new(0, 0, 84.5)], friday = [new(0, 0, 80), new(0, 0, 80.5)];

        var pooled = Repeatability.Pooled([monday, friday])!;

        // Worked by hand: 0.125 of each session over 2 degrees of freedom; as one session the means would lie 4 apart.
        Assert.Equal(0.353553, pooled.Deviation, 6);
        Assert.Equal(2, pooled.DegreesOfFreedom);
    }
}

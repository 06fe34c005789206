using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class ArrivalVerdictTests
{
    private static readonly PhysicalLimits Agreed = new("Contract", 8m, 12.5m, 0.70m, 0m, 5m, null, LeastOnStatedScreen: 95m);

    [Fact]
    public void Each_value_is_held_against_its_own_limit_with_the_approved_one_beside_it()
    {
        var verdict = ArrivalVerdict.Of(Cup(-0.25), Agreed, Grade(10.8m, 0.55m, 0m, 2m, 97m), Grade(12.6m, 0.68m, 0m, 4m, 96m));

        // Handbook quality.md, check values: 12.6 % is above the export target of 12.5 %.
        Assert.Equal(
            [
                ("Moisture", "10.8 %", "12.6 %", "8 to 12.5 %", false),
                ("Water activity", "0.55", "0.68", "below 0.70", true),
                ("Category 1 full defects", "0", "0", "none", true),
                ("Category 2 full defects", "2", "4", "at most 5", true),
                ("Screen 16 and above", "97 %", "96 %", "at least 95 %", true),
            ],
            verdict.Limits.Select(limit => (limit.Name, limit.Approved, limit.Found, limit.Limit, limit.Passed)));
        Assert.Equal(ArrivalOutcome.Short, verdict.Outcome);
        Assert.Equal("The arrival is short of what was agreed in moisture (12.6 %, limit 8 to 12.5 %).", verdict.Sentence);
    }

    [Fact]
    public void A_short_cup_makes_a_short_arrival_whatever_is_measured()
    {
        var verdict = ArrivalVerdict.Of(Cup(-3), Agreed, null, Grade(11m, 0.71m, 0m, 4m, 96m));

        Assert.Equal("The arrival is short of what was agreed in the cup and water activity (0.71, limit below 0.70).", verdict.Sentence);
        Assert.All(verdict.Limits, limit => Assert.Null(limit.Approved));
    }

    [Fact]
    public void What_was_not_measured_counts_for_neither_side()
    {
        var verdict = ArrivalVerdict.Of(Cup(0), Agreed, null, new GreenGrade(default, default, new DateOnly(2026, 11, 26), null, GreenGrade.UsualSample));

        Assert.All(verdict.Limits, limit => Assert.Null(limit.Passed));
        Assert.Equal(ArrivalOutcome.Matches, verdict.Outcome);
    }

    [Fact]
    public void An_undecided_cup_leaves_the_arrival_undecided() =>
        Assert.Equal(ArrivalOutcome.Undecided, ArrivalVerdict.Of(Cup(-1), Agreed, null, Grade(11m, 0.60m, 0m, 4m, 96m)).Outcome);

    [Fact]
    public void Without_a_cup_only_what_was_measured_speaks()
    {
        Assert.Equal(ArrivalOutcome.Undecided, ArrivalVerdict.Of(null, Agreed, null, null).Outcome);
        Assert.Equal(
            "The arrival keeps every limit that was measured; it was not cupped beside the approved sample.",
            ArrivalVerdict.Of(null, Agreed, null, Grade(11m, 0.60m, 0m, 4m, 96m)).Sentence);
    }

    private static QualityVerdict Cup(double apart) => QualityVerdict.Of(
        CupComparison.OneSession([.. CupComparisonTests.Sheets(0, [85, 84.5, 86, 85.25]), .. CupComparisonTests.Sheets(1, [85.25 + apart, 84.25 + apart, 86 + apart, 85.25 + apart])], 0, 1), Score.Of(1m));

    private static GreenGrade Grade(decimal moisture, decimal activity, decimal first, decimal second, decimal retained) =>
        new GreenGrade(default, default, new DateOnly(2026, 11, 26), null, GreenGrade.UsualSample)
            .Measure(Percent.Of(moisture), null, WaterActivity.Of(activity), null)
            .StateDefects(FullDefects.Of(first), FullDefects.Of(second))
            .Sieve(new Dictionary<int, Percent> { [16] = Percent.Of(retained), [ScreenShare.Pan] = Percent.Of(100m - retained) }, 16);
}

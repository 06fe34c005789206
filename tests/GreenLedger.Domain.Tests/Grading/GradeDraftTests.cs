using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Grading;

public sealed class GradeDraftTests
{
    [Fact]
    public void What_breaks_a_rule_is_told_and_the_rest_is_judged()
    {
        var draft = new GradeDraft
        {
            MoisturePercent = 11m,
            Screens = new Dictionary<int, decimal> { [17] = 40m, [16] = 30m },
            Beans = new Dictionary<string, int> { ["broken"] = 14 },
            Quakers = 0,
        };

        var outlook = draft.Outlook(null, GradingStandards.Published);

        Assert.Contains("add up to 70 %", Assert.Single(outlook.Problems).Message, StringComparison.Ordinal);
        Assert.Equal(70m, outlook.ScreensSum);
        Assert.Equal("specialty", outlook.Grade.QualityClass);
        Assert.True(Limit(outlook.Grade, "Moisture").Passed);
        Assert.Throws<RuleBrokenException>(() => draft.Onto(Grade(), null, GradingStandards.Published));
    }

    [Fact]
    public void Nothing_typed_passes_nothing_and_fails_nothing() =>
        Assert.All(new GradeDraft().Outlook(null, GradingStandards.Published).Grade.Limits, limit => Assert.Null(limit.Passed));

    /// <summary>Handbook quality.md section 2.1: free of foreign odour.</summary>
    [Theory]
    [InlineData(true, "jute", false)]
    [InlineData(false, null, true)]
    [InlineData(null, null, null)]
    public void A_foreign_odour_fails(bool? isForeign, string? odour, bool? passed)
    {
        var grade = new GradeDraft { HasForeignOdour = isForeign, Odour = odour }.Onto(Grade(), null, GradingStandards.Published);

        Assert.Equal(passed, Limit(grade, "Odour").Passed);
    }

    /// <summary>Handbook quality.md section 2.2: "screen 16 up, max 5 % below" passes if 95 % lie on 16 and above.</summary>
    [Theory]
    [InlineData(95.0, true)]
    [InlineData(94.9, false)]
    public void Bean_size_is_held_against_the_screen_that_it_was_sold_as(double onScreen, bool passed)
    {
        var kept = (decimal)onScreen;
        var draft = new GradeDraft { StatedScreen = 16, Screens = new Dictionary<int, decimal> { [16] = kept, [15] = 100m - kept } };

        Assert.Equal(passed, Limit(draft.Onto(Grade(), null, GradingStandards.Published), "Screen 16 and above").Passed);
    }

    /// <summary>Worked by hand: 2 quakers in 200 g are 1 in 100 g.</summary>
    [Fact]
    public void Quakers_are_held_against_the_limit_in_100_g_roasted() =>
        Assert.Equal(1m, new GradeDraft { Quakers = 2, RoastedGrams = 200m }.Onto(Grade(), null, GradingStandards.Published).QuakersIn100Grams);

    [Fact]
    public void A_correction_judges_anew_and_keeps_the_rows_it_has()
    {
        var grade = new GradeDraft { MoisturePercent = 13m }.Onto(Grade(), null, GradingStandards.Published);
        var before = grade.Limits.ToList();

        new GradeDraft { MoisturePercent = 11m }.Onto(grade, null, GradingStandards.Published);

        Assert.True(Limit(grade, "Moisture").Passed);
        Assert.Equal(before, grade.Limits);
    }

    [Fact]
    public void A_table_that_is_not_known_is_refused() =>
        Assert.Equal("Scheme", Assert.Throws<RuleBrokenException>(() => new GradeDraft { Scheme = "nosuch", Beans = new Dictionary<string, int>() }.Onto(Grade(), null, GradingStandards.Published)).Field);

    /// <summary>Handbook quality.md section 9, check value 32: 1,000 kg at 12.0 % dried to 11.0 % weigh 988.7640 kg.</summary>
    [Fact]
    public void Dry_matter_stays_when_moisture_changes()
    {
        var dried = MoistureChange.Of(Weight.FromKilograms(1_000m), Percent.Of(12m), Percent.Of(11m));

        Assert.Equal(988.7640m, Math.Round(dried.Kilograms, 4, MidpointRounding.AwayFromZero));
    }

    /// <summary>Handbook quality.md section 2.2: ISO nominal 6.30 mm for 16 and 7.10 mm for 18; none is known below 12.</summary>
    [Fact]
    public void A_screen_has_a_nominal_hole_beside_the_exact_one()
    {
        Assert.Equal((6.30m, 7.10m), (ScreenShare.NominalMillimetres(16)!.Value, ScreenShare.NominalMillimetres(18)!.Value));
        Assert.Null(ScreenShare.NominalMillimetres(11));
    }

    private static GradeLimit Limit(GreenGrade grade, string name) => grade.Limits.First(limit => limit.Name == name);

    private static GreenGrade Grade() => new(default, default, new DateOnly(2026, 11, 20), null, GreenGrade.UsualSample);
}

using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Grading;

public class GreenGradeTests
{
    /// <summary>Handbook quality.md section 2.1, tests; the second row is check value 5.</summary>
    [Theory]
    [InlineData("full-black 1", 1, 0)]
    [InlineData("partial-black 5, broken 14, shell 4, slight-insect 19", 0, 4)]
    [InlineData("broken 30", 0, 6)]
    [InlineData("broken 9, slight-insect 9", 0, 1)]
    [InlineData("severe-insect 4", 0, 0)]
    public void Full_defects_drop_their_fractions_for_each_kind(string counted, int category1, int category2)
    {
        var grade = Grade().CountDefects(DefectScheme.WashedArabica, Beans(counted), DefectFractions.Dropped);

        Assert.Equal(FullDefects.Of(category1), grade.Category1);
        Assert.Equal(FullDefects.Of(category2), grade.Category2);
    }

    [Fact]
    public void Fractions_can_be_kept_and_both_are_shown()
    {
        var grade = Grade().CountDefects(DefectScheme.WashedArabica, Beans("broken 9, slight-insect 9"), DefectFractions.Kept);

        // Handbook quality.md section 2.1: 1.8 + 0.9.
        Assert.Equal(FullDefects.Of(2.7m), grade.Category2);
        Assert.Equal(FullDefects.Of(1m), grade.Tally(GradingStandards.Published)!.Category2Dropped);
    }

    [Fact]
    public void A_corrected_weight_counts_the_full_defects_anew_and_leaves_what_was_not_found_out()
    {
        var grade = Grade().CountDefects(DefectScheme.WashedArabica, Beans("broken 20, shell 10, full-black 1"), DefectFractions.Dropped);

        grade.Correct(grade.GradedOn, Weight.FromGrams(700m), "the sample had been weighed twice");
        grade.CountDefects(DefectScheme.WashedArabica, Beans("broken 20, shell 15"), DefectFractions.Dropped);

        // Worked by hand: scaled to 350 g, 10 broken are 2 full defects of 5 beans and 7.5 shells are 1; no category 1 is left.
        Assert.Equal((FullDefects.Of(0m), FullDefects.Of(3m)), (grade.Category1!.Value, grade.Category2!.Value));
        Assert.Equal(["broken 20", "shell 15"], grade.Defects.Select(count => $"{count.Kind} {count.Beans}"));
        Assert.Throws<RuleBrokenException>(() => grade.Correct(grade.GradedOn, Weight.Zero, null));
    }

    [Fact]
    public void Category_1_beans_that_the_habit_drops_are_flagged()
    {
        var tally = DefectTally.Of(DefectScheme.WashedArabica, Beans("severe-insect 4"), 350m);

        Assert.True(tally.HidesCategory1);
        // Worked by hand: 4 ÷ 5.
        Assert.Equal(FullDefects.Of(0.8m), tally.Category1Kept);
    }

    [Fact]
    public void A_smaller_sample_is_scaled_to_the_schemes_weight_first()
    {
        // Worked by hand (common practice, no source): 12 broken in 300 g are 14 in 350 g, so 2 full defects.
        var tally = DefectTally.Of(DefectScheme.WashedArabica, Beans("broken 12"), 300m);

        Assert.Equal(FullDefects.Of(2m), tally.Category2Dropped);
        Assert.Equal(FullDefects.Of(2.8m), tally.Category2Kept);
    }

    /// <summary>9 broken: handbook quality.md section 2.1. 12 in 300 g: worked by hand, 14 in 350 g.</summary>
    [Theory]
    [InlineData(9, 350, "1.8")]
    [InlineData(12, 300, "2.8")]
    public void Beans_of_one_kind_make_full_defects_with_their_fraction(int beans, int grams, string full) =>
        Assert.Equal(full, DefectTally.FullOf(DefectScheme.WashedArabica, DefectScheme.WashedArabica.Kinds.Single(kind => kind.Code == "broken"), beans, grams).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture));

    [Fact]
    public void Missing_is_not_zero()
    {
        var grade = Grade();

        var checks = PhysicalLimits.WashedSpecialty.Check(grade).ToList();

        Assert.Null(grade.Moisture);
        Assert.Null(grade.RetainedFrom(16));
        Assert.All(checks, check => Assert.Null(check.Passed));
    }

    [Fact]
    public void A_moisture_of_zero_is_refused_because_it_means_missing()
    {
        var refused = Assert.Throws<RuleBrokenException>(() => Grade().Measure(Percent.Of(0m), null, null, null));

        Assert.Equal(nameof(GreenGrade.Moisture), refused.Field);
    }

    /// <summary>ICO Resolution 420: 8.0 to 12.5 % (check value 7).</summary>
    [Theory]
    [InlineData("12.5", true)]
    [InlineData("12.6", false)]
    [InlineData("8.0", true)]
    [InlineData("7.9", false)]
    public void Moisture_is_held_against_the_export_target(string moisture, bool passes)
    {
        var grade = Grade().Measure(Percent.Parse(moisture, null), null, null, null);

        Assert.Equal(passes, PhysicalLimits.ExportArabica.Check(grade).Single(check => check.Name == "Moisture").Passed);
    }

    /// <summary>ICO Resolution 420: 86 in 300 g for arabica (check value 7), 150 for robusta (handbook quality.md section 2.4).</summary>
    [Theory]
    [InlineData("Caturra, Bourbon", 86, true)]
    [InlineData("Caturra, Bourbon", 87, false)]
    [InlineData("Robusta", 150, true)]
    [InlineData("Robusta", 151, false)]
    [InlineData("Conilon (canephora)", 87, true)]
    public void Defects_in_300_grams_are_held_against_the_export_target_of_the_species(string varieties, int defects, bool passes)
    {
        var grade = Grade().StateExportDefects(FullDefects.Of(defects));

        var check = GradingStandards.Published.Limits(varieties).Last().Check(grade).Single(check => check.Name == "Defects in 300 g");

        Assert.Equal(passes, check.Passed);
    }

    [Fact]
    public void Defects_that_were_not_counted_by_the_export_method_neither_pass_nor_fail()
    {
        var check = PhysicalLimits.ExportArabica.Check(Grade()).Single(check => check.Name == "Defects in 300 g");

        Assert.Null(check.Passed);
        Assert.Null(check.Found);
    }

    /// <summary>SCA: below 0.70, none of category 1, at most 5 of category 2, no quaker (handbook quality.md section 2.1).</summary>
    [Theory]
    [InlineData("0.6999", 0, 5, 0, "")]
    [InlineData("0.70", 0, 5, 0, "Water activity")]
    [InlineData("0.55", 1, 5, 0, "Category 1 full defects")]
    [InlineData("0.55", 0, 6, 0, "Category 2 full defects")]
    [InlineData("0.55", 0, 5, 1, "Quakers in 100 g roasted")]
    public void Specialty_limits_name_what_fails(string activity, int first, int second, int quakers, string fails)
    {
        var grade = Grade()
            .Measure(Percent.Of(11m), "ISO 6673", WaterActivity.Parse(activity, null), null)
            .StateDefects(FullDefects.Of(first), FullDefects.Of(second))
            .Roast(quakers, null);

        var failed = PhysicalLimits.WashedSpecialty.Check(grade).Where(check => check.Passed == false).Select(check => check.Name);

        Assert.Equal(fails, string.Join(", ", failed));
        Assert.Equal(GreenGrade.UsualRoast, grade.RoastedWeight);
    }

    /// <summary>
    /// A full defect of one table is none of another: 4 sour beans are 2 full defects in Brazil (2 beans each) and 4 of category 1 in the
    /// washed arabica poster (1 bean each; handbook quality.md section 2.1).
    /// </summary>
    [Theory]
    [InlineData("arabica-300g-older", null)]
    [InlineData("fine-robusta", null)]
    [InlineData("brazil-2003", null)]
    [InlineData("washed-arabica-2018", true)]
    public void Full_defects_counted_by_another_table_are_not_comparable_and_never_a_pass(string scheme, bool? passed)
    {
        var grade = Grade().CountDefects(GradingStandards.Published.Find(scheme)!, new Dictionary<string, int>(), DefectFractions.Dropped);

        var counted = PhysicalLimits.WashedSpecialty.Check(grade).Where(check => check.Name.StartsWith("Category", StringComparison.Ordinal)).ToList();

        Assert.Equal(2, counted.Count);
        Assert.All(counted, check => Assert.Equal(passed, check.Passed));
        Assert.All(counted, check => Assert.Equal(passed is null, check.Limit.Contains("not comparable, grade again by Washed arabica, two categories (2018)", StringComparison.Ordinal)));
        Assert.All(counted, check => Assert.True(check.Limit.Length <= 100 && check.Found!.Length <= 100));
    }

    /// <summary>ICO Resolution 420 counts robusta by the method of Vietnam or Indonesia, not by that of Brazil (handbook quality.md section 2.4).</summary>
    [Fact]
    public void The_export_target_of_robusta_is_not_held_against_a_count_by_the_table_of_Brazil()
    {
        var grade = Grade().CountDefects(GradingStandards.Published.Find("brazil-2003")!, new Dictionary<string, int> { ["black"] = 3 }, DefectFractions.Dropped);

        Assert.Null(PhysicalLimits.ExportRobusta.Check(grade).Single(check => check.Name == "Defects in 300 g").Passed);
        Assert.True(PhysicalLimits.ExportArabica.Check(grade).Single(check => check.Name == "Defects in 300 g").Passed);
    }

    [Fact]
    public void Screens_that_do_not_add_up_are_refused()
    {
        var shares = new Dictionary<int, Percent> { [16] = Percent.Of(60m), [15] = Percent.Of(30m) };

        var refused = Assert.Throws<RuleBrokenException>(() => Grade().Sieve(shares));

        Assert.Contains("90", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>n × 25.4 ÷ 64, check value 6.</summary>
    [Theory]
    [InlineData(14, "5.556")]
    [InlineData(16, "6.350")]
    [InlineData(18, "7.144")]
    public void A_screens_hole_in_millimetres(int screen, string millimetres)
    {
        Assert.Equal(decimal.Parse(millimetres, null), Math.Round(ScreenShare.HoleMillimetres(screen), 3));
    }

    private static GreenGrade Grade() =>
        new(Id<Sample>.New(), Id<Lot>.New(), new DateOnly(2026, 11, 20), null, GreenGrade.UsualSample);

    private static Dictionary<string, int> Beans(string counted) => counted.Split(", ")
        .Select(count => count.Split(' ')).ToDictionary(parts => parts[0], parts => int.Parse(parts[1], null));
}

using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Grading;

/// <summary>Defect schemes and limits change by a revision; what was made with an earlier one keeps it.</summary>
public sealed class GradingStandardsTests
{
    private static readonly DefectScheme Washed = DefectScheme.WashedArabica;

    /// <summary>Worked by hand: 30 broken beans at 5 a full defect are 6, at 6 they are 5, which specialty still allows.</summary>
    [Fact]
    public void A_grade_counts_by_the_revision_that_it_was_made_with()
    {
        var revised = Revised("broken", 6m);
        var standards = new GradingStandards([revised, .. DefectScheme.Published], PhysicalLimits.Published);

        var before = Grade(Washed.Key, standards);
        var after = Grade(revised.Key, standards);

        Assert.Equal(("washed-arabica-2018", FullDefects.Of(6m), "below specialty"), (before.Scheme, before.Category2, before.Verdict(standards)!.Name));
        Assert.Equal(("washed-arabica-2018.2", FullDefects.Of(5m), "specialty"), (after.Scheme, after.Category2, after.Verdict(standards)!.Name));
        Assert.Equal(FullDefects.Of(5m), after.Tally(standards)!.Category2Kept);
    }

    [Fact]
    public void The_newest_revision_is_what_is_counted_by_from_now_on()
    {
        var standards = new GradingStandards([.. DefectScheme.Published, Revised("broken", 6m)], PhysicalLimits.Published);

        Assert.Equal("washed-arabica-2018.2", standards.For("Caturra").Key);
        Assert.Equal("fine-robusta", standards.For("Conilon").Key);
        Assert.Equal(4, standards.Newest.Count);
        Assert.Equal(5, standards.All.Count);
    }

    [Fact]
    public void A_new_kind_gets_a_code_of_its_own_and_a_renamed_one_keeps_its_code()
    {
        var kinds = Washed.Kinds.Select(kind => kind.Code == "shell" ? kind with { Name = "Elephant ear" } : kind).Append(new DefectKind("", "Stinker bean", 1, 1m)).Append(new DefectKind("", "Full-black", 1, 1m)).ToList();

        var revised = Washed.Revise(350m, kinds, Washed.Classes);

        Assert.Equal(["shell", "stinker-bean", "full-black-2"], new[] { "Elephant ear", "Stinker bean", "Full-black" }.Select(name => revised.Kinds.Single(kind => kind.Name == name).Code));
    }

    [Theory]
    [InlineData(0, "broken", 5, "Counts refer to between 50 and 2,000 g")]
    [InlineData(350, "broken", 0, "Broken, chipped or cut: between 0.01 and 100 beans")]
    [InlineData(350, "shell", -1, "The defect 'Full black' stands there twice.")]
    public void What_cannot_be_counted_by_is_refused(int grams, string kind, int beans, string sentence)
    {
        var kinds = Washed.Kinds.Select(one => one.Code != kind ? one : beans < 0 ? one with { Name = "Full black" } : one with { BeansPerFullDefect = beans }).ToList();

        Assert.StartsWith(sentence, Assert.Throws<RuleBrokenException>(() => Washed.Revise(grams, kinds, Washed.Classes)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("shell", "The code 'shell' stands there twice.")]
    [InlineData("crema", "The table has no defect with the code 'crema'")]
    public void A_code_is_one_of_the_tables_own_and_stands_once(string code, string sentence)
    {
        var kinds = Washed.Kinds.Append(new DefectKind(code, "Another", 2, 5m)).ToList();

        Assert.StartsWith(sentence, Assert.Throws<RuleBrokenException>(() => Washed.Revise(350m, kinds, Washed.Classes)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_class_takes_what_the_others_do_not()
    {
        var broken = Assert.Throws<RuleBrokenException>(() => Washed.Revise(350m, Washed.Kinds, [new("specialty", 0m, 5m), new("other", Total: 8m)]));

        Assert.Equal("The last class, other, takes whatever the others do not: leave its limits empty.", broken.Message);
    }

    [Fact]
    public void Limits_of_the_house_are_held_against_the_next_grade_and_name_their_revision()
    {
        var limits = PhysicalLimits.WashedSpecialty;
        var revised = limits.Revise(limits with { HighestMoisture = 11.5m });
        var standards = new GradingStandards(DefectScheme.Published, [limits, revised, .. PhysicalLimits.Published.Skip(1)]);

        var grade = new GradeDraft { MoisturePercent = 11.8m }.Onto(Empty(), null, standards);

        var moisture = grade.Limits.First(limit => limit.Name == "Moisture");
        Assert.Equal(("Washed specialty (SCA 2018), revision 2", "10 to 11.5 %", false), (moisture.Limits, moisture.Limit, moisture.Passed));
    }

    [Fact]
    public void In_whatever_order_a_database_reads_them_tables_and_limits_stand_as_published()
    {
        var standards = new GradingStandards(DefectScheme.Published.Reverse(), PhysicalLimits.Published.Reverse());

        Assert.Equal(DefectScheme.Published.Select(scheme => scheme.Code), standards.Newest.Select(scheme => scheme.Code));
        Assert.Equal([PhysicalLimits.WashedSpecialty, PhysicalLimits.ExportArabica], standards.Limits(null));
        Assert.Equal(GradingStandards.Published.For("Robusta").Code, standards.For("Robusta").Code);
    }

    /// <summary>A revision of the same table is still that table; another table is not.</summary>
    [Fact]
    public void Full_defects_counted_by_a_revision_are_held_against_the_limits_of_their_table()
    {
        var standards = new GradingStandards([.. DefectScheme.Published, Revised("broken", 6m)], PhysicalLimits.Published);

        var grade = Grade("washed-arabica-2018.2", standards);

        Assert.True(grade.Limits.Single(limit => limit.Name == "Category 2 full defects").Passed);
    }

    private static DefectScheme Revised(string code, decimal beans) =>
        Washed.Revise(350m, [.. Washed.Kinds.Select(kind => kind.Code == code ? kind with { BeansPerFullDefect = beans } : kind)], Washed.Classes);

    private static GreenGrade Grade(string scheme, GradingStandards standards) =>
        new GradeDraft { Scheme = scheme, Beans = new Dictionary<string, int> { ["broken"] = 30 }, Quakers = 0, RoastedGrams = 100m }.Onto(Empty(), null, standards);

    private static GreenGrade Empty() => new(default, default, new DateOnly(2026, 11, 20), null, Weight.FromGrams(350m));
}

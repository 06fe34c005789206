using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Grading;

public sealed class DefectSchemeTests
{
    public static TheoryData<string> Codes => [.. DefectScheme.Published.Select(scheme => scheme.Code)];

    [Theory, MemberData(nameof(Codes))]
    public void A_scheme_names_its_edition_and_source_and_every_count_falls_into_a_class(string code)
    {
        var scheme = GradingStandards.Published.Find(code)!;

        Assert.False(string.IsNullOrWhiteSpace(scheme.Edition) || string.IsNullOrWhiteSpace(scheme.Source));
        Assert.Equal(scheme.Kinds.Count, scheme.Kinds.Select(kind => kind.Code).Distinct().Count());
        Assert.All(scheme.Kinds, kind => Assert.True(kind.BeansPerFullDefect > 0m && kind.Category is 1 or 2));
        Assert.Equal(new QualityClass(scheme.Classes[^1].Name), scheme.Classes[^1]);
    }

    /// <summary>Handbook quality.md section 2.1 (poster 2018): none of category 1, at most 5 of category 2, no quakers.</summary>
    [Theory]
    [InlineData("full-black 1", 0, "below specialty", "1 of category 1, at most 0")]
    [InlineData("partial-black 5, broken 14, shell 4, slight-insect 19", 0, "specialty", null)]
    [InlineData("broken 30", 0, "below specialty", "6 of category 2, at most 5")]
    [InlineData("broken 5", 1, "below specialty", "1 quakers in 100 g, at most 0")]
    [InlineData("broken 5", null, "specialty, quakers not counted yet", null)]
    public void Washed_arabica_is_specialty_or_below_and_says_why(string beans, int? quakers, string name, string? reason)
    {
        var verdict = Graded("washed-arabica-2018", beans, quakers).Verdict(GradingStandards.Published)!;

        Assert.Equal(name, verdict.ToString());
        Assert.Equal(reason, verdict.Reasons.SingleOrDefault());
    }

    /// <summary>Handbook quality.md section 2.1, older classes in 300 g: 5, 8, 23 and 86 full defects; 0, 3 and 5 quakers.</summary>
    [Theory]
    [InlineData(5, 0, "specialty")]
    [InlineData(6, 0, "premium")]
    [InlineData(8, 3, "premium")]
    [InlineData(8, 4, "exchange")]
    [InlineData(9, 0, "exchange")]
    [InlineData(23, 5, "exchange")]
    [InlineData(24, 0, "below standard")]
    [InlineData(86, 0, "below standard")]
    [InlineData(87, 0, "off grade")]
    public void The_older_classes_go_by_all_full_defects_in_300_g(int full, int quakers, string name) =>
        Assert.Equal(name, Graded("arabica-300g-older", $"full-black {full}", quakers, grams: 300m).Verdict(GradingStandards.Published)!.Name);

    /// <summary>finerobusta.coffee, classification: fine has none and at most 5, premium at most 8 of both together.</summary>
    [Theory]
    [InlineData("chalky-white 29", "fine")]
    [InlineData("chalky-white 30", "premium")]
    [InlineData("full-black 2, partial-sour 18", "premium")]
    [InlineData("full-black 3, partial-sour 18", "off grade")]
    public void Robusta_is_fine_premium_or_off_grade(string beans, string name) =>
        Assert.Equal(name, Graded("fine-robusta", beans, null).Verdict(GradingStandards.Published)!.Name);

    /// <summary>
    /// Instrução Normativa 8 of 2003, equivalents as reproduced by cccmg.com.br: a large stone is 5, 2 sour are 1, 3 shells
    /// are 1, 5 broken are 1. Worked by hand: 5 + 2 + 2 + 3 = 12, which is still type 3 (from memory).
    /// </summary>
    [Fact]
    public void The_method_of_Brazil_is_what_the_export_target_is_held_against()
    {
        var grade = Graded("brazil-2003", "large-stone 1, sour 4, shell 6, broken 15", null, grams: 300m);

        Assert.Equal((FullDefects.Of(12m), "type 3"), (grade.ExportDefects!.Value, grade.Verdict(GradingStandards.Published)!.Name));
        Assert.Null(grade.Category1);
        Assert.True(grade.Limits.Single(limit => limit.Name == "Defects in 300 g").Passed);
    }

    [Fact]
    public void Robusta_is_counted_by_a_table_of_its_own()
    {
        Assert.Equal("fine-robusta", GradingStandards.Published.For("Conilon").Code);
        Assert.Equal("washed-arabica-2018", GradingStandards.Published.For("Caturra").Code);
    }

    [Fact]
    public void A_table_of_the_house_is_beside_the_published_ones_and_never_the_usual_one()
    {
        var published = GradingStandards.Published;
        var fine = published.Find("fine-robusta")!;
        var own = DefectScheme.Add(new SchemeHead("Our robusta", null, null, true), fine, 300m, [.. fine.Kinds, new DefectKind("", "Stinker. 2", 1, 1m)], fine.Classes, published.All);
        var standards = new GradingStandards([own, .. published.All], PhysicalLimits.Published);

        Assert.Equal(("our-robusta", 1, true), (own.Key, own.Revision, own.IsOfHouse));
        Assert.Equal(fine.Kinds.Select(kind => kind.Code), own.Kinds.Take(fine.Kinds.Count).Select(kind => kind.Code));
        Assert.DoesNotContain('.', own.Kinds[^1].Code);
        Assert.Equal("fine-robusta", standards.For("Conilon").Code);
        Assert.Equal(own.Key, standards.Find("our-robusta")!.Key);
        Assert.Contains("already", Refusal("FINE ROBUSTA, TWO CATEGORIES"), StringComparison.Ordinal);
        Assert.Contains("name of the table", Refusal(" "), StringComparison.Ordinal);

        string Refusal(string name) => Assert.Throws<RuleBrokenException>(() => DefectScheme.Add(new SchemeHead(name, null, null, null), fine, 300m, fine.Kinds, fine.Classes, published.All)).Message;
    }

    [Fact]
    public void What_was_counted_by_a_table_of_the_house_is_not_held_against_limits_by_another()
    {
        var washed = DefectScheme.WashedArabica;
        var own = DefectScheme.Add(new SchemeHead("Our count", null, null, null), washed, 350m, washed.Kinds, washed.Classes, DefectScheme.Published);
        var grade = new GreenGrade(default, default, new DateOnly(2026, 11, 20), null, GreenGrade.UsualSample).CountDefects(own, new Dictionary<string, int>(), DefectFractions.Dropped);

        var counted = PhysicalLimits.WashedSpecialty.Check(grade).Where(check => check.Name.StartsWith("Category", StringComparison.Ordinal)).ToList();

        Assert.Equal(2, counted.Count);
        Assert.All(counted, check => Assert.Null(check.Passed));
        Assert.All(counted, check => Assert.Contains("by a table of this house", check.Found, StringComparison.Ordinal));
    }

    [Fact]
    public void Limits_that_name_a_table_of_the_house_are_held_against_a_count_by_it_alone()
    {
        var washed = DefectScheme.WashedArabica;
        var own = DefectScheme.Add(new SchemeHead("Our count", null, null, null), washed, 350m, washed.Kinds, washed.Classes, DefectScheme.Published);
        var standards = new GradingStandards([own, .. DefectScheme.Published], PhysicalLimits.Published);
        var named = PhysicalLimits.WashedSpecialty with { CountedBy = own.Code, OwnTable = standards.OwnNameOf(own.Code) };

        var limits = PhysicalLimits.WashedSpecialty.Revise(named);

        // Handbook quality.md section 2.1: 30 broken are 6 full defects, at most 5 are allowed.
        Assert.Equal(("Our count", false), (limits.Table, Category2(own).Passed!.Value));
        Assert.Equal((null, "at most 5; not comparable, grade again by Our count"), (Category2(washed).Passed, Category2(washed).Limit));
        Assert.Null(standards.OwnNameOf(washed.Code));
        // A sentence that is stored with a grade has 100 places.
        Assert.All((limits with { Category2 = 1000m, OwnTable = new string('x', 80) }).Check(Counted(washed)), check => Assert.True(check.Limit.Length <= 100, check.Limit));
        Assert.Throws<RuleBrokenException>(() => limits.Revise(limits with { CountedBy = "nosuch", OwnTable = standards.OwnNameOf("nosuch") }));

        LimitCheck Category2(DefectScheme scheme) => limits.Check(Counted(scheme)).Single(check => check.Name == "Category 2 full defects");
        static GreenGrade Counted(DefectScheme scheme) =>
            new GreenGrade(default, default, new DateOnly(2026, 11, 20), null, GreenGrade.UsualSample).CountDefects(scheme, new Dictionary<string, int> { ["broken"] = 30 }, DefectFractions.Dropped);
    }

    internal static GreenGrade Graded(string scheme, string beans, int? quakers, decimal grams = 350m) => new GradeDraft
    {
        SampleGrams = grams,
        Scheme = scheme,
        Beans = beans.Split(", ").Select(pair => pair.Split(' ')).ToDictionary(pair => pair[0], pair => int.Parse(pair[1], System.Globalization.CultureInfo.InvariantCulture)),
        Quakers = quakers,
        RoastedGrams = 100m,
    }.Onto(new GreenGrade(default, default, new DateOnly(2026, 11, 20), null, Weight.FromGrams(grams)), null, GradingStandards.Published);
}

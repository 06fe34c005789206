using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class ArrivalLimitsTests
{
    private static readonly LimitTerms Agreed = new(Score.Of(0.5m), null, Percent.Of(11.5m), null, 0m, 5m, 16, Percent.Of(95m));

    [Fact]
    public void What_the_contract_names_counts_and_the_house_stands_in_for_the_rest()
    {
        var limits = ArrivalLimits.Of(Agreed, new ArrivalHabits());

        var verdict = ArrivalVerdict.Of(null, limits.Limits, null, Grade(), limits.Agreed);

        // House: 8 % from ICO Resolution 420 and below 0.70 (handbook, quality.md 2.4 and 2.1); the rest as agreed above.
        Assert.Equal(
            [
                ("Moisture", "8 to 11.5 %", false, true),
                ("Water activity", "below 0.70", true, false),
                ("Category 1 full defects", "none", true, true),
                ("Category 2 full defects", "at most 5", true, true),
                ("Screen 16 and above", "at least 95 %", true, true),
            ],
            verdict.Limits.Select(limit => (limit.Name, limit.Limit, limit.Passed!.Value, limit.IsAgreed)));
    }

    [Theory]
    [InlineData("washed-arabica-2018", true, "at most 5 by Washed arabica, two categories (2018)")]
    [InlineData("fine-robusta", null, "at most 5 by Fine robusta, two categories; not comparable, grade again by Fine robusta, two categories")]
    public void Agreed_full_defects_are_held_only_against_a_count_by_the_table_that_the_contract_names(string table, bool? passed, string limit)
    {
        var limits = ArrivalLimits.Of(Agreed with { CountedBy = table }, new ArrivalHabits());
        var grade = new GreenGrade(default, default, ShortArrival.Received, null, GreenGrade.UsualSample).CountDefects(DefectScheme.WashedArabica, new Dictionary<string, int> { ["broken"] = 10 }, DefectFractions.Dropped);

        var found = ArrivalVerdict.Of(null, limits.Limits, null, grade, limits.Agreed).Limits.Single(one => one.Name == "Category 2 full defects");

        Assert.Equal((passed, limit), (found.Passed, found.Limit));
        Assert.Contains($"at most 5 full defects of category 2 by {DefectScheme.PublishedOf(table)!.Name}", (Agreed with { CountedBy = table }).Words());
    }

    [Fact]
    public void A_contract_may_name_a_table_of_the_house_and_keeps_what_it_was_called()
    {
        var washed = DefectScheme.WashedArabica;
        var own = DefectScheme.Add(new SchemeHead("Our count", null, null, null), washed, 350m, washed.Kinds, washed.Classes, DefectScheme.Published);
        var standards = new GradingStandards([own, .. DefectScheme.Published], PhysicalLimits.Published);

        var agreed = FrozenJson.Read<LimitTerms>(FrozenJson.Write((Agreed with { CountedBy = own.Code }).Naming(standards)));

        Assert.Contains("at most 5 full defects of category 2 by Our count", agreed.Words());
        Assert.Equal("Our count", ArrivalLimits.Of(agreed, new ArrivalHabits()).Limits.Table);
        Assert.Null((Agreed with { CountedBy = washed.Code }).Naming(standards).OwnTable);
    }

    [Fact]
    public void Without_agreed_limits_the_houses_own_are_looked_at_and_none_counts_as_agreed()
    {
        var habits = new ArrivalHabits();
        habits.Limit(Percent.Of(9m), Percent.Of(12m), null, null);

        var limits = ArrivalLimits.Of(null, habits);

        var moisture = Assert.Single(ArrivalVerdict.Of(null, limits.Limits, null, Grade(), limits.Agreed).Limits);
        Assert.Equal(("9 to 12 %", true, false), (moisture.Limit, moisture.Passed!.Value, moisture.IsAgreed));
    }

    [Fact]
    public void A_claim_says_that_a_limit_is_not_named_in_the_contract()
    {
        var limits = ArrivalLimits.Of(null, new ArrivalHabits());
        var wet = new GreenGrade(default, default, ShortArrival.Received, null, GreenGrade.UsualSample).Measure(Percent.Of(12.6m), null, null, null);

        var basis = new ShortArrival().Basis() with { Quality = ArrivalVerdict.Of(null, limits.Limits, null, wet, limits.Agreed) };

        // ICO Resolution 420: not above 12.5 % (handbook, quality.md 2.4).
        Assert.Equal("Moisture: 12.6 %, not named in the contract, usual 8 to 12.5 %.", basis.Findings[1].Sentence);
    }

    [Fact]
    public void Agreed_limits_say_themselves_in_words_and_come_back_from_their_text() =>
        Assert.Equal(
            [
                "the arrival cups at most 0.50 points below the approved sample",
                "moisture at most 11.5 %",
                "at most 0 full defects of category 1",
                "at most 5 full defects of category 2",
                "at least 95 % on screen 16 and above",
            ],
            FrozenJson.Read<LimitTerms>(FrozenJson.Write(Agreed)).Words());

    [Fact]
    public void Limits_that_cannot_be_are_refused_with_their_field_and_empty_ones_are_none()
    {
        Assert.Equal("HighestMoisture", Field(new LimitTerms(LowestMoisture: Percent.Of(12m), HighestMoisture: Percent.Of(11m))));
        Assert.Equal("Screen", Field(new LimitTerms(LeastOnScreen: Percent.Of(95m))));
        Assert.Equal("CupTolerance", Field(new LimitTerms(CupTolerance: Score.Of(11m))));
        Assert.Equal("CountedBy", Field(new LimitTerms(Category1: 0m, CountedBy: "nosuch")));
        Assert.Equal("CountedBy", Field(new LimitTerms(CountedBy: "fine-robusta")));
        Assert.Null((Terms(new LimitTerms())).Checked().Quality.Limits);

        static string? Field(LimitTerms limits) => Assert.Throws<RuleBrokenException>(() => Terms(limits).Checked()).Field;
        static ContractTerms Terms(LimitTerms limits)
        {
            var terms = ContractDemo.Terms();
            return terms with { Quality = terms.Quality with { Limits = limits } };
        }
    }

    private static GreenGrade Grade() => new GreenGrade(default, default, ShortArrival.Received, null, GreenGrade.UsualSample)
        .Measure(Percent.Of(11.8m), null, WaterActivity.Of(0.58m), null)
        .StateDefects(FullDefects.Of(0m), FullDefects.Of(4m))
        .Sieve(new Dictionary<int, Percent> { [16] = Percent.Of(96m), [ScreenShare.Pan] = Percent.Of(4m) }, 16);
}

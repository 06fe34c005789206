using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public class SheetFieldsTests
{
    private static readonly FormRules HundredPoint = CuppingForm.HundredPoint().Rules;
    private static readonly DescriptiveRules Descriptive = DescriptiveForm.Sca103().Rules;

    [Fact]
    public void Fields_of_a_written_sheet_add_up_to_the_published_total()
    {
        // Handbook quality.md section 1.1, worked total 3: 50.75 + 4/4/5 good cups = 76.75, less one cup with a taint = 74.75.
        var values = Written("7.50", "7.25", "7.00", "7.25", "7.25", "7.25", "7.25");
        values["cups.uniformity"] = "11011";
        values["cups.clean-cup"] = "11011";
        values["bad.taint"] = "00100";

        var marks = SheetFields.Marks(values, HundredPoint, 5);

        Assert.Equal(74.75m, SheetTotal.Of(HundredPoint, marks, 5).Total);
        Assert.Equal(["11011", "11011", "11111", "00100", "00000"], marks.Cups);
    }

    [Fact]
    public void Every_missing_mark_is_named_at_once()
    {
        var refused = Assert.Throws<RuleBrokenException>(() => SheetFields.Marks(new Dictionary<string, string> { ["mark.flavor"] = "8" }, HundredPoint, 5));

        Assert.Contains("Fragrance/aroma, Aftertaste, Acidity, Body, Balance, Overall", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mark.flavor", "7.8")]
    [InlineData("mark.flavor", "5.75")]
    [InlineData("mark.flavor", "good")]
    [InlineData("mark.flavor", "-7")]
    [InlineData("mark.mouthfeel", "7")]
    [InlineData("cups.sweetness", "1111")]
    [InlineData("cups.sweetness", "11121")]
    [InlineData("bad.defective", "00000")]
    [InlineData("strength.acidity", "16")]
    [InlineData("strength.acidity", "strong")]
    [InlineData("checks.tastes", "sour,sweet,bitter")]
    [InlineData("checks.tastes", "loud")]
    [InlineData("lot", "Loma Alta")]
    public void A_value_that_its_field_cannot_hold_is_refused(string field, string value)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => SheetFields.Check(field, value, HundredPoint, 5, Descriptive));

        Assert.NotEmpty(refused.Message);
    }

    [Theory]
    [InlineData("mark.flavor", "7.75")]
    [InlineData("mark.flavor", "")]
    [InlineData("cups.sweetness", "10110")]
    [InlineData("strength.acidity", "15")]
    [InlineData("checks.tastes", "sour,sweet")]
    [InlineData("checks.smell", "berry,citrus,cocoa,vanilla,spice")]
    [InlineData("note", "Cools very well.")]
    public void A_value_that_its_field_can_hold_is_taken(string field, string value)
    {
        SheetFields.Check(field, value, HundredPoint, 5, Descriptive);
    }

    [Fact]
    public void Without_a_descriptive_form_there_are_no_such_fields()
    {
        Assert.Throws<RuleBrokenException>(() => SheetFields.Check("strength.acidity", "9", HundredPoint, 5, null));
    }

    [Fact]
    public void A_change_clears_a_field_with_empty_text_and_counts_one_version()
    {
        var draft = new SheetDraft(Id<CuppingSession>.New(), default, "417");
        draft.Change(Guid.NewGuid(), new Dictionary<string, string> { ["mark.flavor"] = "8", ["note"] = "plum" }, DateTimeOffset.UnixEpoch);

        draft.Change(Guid.NewGuid(), new Dictionary<string, string> { ["note"] = "" }, DateTimeOffset.UnixEpoch);

        Assert.Equal((2, 1), (draft.ChangeCount, draft.Filled));
        Assert.Equal(["mark.flavor"], draft.Values.Keys);
    }

    internal static Dictionary<string, string> Written(params string[] marks) =>
        HundredPoint.Scales.Zip(marks).ToDictionary(pair => "mark." + pair.First.Key, pair => pair.Second);
}

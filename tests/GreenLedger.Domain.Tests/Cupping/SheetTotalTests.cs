using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Cupping;

public class SheetTotalTests
{
    private static readonly FormRules HundredPoint = CuppingForm.HundredPoint().Rules;
    private static readonly FormRules Affective = CuppingForm.Affective().Rules;

    /// <summary>Handbook quality.md section 1.1, worked totals 1-5 (check value 1), in the printed order.</summary>
    [Theory]
    [InlineData("7.75 7.75 7.50 7.75 7.50 7.50 7.75", "5 5 5", 0, 0, "83.50")]
    [InlineData("8.25 8.50 8.25 8.50 8.00 8.25 8.50", "5 5 5", 0, 0, "88.25")]
    [InlineData("7.50 7.25 7.00 7.25 7.25 7.25 7.25", "4 4 5", 1, 0, "74.75")]
    [InlineData("7.25 6.75 6.50 7.00 7.00 6.75 6.50", "4 3 4", 1, 1, "63.75")]
    [InlineData("6.00 6.00 6.00 6.00 6.00 6.00 6.00", "5 5 5", 0, 0, "72.00")]
    public void A_100_point_sheet_adds_up(string marks, string cups, int taints, int faults, string expected)
    {
        var total = SheetTotal.Of(HundredPoint, Sheet(marks, cups, $"{taints} {faults}"), 5);

        Assert.Equal(decimal.Parse(expected, null), total.Total);
        Assert.Equal(taints * 2m + faults * 4m, total.Deductions.Sum(line => line.Points));
        Assert.Equal(total.Total, total.BeforeDeductions - total.Deductions.Sum(line => line.Points));
    }

    /// <summary>Handbook quality.md section 1.2 (check value 2); 58, 79 and 100 are published.</summary>
    [Theory]
    [InlineData("1 1 1 1 1 1 1 1", 0, 0, "58", "58")]
    [InlineData("5 5 5 5 5 5 5 5", 0, 0, "79", "79")]
    [InlineData("6 6 6 6 6 6 6 6", 0, 0, "84.25", "84.25")]
    [InlineData("7 7 7 7 7 7 7 7", 0, 0, "89.5", "89.5")]
    [InlineData("9 9 9 9 9 9 9 9", 0, 0, "100", "100")]
    [InlineData("7 7 7 6 7 6 6 7", 0, 0, "87.53125", "87.50")]
    [InlineData("7 7 8 7 8 7 7 8", 0, 0, "91.46875", "91.50")]
    [InlineData("6 6 7 6 6 5 6 6", 1, 0, "82.25", "82.25")]
    [InlineData("6 5 4 4 5 5 5 4", 2, 1, "69.6875", "69.75")]
    [InlineData("8 8 8 7 7 7 7 8", 0, 0, "92.125", "92.25")]
    public void An_affective_sheet_follows_its_formula_and_rounds_half_up(string marks, int uneven, int defective, string raw, string expected)
    {
        var total = SheetTotal.Of(Affective, Sheet(marks, "", $"{uneven} {defective}"), 5);

        Assert.Equal(decimal.Parse(raw, null), total.Unrounded);
        Assert.Equal(decimal.Parse(expected, null), total.Total);
    }

    /// <summary>Common practice, no source: 10 × good ÷ cups (handbook quality.md section 1.1, check value 3).</summary>
    [Theory]
    [InlineData(3, 2, "6.67")]
    [InlineData(4, 3, "7.50")]
    [InlineData(3, 3, "10.00")]
    public void With_fewer_cups_each_cup_weighs_more(int cups, int uniform, string expected)
    {
        var total = SheetTotal.Of(HundredPoint, Sheet("7.5 7.5 7.5 7.5 7.5 7.5 7.5", $"{uniform} {cups} {cups}", "0 0"), cups);

        var uniformity = total.Attributes.Single(line => line.Key == "uniformity");
        Assert.Equal(decimal.Parse(expected, null), Math.Round(uniformity.Points, 2, MidpointRounding.AwayFromZero));
    }

    [Fact]
    public void With_three_cups_a_fault_still_costs_four_points_unless_the_form_says_otherwise()
    {
        var sheet = Sheet("7.5 7.5 7.5 7.5 7.5 7.5 7.5", "3 2 3", "0 1");

        var left = SheetTotal.Of(HundredPoint, sheet, 3);
        var scaled = SheetTotal.Of(HundredPoint with { DeductionsPerFiveCups = true }, sheet, 3);

        Assert.Equal(4m, left.Deductions.Sum(line => line.Points));
        // Handbook quality.md section 1.1: one of 3 cups is then 6.67.
        Assert.Equal(6.67m, Math.Round(scaled.Deductions.Sum(line => line.Points), 2, MidpointRounding.AwayFromZero));
    }

    [Theory]
    [InlineData("7.80 7.5 7.5 7.5 7.5 7.5 7.5", "fragrance-aroma", "7.75 and 8.00")]
    [InlineData("7.5 5.75 7.5 7.5 7.5 7.5 7.5", "flavor", "outside 6.00 to 10.00")]
    [InlineData("7.5 7.5 7.5 7.5 7.5 7.5 10.25", "overall", "outside 6.00 to 10.00")]
    public void A_mark_off_the_form_is_refused_beside_its_attribute(string marks, string field, string says)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => SheetTotal.Of(HundredPoint, Sheet(marks, "5 5 5", "0 0"), 5));

        Assert.Equal(field, refused.Field);
        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ten_is_the_end_of_the_line_and_is_accepted()
    {
        var total = SheetTotal.Of(HundredPoint, Sheet("10 10 10 10 10 10 10", "5 5 5", "0 0"), 5);

        Assert.Equal(100m, total.Total);
    }

    [Fact]
    public void More_good_cups_than_were_poured_are_refused()
    {
        var refused = Assert.Throws<RuleBrokenException>(() => SheetTotal.Of(HundredPoint, Sheet("7 7 7 7 7 7 7", "5 4 4", "0 0"), 4));

        Assert.Equal("uniformity", refused.Field);
    }

    [Fact]
    public void A_cup_count_that_the_form_does_not_know_is_refused()
    {
        Assert.Throws<RuleBrokenException>(() => SheetTotal.Of(HundredPoint, Sheet("7 7 7 7 7 7 7", "2 2 2", "0 0"), 2));
        Assert.Throws<RuleBrokenException>(() => SheetTotal.Of(Affective, Sheet("7 7 7 7 7 7 7 7", "", "0 0"), 3));
    }

    [Fact]
    public void Averages_that_are_no_quarter_points_keep_their_decimals()
    {
        // Worked by hand: 7 × 8.1667 + 10 + 9.33 + 10 − 0.67 = 85.8269.
        decimal[] points = [8.1667m, 8.1667m, 8.1667m, 8.1667m, 8.1667m, 8.1667m, 10m, 9.33m, 10m, 8.1667m];

        var total = SheetTotal.OfAverages(HundredPoint, points, [0.67m, 0m]);

        Assert.Equal(85.8269m, total.Total);
    }

    [Fact]
    public void An_average_of_affective_sheets_is_not_rounded_but_one_sheet_is()
    {
        // Worked by hand: sum 60.5 × 0.65625 + 52.75 = 92.453125; sum 60 is the tie 92.125.
        var average = SheetTotal.OfAverages(Affective, [8.5m, 8m, 8m, 7m, 7m, 7m, 7m, 8m], [0m, 0m]);
        var sheet = SheetTotal.OfAverages(Affective, [8m, 8m, 8m, 7m, 7m, 7m, 7m, 8m], [0m, 0m]);

        Assert.Equal(92.453125m, average.Total);
        Assert.Equal(92.25m, sheet.Total);
    }

    /// <summary>SCA bands, on the unrounded value (check value 4); 79.9167 shows as 79.92 and is not specialty.</summary>
    [Theory]
    [InlineData("79.99", null)]
    [InlineData("79.9167", null)]
    [InlineData("80.00", "very good")]
    [InlineData("84.99", "very good")]
    [InlineData("85.00", "excellent")]
    [InlineData("90.00", "outstanding")]
    public void A_total_has_its_band(string total, string? band)
    {
        Assert.Equal(band, HundredPoint.Band(decimal.Parse(total, null))?.Name);
    }

    [Fact]
    public void A_fault_in_a_cup_ticked_clean_is_doubted_not_refused()
    {
        var doubts = SheetTotal.Doubts(HundredPoint, Sheet("7 7 7 7 7 7 7", "4 5 5", "0 1"), 5);

        Assert.Contains(doubts, doubt => doubt.Contains("clean", StringComparison.Ordinal));
        Assert.Empty(SheetTotal.Doubts(HundredPoint, Sheet("7 7 7 7 7 7 7", "4 4 5", "0 1"), 5));
    }

    internal static SheetMarks Sheet(string marks, string cups, string deducted) => new(
        [.. Split(marks).Select(mark => Mark.Parse(mark, null))],
        [.. Split(cups).Select(int.Parse)],
        [.. Split(deducted).Select(int.Parse)]);

    private static string[] Split(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}

using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Samples;

public sealed class LabelSheetTests
{
    public static TheoryData<string> Codes => [.. LabelSheet.Usual.Select(sheet => sheet.Code)];

    [Theory, MemberData(nameof(Codes))]
    public void No_label_leaves_its_page_or_covers_another(string code)
    {
        var sheet = LabelSheet.Find(code)!;

        var places = Enumerable.Range(0, sheet.LabelsOnPage).Select(sheet.At).ToList();

        Assert.All(places, place => Assert.True(
            place.X >= 0 && place.Y >= 0 && place.X + sheet.LabelWidth <= sheet.PageWidth && place.Y + sheet.LabelHeight <= sheet.PageHeight));
        Assert.True(sheet.Across >= sheet.LabelWidth && sheet.Down >= sheet.LabelHeight);
        Assert.Equal(places.Count, places.Distinct().Count());
    }

    /// <summary>
    /// Worked by hand: seven labels of 38.1 mm are 266.7 mm of 297, so that (297 − 266.7) / 2 = 15.15 mm stay above; two of
    /// 99.1 mm at 101.6 mm are 200.7 mm of 210, so that 4.65 mm stay at the side. A letter sheet is 8.5 × 11 in, and 2⅝ in
    /// at 2¾ in leave 3/16 in (4.7625 mm), ten of an inch half an inch (12.7 mm).
    /// </summary>
    [Theory]
    [InlineData("a4-2x7", 4.65, 15.15)]
    [InlineData("letter-3x10", 4.7625, 12.7)]
    [InlineData("a4-3x8", 0, 0.5)]
    public void Margins_follow_from_the_paper(string code, double left, double top)
    {
        var sheet = LabelSheet.Find(code)!;

        Assert.Equal(((decimal)left, (decimal)top), (sheet.Left, sheet.Top));
    }

    [Fact]
    public void Places_count_along_the_rows()
    {
        var sheet = LabelSheet.Find("a4-3x8")!;

        Assert.Equal((140m, 0.5m), sheet.At(2));
        Assert.Equal((0m, 37.5m), sheet.At(3));
    }
}

using ClosedXML.Excel;
using GreenLedger.Documents.Layout;

namespace GreenLedger.Documents.Tests.Layout;

public sealed class TableWorkbookTests
{
    private static readonly IReadOnlyList<TableColumn<Row>> Columns =
    [
        TableColumn<Row>.Text("Lot", row => row.Name),
        TableColumn<Row>.Number("Quantity, kg", row => row.Kilograms),
        TableColumn<Row>.Day("Received", row => row.On),
        TableColumn<Row>.YesNo("On offer", row => row.OnOffer),
    ];

    [Fact]
    public async Task Numbers_and_days_leave_as_numbers_and_days()
    {
        using var book = await WrittenAsync([new Row("Finca Aurora", 2660.5m, new DateOnly(2026, 11, 25), true)]);

        var sheet = book.Worksheet("Offers");

        Assert.Equal(2660.5, sheet.Cell("B2").GetDouble());
        Assert.Equal("#,##0.00", sheet.Cell("B2").Style.NumberFormat.Format);
        Assert.Equal(new DateTime(2026, 11, 25), sheet.Cell("C2").GetDateTime());
        Assert.Equal("yes", sheet.Cell("D2").GetString());
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+49 30 1")]
    [InlineData("-SUM(A1)")]
    [InlineData("@now")]
    public async Task Text_that_looks_like_a_formula_stays_text(string text)
    {
        using var book = await WrittenAsync([new Row(text, null, null, null)]);

        var cell = book.Worksheet(1).Cell("A2");

        Assert.False(cell.HasFormula);
        Assert.Equal(XLDataType.Text, cell.DataType);
        Assert.Equal(text, cell.GetString());
    }

    [Fact]
    public async Task The_header_is_frozen_and_filters_are_on()
    {
        using var book = await WrittenAsync([new Row("Finca Aurora", 1m, null, null)]);

        var sheet = book.Worksheet(1);

        Assert.Equal(1, sheet.SheetView.SplitRow);
        Assert.True(sheet.AutoFilter.IsEnabled);
        Assert.Equal(["Lot", "Quantity, kg", "Received", "On offer"], sheet.Row(1).Cells(1, 4).Select(cell => cell.GetString()));
    }

    [Fact]
    public async Task A_missing_figure_is_an_empty_cell_and_not_zero()
    {
        using var book = await WrittenAsync([new Row("Finca Aurora", null, null, null)]);

        var cell = book.Worksheet(1).Cell("B2");

        Assert.True(cell.IsEmpty());
    }

    [Fact]
    public async Task Characters_that_a_workbook_cannot_hold_are_left_out()
    {
        using var book = await WrittenAsync([new Row("Fin\u0001ca\u0000", null, null, null)]);

        var text = book.Worksheet(1).Cell("A2").GetString();

        Assert.Equal("Finca", text);
    }

    private static async Task<XLWorkbook> WrittenAsync(IEnumerable<Row> rows)
    {
        var stream = new MemoryStream();
        await TableWorkbook.WriteAsync(stream, "Offers", Columns, rows, TestContext.Current.CancellationToken);
        stream.Position = 0;
        return new XLWorkbook(stream);
    }

    private sealed record Row(string Name, decimal? Kilograms, DateOnly? On, bool? OnOffer);
}

using ClosedXML.Excel;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Tests.Summaries;

/// <summary>Figures are those worked by hand beside the lots; LibreOffice computes every formula anew from bare cells.</summary>
public sealed class SummaryWorkbookTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-summary-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(Cut.Origin)]
    [InlineData(Cut.Supplier)]
    public async Task Another_program_computes_the_values_that_we_stored(Cut cut)
    {
        var ours = await WrittenAsync(Bought.Report(cut: cut));

        var theirs = await Recalculated.ByLibreOfficeAsync(_folder, ours);

        var (stored, computed) = (Recalculated.Values(ours), Recalculated.Values(theirs));
        Assert.Equal(stored.Keys, computed.Keys);
        Assert.All(stored, sheet => Assert.Equal(sheet.Value, computed[sheet.Key]));
        Assert.DoesNotContain(computed.SelectMany(sheet => sheet.Value), value => value.StartsWith('#'));
    }

    /// <summary>A thousand kilograms more on Kenya's first row: 25,690 kg in all, 6,490 of Kenya, and 51,120.00 ÷ 6,490 = 7.876734 EUR/kg.</summary>
    [Fact]
    public async Task A_cell_that_is_corrected_moves_every_total_over_it()
    {
        var ours = await WrittenAsync(Bought.Report());

        var theirs = await Recalculated.ByLibreOfficeAsync(_folder, ours, book =>
        {
            var rows = book.Worksheet("Contracted rows");
            var kenya = rows.RowsUsed().First(row => row.Cell(4).GetString() == "Kenya" && row.Cell(10).GetDouble() == 4_800.0);
            kenya.Cell(10).SetValue(5_800.0);
        });

        using var book = new XLWorkbook(theirs);
        Assert.Equal(25_690.0, Of(book, "Summary", "Contracted", "kg"), 6);
        Assert.Equal(6_490.0, Of(book, "By origin", "Kenya", "Contracted, kg"), 6);
        Assert.Equal(25_690.0, Of(book, "By origin", "Total", "Contracted, kg"), 6);
        Assert.Equal(6_490.0, Of(book, "Quality", "excellent", "kg"), 6);
        Assert.Equal(170_160.0, Of(book, "By origin", "Total", "Contracted, EUR"), 6);
    }

    [Fact]
    public async Task Each_table_has_a_sheet_with_a_frozen_head_filters_and_its_own_print_set_up()
    {
        using var book = new XLWorkbook(await WrittenAsync(Bought.Report()));

        Assert.Equal(["Summary", "By origin", "Quality", "Scores", "Priced", "Unpriced", "Positions", "Contracted rows", "To come rows", "Open rows", "In stock rows", "Contracted before", "Notes"], book.Worksheets.Select(sheet => sheet.Name));
        Assert.All(book.Worksheets, sheet => Assert.Equal((1, true, XLPageOrientation.Landscape), (sheet.SheetView.SplitRow, sheet.AutoFilter.IsEnabled, sheet.PageSetup.PageOrientation)));
        Assert.Contains(book.NamedRanges, name => name.Name == "Contracted_rows_kg");
        Assert.Contains(book.NamedRanges, name => name.Name == "Contracted_rows_EUR");
    }

    [Fact]
    public async Task Numbers_are_numbers_with_formats_and_notes_say_from_when_the_rates_are()
    {
        using var book = new XLWorkbook(await WrittenAsync(Bought.Report()));

        var money = book.Worksheet("Contracted rows").Cell(2, 11);
        Assert.Equal((XLDataType.Number, "#,##0.00"), (money.DataType, money.Style.NumberFormat.Format));
        Assert.Equal(XLDataType.DateTime, book.Worksheet("Contracted rows").Cell(2, 8).DataType);
        Assert.Contains("rates of the day on which each contract was signed", string.Join(" ", book.Worksheet("Notes").Column(2).CellsUsed().Select(cell => cell.GetString())), StringComparison.Ordinal);
    }

    /// <summary>A supplier's name that a spreadsheet program would take for a formula or a wildcard finds its own rows and no others.</summary>
    [Theory]
    [InlineData("=HYPERLINK(\"http://example.org\")")]
    [InlineData("K*")]
    [InlineData(">0")]
    [InlineData("\"quoted\"")]
    public async Task Text_of_a_supplier_never_becomes_a_formula_or_a_pattern(string supplier)
    {
        var lots = new[] { Bought.Lots[0], Bought.Lot("Kenya", 300m, 3_000m, 86m, new DateOnly(2026, 2, 2), supplier), Bought.Lot("Kenya", 60m, 500m, 86m, new DateOnly(2026, 2, 3), "Kilele Coffee") };

        var theirs = await Recalculated.ByLibreOfficeAsync(_folder, await WrittenAsync(Bought.Report(lots, Cut.Supplier)));

        using var book = new XLWorkbook(theirs);
        Assert.Equal(300.0, Of(book, "By supplier", supplier, "Contracted, kg"), 6);
        Assert.DoesNotContain(book.Worksheet("By supplier").Column(1).CellsUsed(), cell => cell.HasFormula);
    }

    private static double Of(XLWorkbook book, string sheet, string row, string head)
    {
        var page = book.Worksheet(sheet);
        var number = page.Column(1).CellsUsed().First(cell => cell.GetString() == row).Address.RowNumber;
        var column = page.Row(1).CellsUsed().First(cell => cell.GetString() == head).Address.ColumnNumber;
        return Convert.ToDouble(page.Cell(number, column).CachedValue ?? page.Cell(number, column).Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    private async Task<string> WrittenAsync(SummaryReport report)
    {
        var ours = Path.Combine(_folder, "ours.xlsx");
        await using var file = File.Create(ours);
        SummaryWorkbook.Write(report, file);
        return ours;
    }
}

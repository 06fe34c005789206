using System.Globalization;
using ClosedXML.Excel;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// The main job in a real browser, from an empty ledger to a decision: import, map, preview, store, sheets, shortlist,
/// decide, workbook and PDF.
/// </summary>
public sealed class MainJobTests(Chromium chromium)
{
    private static readonly string List = Path.Combine(Delivery.Shell.Project(), "tests", "inputs", "offers-andes-exporter.xlsx");

    [Theory]
    [InlineData(Chromium.Wide)]
    [InlineData(Chromium.Phone)]
    public async Task From_an_empty_ledger_to_a_decision_with_its_papers(int width)
    {
        await using var house = new HouseFixture();
        house.Settings["Logging:LogLevel:Default"] = "Error";
        house.UseKestrel(0);
        house.StartServer();
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress, width);
        var hour = new FirstHour(window, takesPictures: width == Chromium.Wide);

        await SetUpAsync(hour);
        await ImportAsync(hour);
        await CupAsync(hour);
        await ChooseAsync(hour);
    }

    private static async Task SetUpAsync(FirstHour hour)
    {
        await hour.OpenTheLedgerAsync();
        await hour.SetUpARouteAsync();
        await hour.TypeTheRateAsync();
        await hour.WriteRulesAsync();
    }

    /// <summary>tests/inputs/expected.json: seven offers, one of them sold.</summary>
    private static async Task ImportAsync(FirstHour hour)
    {
        await hour.LoadTheListAsync(List);
        Assert.Contains("7 accepted", await hour.ReadAsync("main"), StringComparison.Ordinal);

        await hour.StoreTheListAsync();
        Assert.Contains("offers-andes-exporter.xlsx", await hour.ReadAsync("h1"), StringComparison.Ordinal);
        Assert.Contains("7 accepted", await hour.ReadAsync("main .figures"), StringComparison.Ordinal);
    }

    /// <summary>Seven attributes by a scale and thirty points of cups: 7 × 8.25 + 30 = 87.75, worked by hand.</summary>
    private static async Task CupAsync(FirstHour hour)
    {
        string[] lots = ["SC-1101", "SC-1103", "SC-1106"];
        foreach (var lot in lots)
        {
            await hour.ReceiveASampleAsync(lot);
        }

        var codes = await hour.LayOutATableAsync(lots);
        Assert.Equal("87.75", await hour.FillTheSheetAsync(codes["SC-1101"], "8.25"));
        Assert.Equal("86.00", await hour.FillTheSheetAsync(codes["SC-1103"], "8"));
        Assert.Equal("84.25", await hour.FillTheSheetAsync(codes["SC-1106"], "7.75"));
        await hour.CloseTheTableAsync();
    }

    /// <summary>
    /// expected.json says 9.0941, 8.0469 and 7.6004 USD/kg; with 0.116 of freight at 1.16 USD per EUR that is 7.94, 7.04
    /// and 6.65 EUR/kg. At 60 and 40 between 80 and 90 points, 14 and 4 EUR: 0.7074, 0.6385, 0.5489, worked by hand.
    /// </summary>
    private static async Task ChooseAsync(FirstHour hour)
    {
        Assert.Equal(["SC-1101", "SC-1103", "SC-1106"], await hour.RankAsync());
        var workbook = await hour.TakeAlongAsync("Workbook");
        var pdf = await hour.TakeAlongAsync("PDF");
        await hour.DecideOnAsync("SC-1101", "700");

        Assert.Contains("Decision on SC-1101: buy", await hour.ReadAsync("h1"), StringComparison.Ordinal);
        Assert.Contains("700 kg", await hour.ReadAsync("main"), StringComparison.Ordinal);
        ReadBack(workbook);
        ReadBackPdf(pdf);
    }

    private static void ReadBack((string Name, byte[] Bytes) workbook)
    {
        using var book = new XLWorkbook(new MemoryStream(workbook.Bytes));
        var sheet = book.Worksheet("Shortlist");
        var heads = sheet.Row(1).CellsUsed().ToDictionary(cell => cell.GetString(), cell => cell.Address.ColumnNumber);
        double Of(string head, int row) => Convert.ToDouble(sheet.Cell(row, heads[head]).CachedValue, CultureInfo.InvariantCulture);

        Assert.EndsWith(".xlsx", workbook.Name, StringComparison.Ordinal);
        Assert.Equal((7.94, 7.04, 6.65), (Math.Round(Of("Landed cost, EUR/kg", 2), 2), Math.Round(Of("Landed cost, EUR/kg", 3), 2), Math.Round(Of("Landed cost, EUR/kg", 4), 2)));
        Assert.Equal(0.7074, Of("Weighted score", 2), 4);
        Assert.True(sheet.Cell(2, heads["Weighted score"]).HasFormula);
    }

    private static void ReadBackPdf((string Name, byte[] Bytes) file)
    {
        using var pdf = PdfDocument.Open(file.Bytes);
        var text = string.Join(" ", pdf.GetPage(1).GetWords().Select(word => word.Text));

        Assert.EndsWith(".pdf", file.Name, StringComparison.Ordinal);
        Assert.InRange(pdf.NumberOfPages, 1, 2);
        Assert.Contains("87.75 points at 7.94 EUR/kg landed.", text, StringComparison.Ordinal);
    }
}

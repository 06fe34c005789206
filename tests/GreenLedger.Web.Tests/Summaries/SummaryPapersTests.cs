using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using ClosedXML.Excel;
using GreenLedger.Domain.People;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Summaries;

/// <summary>The demo's summary taken along: PDF and workbook are read back and held against what the API answers, group by group.</summary>
public sealed class SummaryPapersTests(DemoSummary demo) : IClassFixture<DemoSummary>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Origin")]
    [InlineData("Certificate")]
    public async Task The_PDF_prints_the_figures_of_the_API(string cut)
    {
        var reply = await ReplyAsync(cut);

        using var pdf = PdfDocument.Open(await TakenAsync(cut, "Pdf", "application/pdf"));

        var text = string.Join(" ", pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)).Replace('\u00A0', ' ');
        Assert.Contains("By " + cut.ToLowerInvariant(), text, StringComparison.Ordinal);
        foreach (var group in reply.GetProperty("groups").EnumerateArray())
        {
            var contracted = group.GetProperty("contracted");
            Assert.Contains($"{contracted.GetProperty("rows").GetInt32()} {Kilograms(contracted)} {Money(contracted)}", text, StringComparison.Ordinal);
        }

        var total = reply.GetProperty("contracted");
        Assert.Contains($"Total {total.GetProperty("rows").GetInt32()} {Kilograms(total)} {Money(total)}", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Origin")]
    [InlineData("Supplier")]
    public async Task The_workbook_holds_the_figures_of_the_API(string cut)
    {
        var reply = await ReplyAsync(cut);

        using var book = new XLWorkbook(new MemoryStream(await TakenAsync(cut, "Workbook", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet")));

        var sheet = book.Worksheet("By " + cut.ToLowerInvariant());
        var rows = sheet.RowsUsed().Skip(1).ToDictionary(row => row.Cell(1).GetString());
        foreach (var (name, contracted) in reply.GetProperty("groups").EnumerateArray().Select(group => (group.GetProperty("name").GetString()!, group.GetProperty("contracted"))).Append(("Total", reply.GetProperty("contracted"))))
        {
            Assert.True(rows[name].Cell(4).HasFormula || contracted.GetProperty("rows").GetInt32() == 0, name);
            Assert.Equal(contracted.GetProperty("kg").GetDouble(), Stored(rows[name].Cell(3)), 6);
            Assert.Equal(contracted.GetProperty("value").GetProperty("amount").GetDouble(), Stored(rows[name].Cell(4)), 6);
        }
    }

    [Fact]
    public async Task Cuppers_see_no_prices_in_a_document_either()
    {
        var answer = await (await demo.House.BrowserAsync(Role.Cupper)).Client.GetAsync(new Uri("/Summaries?handler=Pdf", UriKind.Relative), Stop);

        Assert.Equal(System.Net.HttpStatusCode.Forbidden, answer.StatusCode);
    }

    private async Task<JsonElement> ReplyAsync(string cut) =>
        await (await demo.House.ScriptAsync(Role.Viewer)).GetFromJsonAsync<JsonElement>($"/api/summaries/purchases?by={cut}&{DemoSummary.Year}", Stop);

    private async Task<byte[]> TakenAsync(string cut, string handler, string mediaType)
    {
        var answer = await (await demo.House.BrowserAsync(Role.Viewer)).Client.GetAsync(new Uri($"/Summaries?By={cut}&{DemoSummary.Year}&handler={handler}", UriKind.Relative), Stop);
        Assert.Equal(mediaType, answer.Content.Headers.ContentType?.MediaType);
        Assert.StartsWith("Purchase summary ", answer.Content.Headers.ContentDisposition!.FileNameStar, StringComparison.Ordinal);
        return await answer.Content.ReadAsByteArrayAsync(Stop);
    }

    private static string Kilograms(JsonElement total) => total.GetProperty("kg").GetDecimal().ToString("#,0.###", CultureInfo.InvariantCulture);

    private static string Money(JsonElement total) => total.GetProperty("value").GetProperty("amount").GetDecimal().ToString("N2", CultureInfo.InvariantCulture);

    private static double Stored(IXLCell cell) => Convert.ToDouble(cell.CachedValue ?? cell.Value, CultureInfo.InvariantCulture);
}

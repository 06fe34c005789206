using System.Net;
using ClosedXML.Excel;
using GreenLedger.Domain.People;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>The shortlist taken along from its page; figures are those of handbook quality.md section 5.</summary>
public sealed class ShortlistPapersTests(OpenShop shop) : IClassFixture<OpenShop>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_leads_to_a_workbook_of_what_it_shows()
    {
        var (answer, bytes) = await TakenAsync(Role.Buyer, "/Choosing", "Workbook");

        using var book = new XLWorkbook(new MemoryStream(bytes));
        var sheet = book.Worksheet("Shortlist");
        Assert.Equal("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal($"Shortlist House {shop.Market.Today:yyyy-MM-dd}.xlsx", answer.Content.Headers.ContentDisposition!.FileNameStar);
        Assert.Equal(["A", "E", "B", "C", "D"], Enumerable.Range(2, 5).Select(row => sheet.Cell(row, 2).GetString()));
        Assert.Equal("F", book.Worksheet("Not ranked").Cell(2, 1).GetString());
        Assert.Equal(8.80, Convert.ToDouble(sheet.Cell(2, 15).CachedValue, System.Globalization.CultureInfo.InvariantCulture), 6);
    }

    [Fact]
    public async Task The_page_leads_to_a_PDF_of_what_it_shows()
    {
        var (answer, bytes) = await TakenAsync(Role.Viewer, "/Choosing", "PDF");

        using var pdf = PdfDocument.Open(bytes);
        var text = string.Join(" ", pdf.GetPage(1).GetWords().Select(word => word.Text));
        Assert.Equal($"Shortlist House {shop.Market.Today:yyyy-MM-dd}.pdf", answer.Content.Headers.ContentDisposition!.FileNameStar);
        Assert.Contains("First is A Lot A: 86.50 points at 8.80 EUR/kg landed.", text, StringComparison.Ordinal);
        Assert.Contains("Taken out by A Viewer", text, StringComparison.Ordinal);
    }

    /// <summary>Worked by hand: by score alone E A B.</summary>
    [Fact]
    public async Task Weights_that_are_tried_and_words_searched_for_go_along()
    {
        var (_, bytes) = await TakenAsync(Role.Buyer, "/Choosing?WeightScore=100&WeightCost=0&Search=lot", "Workbook");

        using var book = new XLWorkbook(new MemoryStream(bytes));
        Assert.Equal("E", book.Worksheet("Shortlist").Cell(2, 2).GetString());
        var rules = book.Worksheet("Rules").RowsUsed().ToLookup(row => row.Cell(1).GetString());
        Assert.Contains("tried on the page", rules["Rules"].Single().Cell(5).GetString(), StringComparison.Ordinal);
        Assert.Equal("lot", rules["Offers narrowed to"].Single().Cell(2).GetString());
    }

    [Theory]
    [InlineData("Workbook")]
    [InlineData("Pdf")]
    public async Task Cuppers_see_no_prices_in_a_document_either(string handler)
    {
        var cupper = (await shop.House.BrowserAsync(Role.Cupper)).Client;

        var answer = await cupper.GetAsync(new Uri("/Choosing?handler=" + handler, UriKind.Relative), Stop);

        Assert.Contains(answer.StatusCode, new[] { HttpStatusCode.Forbidden, HttpStatusCode.Redirect });
        Assert.DoesNotContain("8.80", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/Choosing?handler=Workbook&Rules=Nobody")]
    [InlineData("/Choosing?handler=Pdf&WeightScore=-1")]
    [InlineData("/Choosing?handler=Pdf&WeightScore=much")]
    public async Task What_cannot_be_ranked_is_no_document(string address)
    {
        var buyer = (await shop.House.BrowserAsync(Role.Buyer)).Client;

        var answer = await buyer.GetAsync(new Uri(address, UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private async Task<(HttpResponseMessage Answer, byte[] Bytes)> TakenAsync(Role role, string address, string link)
    {
        var browser = await shop.House.BrowserAsync(role);
        var page = await browser.ReadAsync(address);
        var target = page.QuerySelectorAll(".take-along a").Single(one => one.TextContent == link).GetAttribute("href")!;
        var answer = await browser.Client.GetAsync(new Uri(target, UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return (answer, await answer.Content.ReadAsByteArrayAsync(Stop));
    }
}

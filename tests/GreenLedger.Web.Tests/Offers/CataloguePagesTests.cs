using System.Net;
using AngleSharp.Html.Dom;
using ClosedXML.Excel;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

public sealed class CataloguePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("origin=KE&sort=ref", "R-1,R-2")]
    [InlineData("state=Sold", "R-3")]
    [InlineData("search=alto%20verde", "R-3")]
    [InlineData("sort=-quantity", "R-1,R-3,R-2")]
    [InlineData("sort=price", "R-3,R-2,R-1")]
    [InlineData("sort=-stated", "R-1,R-2,R-3")]
    public async Task Offers_are_filtered_and_sorted_by_the_address(string query, string refs)
    {
        var browser = await LoadedAsync();

        var page = await browser.ReadAsync("/Offers?" + query);

        Assert.Equal(refs, string.Join(',', page.QuerySelectorAll("tbody th a").Select(link => link.TextContent)));
    }

    [Fact]
    public async Task Every_figure_of_an_offer_stands_under_its_head()
    {
        var browser = await LoadedAsync();

        var page = await browser.ReadAsync("/Offers?search=R-1");

        var heads = page.QuerySelectorAll("thead th").Select(head => head.TextContent.Trim()).ToList();
        var cells = page.QuerySelectorAll("tbody tr:first-child > *").Select(cell => cell.TextContent.Trim()).ToList();
        Assert.Equal(heads.Count, cells.Count);
        Assert.Equal(("R-1", "87.50"), (cells[heads.IndexOf("Ref")], cells[heads.IndexOf("Stated score")]));
        Assert.StartsWith("on offer", cells[heads.IndexOf("State")], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_filter_that_nothing_fits_says_so_and_leads_back()
    {
        var browser = await LoadedAsync();

        var page = await browser.ReadAsync("/Offers?search=nowhere");

        Assert.Contains("No offer fits", page.QuerySelector(".empty")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("/Offers", page.QuerySelector(".empty a")!.GetAttribute("href"));
    }

    // Worked by hand: 412.5 US cents/lb = 4.125 USD / 0.45359237 kg = 9.0941 USD/kg.
    [Fact]
    public async Task What_the_list_shows_leaves_as_a_workbook_with_numbers()
    {
        var browser = await LoadedAsync();

        var bytes = await browser.Client.GetByteArrayAsync(new Uri("/Offers?origin=KE&sort=ref&handler=Workbook", UriKind.Relative), Cancel);

        using var book = new XLWorkbook(new MemoryStream(bytes));
        var sheet = book.Worksheet(1);
        var heads = sheet.Row(1).CellsUsed().Select(cell => cell.GetString()).ToList();
        Assert.Equal(["R-1", "R-2"], Enumerable.Range(2, sheet.LastRowUsed()!.RowNumber() - 1).Select(row => sheet.Cell(row, 1).GetString()));
        Assert.Equal(2400, sheet.Cell(2, heads.IndexOf("kg") + 1).GetDouble());
        Assert.Equal(9.0941, sheet.Cell(2, heads.IndexOf("Price per kg") + 1).GetDouble(), 4);
    }

    [Fact]
    public async Task An_offer_shows_its_price_history_and_why_its_landed_cost_is_not_known()
    {
        var browser = await LoadedAsync();
        var offer = await OfferAsync("R-1");

        var page = await browser.ReadAsync($"/Offers/Offer/{offer.Id}");

        Assert.Equal("rows.csv", page.QuerySelector("[aria-label='Price history'] a")!.TextContent);
        Assert.Contains("The landed cost is not known", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("#attachments"));
        Assert.NotNull(page.QuerySelector("#notes"));
        Assert.NotNull(page.QuerySelector("#history"));
    }

    [Fact]
    public async Task An_offer_is_marked_as_withdrawn_and_set_back()
    {
        var browser = await LoadedAsync();
        var offer = await OfferAsync("R-2");

        var withdrawn = await browser.PostAsync($"/Offers/Offer/{offer.Id}?handler=Withdraw");
        var twice = await TestBrowser.PageAsync(await browser.PostAsync($"/Offers/Offer/{offer.Id}?handler=Withdraw"));
        var state = (await OfferAsync("R-2")).State;
        await browser.PostAsync($"/Offers/Offer/{offer.Id}?handler=Reopen");

        Assert.Equal((HttpStatusCode.Redirect, OfferState.Withdrawn), (withdrawn.StatusCode, state));
        Assert.Contains("already withdrawn", twice.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        var page = await browser.ReadAsync($"/Offers/Offer/{offer.Id}");
        Assert.Equal(3, page.QuerySelectorAll("[aria-label='Price history'] tbody tr").Length);
        Assert.Equal(OfferState.OnOffer, (await OfferAsync("R-2")).State);
    }

    [Fact]
    public async Task A_lot_that_is_corrected_wrongly_keeps_what_was_typed()
    {
        var browser = await LoadedAsync();
        var lot = (await OfferAsync("R-3")).LotId;

        var answer = await browser.SendFormAsync(
            $"/Offers/EditLot/{lot}", new Dictionary<string, string> { ["Input.AltitudeFrom"] = "9000", ["Input.Varieties"] = "Bourbon, typed" });

        var page = await TestBrowser.PageAsync(answer);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(("9000", "Bourbon, typed"), (ValueOf(page, "AltitudeFrom"), ValueOf(page, "Varieties")));
        Assert.Contains("between 0 and 4000 m", page.QuerySelector("#Input_AltitudeFrom_error")!.TextContent, StringComparison.Ordinal);
        Assert.Null(await house.FromLedgerAsync(db => db.Lots.Where(one => one.Id == lot).Select(one => one.Varieties).SingleAsync(Cancel)));
    }

    [Fact]
    public async Task A_lot_that_is_corrected_shows_it_with_its_history()
    {
        var browser = await LoadedAsync();
        var lot = (await OfferAsync("R-2")).LotId;

        var answer = await browser.SendFormAsync($"/Offers/EditLot/{lot}", new Dictionary<string, string> { ["Input.Region"] = "Kirinyaga" });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await browser.ReadAsync($"/Offers/Lot/{lot}");
        Assert.Contains("Kirinyaga", page.QuerySelector(".history")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("A Buyer", page.QuerySelector(".history")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_supplier_with_a_wrong_address_keeps_what_was_typed_and_a_right_one_is_added()
    {
        var browser = await house.BrowserAsync(Role.Buyer);
        var wrong = new Dictionary<string, string> { ["Input.Name"] = "Loma Brava", ["Input.CountryCode"] = "Colombia", ["Input.Email"] = "nobody" };

        var page = await TestBrowser.PageAsync(await browser.SendFormAsync("/Offers/NewSupplier", wrong));
        var added = await browser.SendFormAsync("/Offers/NewSupplier", new Dictionary<string, string>(wrong) { ["Input.CountryCode"] = "CO", ["Input.Email"] = "desk@loma-brava.example" });

        Assert.Equal(("Loma Brava", "Colombia", "nobody"), (ValueOf(page, "Name"), ValueOf(page, "CountryCode"), ValueOf(page, "Email")));
        Assert.Contains("two letters", page.QuerySelector("#Input_CountryCode_error")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("not an e-mail address", page.QuerySelector("#Input_Email_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        var suppliers = await browser.ReadAsync("/Offers/Suppliers?search=loma&sort=-name");
        Assert.Equal("Loma Brava", suppliers.QuerySelector("tbody th")!.TextContent);
    }

    [Fact]
    public async Task A_file_that_is_no_list_is_refused_with_a_sentence()
    {
        var browser = await house.BrowserAsync(Role.Buyer);

        var answer = await browser.SendFormAsync(
            "/Offers/Import", new Dictionary<string, string> { ["Input.Supplier"] = "Typed Traders" }, files: [("Input.File", "offer.pdf", "%PDF-1.7"u8.ToArray())]);

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("This is a PDF", page.QuerySelector("#Input_File_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Typed Traders", ValueOf(page, "Supplier"));
        Assert.Equal(0, await house.FromLedgerAsync(db => db.StoredFiles.CountAsync(file => file.Name == "offer.pdf", Cancel)));
    }

    private static string? ValueOf(IHtmlDocument page, string field) => page.QuerySelector($"[name='Input.{field}']")!.GetAttribute("value");

    private Task<Offer> OfferAsync(string reference) => house.FromLedgerAsync(db => db.Offers.AsNoTracking().SingleAsync(offer => offer.Ref == reference, Cancel));

    private async Task<TestBrowser> LoadedAsync()
    {
        using var script = await LoadedList.LoadAsync(house);
        return await house.BrowserAsync(Role.Buyer);
    }
}

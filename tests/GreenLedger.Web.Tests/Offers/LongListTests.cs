using System.Globalization;
using System.Net;
using System.Text;
using AngleSharp.Dom;
using GreenLedger.Domain.People;
using GreenLedger.Web.Offers;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>A list longer than one request should take is left to a node, and a page shows how far it is.</summary>
public sealed class LongListTests(Chromium chromium)
{
    private const int Rows = OpenedList.MostAtOnce + 200;

    [Fact]
    public async Task In_a_browser_the_page_shows_how_far_it_is_and_leads_to_the_list()
    {
        await using var house = new HouseFixture();
        house.Settings["Logging:LogLevel:Default"] = "Error";
        house.UseKestrel(0);
        house.StartServer();
        await house.OpenHouseAsync();
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);

        await window.Page.GotoAsync("/Offers/Import");
        await window.Page.Locator("[name='Input.File']").SetInputFilesAsync(new FilePayload { Name = "long.csv", MimeType = "text/csv", Buffer = List() });
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Look at the list" }).ClickAsync();
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Look at what it comes to" }).ClickAsync();
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Store the list" }).ClickAsync();
        await window.Page.WaitForURLAsync("**/Offers/List/*");

        Assert.Contains(Rows.ToString("#,0", CultureInfo.InvariantCulture) + "\naccepted", await window.Page.Locator("ul.figures").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(Rows, await house.FromLedgerAsync(db => db.Offers.CountAsync()));
        Assert.Empty(window.Complaints());
    }

    [Fact]
    public async Task Without_a_script_the_page_refreshes_itself_until_the_list_is_there()
    {
        await using var house = new HouseFixture();
        var browser = await house.BrowserAsync(Role.Buyer);
        var parked = await browser.SendFormAsync("/Offers/Import", new Dictionary<string, string> { ["Input.Supplier"] = "Long Traders" }, files: [("Input.File", "long.csv", List())]);

        var columns = parked.Headers.Location!.ToString();
        var store = columns.Split('?')[0] + "?handler=Store";
        var stored = await browser.SendFormAsync(columns, new Dictionary<string, string> { ["Input.Place"] = "Mombasa" }, "Preview", to: store);

        Assert.Equal(HttpStatusCode.Redirect, stored.StatusCode);
        var address = stored.Headers.Location!.ToString();
        Assert.StartsWith("/Offers/Loading/", address, StringComparison.Ordinal);
        var answer = await browser.Client.GetAsync(new Uri(address, UriKind.Relative));
        while (answer.StatusCode == HttpStatusCode.OK)
        {
            var page = await TestBrowser.PageAsync(answer);
            Assert.NotNull(page.QuerySelector("progress"));
            Assert.Contains("refresh", page.QuerySelector("noscript")!.InnerHtml, StringComparison.Ordinal);
            answer = await browser.Client.GetAsync(new Uri(address, UriKind.Relative));
        }

        Assert.StartsWith("/Offers/List/", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(Rows, await house.FromLedgerAsync(db => db.Offers.CountAsync(offer => offer.Place == "Mombasa")));
    }

    [Fact]
    public async Task A_long_list_is_previewed_by_a_node_and_nothing_of_it_is_stored_before_the_buyer_says_so()
    {
        await using var house = new HouseFixture();
        var browser = await house.BrowserAsync(Role.Buyer);
        var parked = await browser.SendFormAsync("/Offers/Import", new Dictionary<string, string> { ["Input.Supplier"] = "Long Traders" }, files: [("Input.File", "long.csv", List())]);
        var columns = parked.Headers.Location!.ToString();
        var before = await house.FromLedgerAsync(LedgerTables.ReadAsync);

        var asked = await browser.SendFormAsync(columns, new Dictionary<string, string> { ["Input.Place"] = "Mombasa", ["Input.ReceivedOn"] = "2026-11-20" }, "Preview");
        var preview = await EndAsync(browser, asked);

        Assert.StartsWith(columns.Split('?')[0] + "?preview=", preview, StringComparison.Ordinal);
        var page = await browser.ReadAsync(preview);
        Assert.Equal(["3,200 accepted", "0 revised", "0 unchanged", "0 set aside"], page.QuerySelectorAll("ul.figures li").Select(figure => figure.TextContent.Trim()));
        Assert.Equal(200, page.QuerySelectorAll("[aria-labelledby='outcome-offers'] tbody tr").Length);
        Assert.Equal(["L-1", "new", "washed", "9.85 USD/kg"], Texts(page.QuerySelector("[aria-labelledby='outcome-offers'] tbody tr")!).Where((_, at) => at is 0 or 1 or 3 or 6));
        Assert.Equal(("Mombasa", "2026-11-20", "Long Traders"), (ValueOf(page, "Input.Place"), ValueOf(page, "Input.ReceivedOn"), ValueOf(page, "Input.Supplier")));
        Assert.Equal(before, await house.FromLedgerAsync(LedgerTables.ReadAsync));

        var stored = await browser.SendFormAsync(preview, new Dictionary<string, string>(), "Store");
        Assert.StartsWith("/Offers/List/", await EndAsync(browser, stored), StringComparison.Ordinal);
        Assert.Equal(Rows, await house.FromLedgerAsync(db => db.Offers.CountAsync(offer => offer.Place == "Mombasa")));
    }

    [Fact]
    public async Task A_preview_of_another_file_is_not_found()
    {
        await using var house = new HouseFixture();
        var browser = await house.BrowserAsync(Role.Buyer);
        var first = await browser.SendFormAsync("/Offers/Import", new Dictionary<string, string> { ["Input.Supplier"] = "" }, files: [("Input.File", "long.csv", List())]);
        var other = await browser.SendFormAsync("/Offers/Import", new Dictionary<string, string> { ["Input.Supplier"] = "" }, files: [("Input.File", "other.csv", [.. List(), .. "L-0;Kenya;washed;80;1;60;9.85\n"u8])]);
        var preview = await EndAsync(browser, await browser.SendFormAsync(first.Headers.Location!.ToString(), new Dictionary<string, string>(), "Preview"));

        var crossed = other.Headers.Location!.ToString().Split('?')[0] + "?" + preview.Split('?')[1];

        Assert.Equal(HttpStatusCode.NotFound, (await browser.Client.GetAsync(new Uri(crossed, UriKind.Relative))).StatusCode);
    }

    /// <summary>Follows the page of progress until it leads on.</summary>
    private static async Task<string> EndAsync(TestBrowser browser, HttpResponseMessage asked)
    {
        Assert.Equal(HttpStatusCode.Redirect, asked.StatusCode);
        var address = asked.Headers.Location!;
        Assert.StartsWith("/Offers/Loading/", address.ToString(), StringComparison.Ordinal);
        var answer = await browser.Client.GetAsync(address);
        while (answer.StatusCode == HttpStatusCode.OK)
        {
            Assert.NotNull((await TestBrowser.PageAsync(answer)).QuerySelector("progress"));
            answer = await browser.Client.GetAsync(address);
        }

        return answer.Headers.Location!.ToString().Split('#')[0];
    }

    private static IEnumerable<string> Texts(IElement row) => row.Children.Select(cell => cell.TextContent.Trim());

    private static string? ValueOf(IDocument page, string field) => page.QuerySelector($"[name='{field}']")!.GetAttribute("value");

    private static byte[] List()
    {
        var text = new StringBuilder("Ref;Country;Process;Score;Bags;kg/bag;USD/kg\n");
        for (var row = 1; row <= Rows; row++)
        {
            text.Append(CultureInfo.InvariantCulture, $"L-{row};Kenya;washed;{80 + (row % 10)};{row};60;9.85\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}

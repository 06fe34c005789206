using System.Globalization;
using System.Net;
using System.Text;
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

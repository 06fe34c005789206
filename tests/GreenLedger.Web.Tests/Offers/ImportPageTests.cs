using System.Net;
using System.Text;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

public sealed class ImportPageTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string List = "Ref;Country;Process;Score;Bags;kg/bag;USD/kg\nP-1;Kenya;washed;87;40;60;9.85\nP-2;Peru;natural;186;12;69;7.10\n";

    [Fact]
    public async Task A_list_is_uploaded_mapped_previewed_and_stored()
    {
        var browser = await house.BrowserAsync(Role.Buyer);
        var fields = new Dictionary<string, string> { ["Input.Supplier"] = "Page Traders" };

        var parked = await browser.SendFormAsync("/Offers/Import", fields, files: [("Input.File", "list.csv", Encoding.UTF8.GetBytes(List))]);
        Assert.Equal(HttpStatusCode.Redirect, parked.StatusCode);
        var columns = parked.Headers.Location!.ToString();
        var preview = await TestBrowser.PageAsync(await browser.SendFormAsync(columns, new Dictionary<string, string>(), "Preview"));
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Offers.CountAsync(offer => offer.Ref == "P-1")));
        var stored = await browser.SendFormAsync(columns, new Dictionary<string, string>(), "Preview", to: columns.Split('?')[0] + "?handler=Store");

        Assert.Contains("is above 100", preview.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, stored.StatusCode);
        var list = await browser.ReadAsync(stored.Headers.Location!.ToString());
        Assert.Contains("is above 100", list.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Offers.CountAsync(offer => offer.Ref == "P-1")));
    }
}

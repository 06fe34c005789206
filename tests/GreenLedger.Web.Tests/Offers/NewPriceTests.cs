using System.Net;
using AngleSharp.Html.Dom;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

public sealed class NewPriceTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_price_that_was_named_apart_from_a_list_is_typed_and_the_older_one_stays_in_the_history()
    {
        var browser = await LoadedAsync();
        var offer = await OfferAsync("R-1");
        var form = new Dictionary<string, string> { ["Input.Way"] = "Outright", ["Input.Price"] = "398.5", ["Input.Currency"] = "cents", ["Input.Unit"] = "Pound" };

        var refused = await TestBrowser.PageAsync(await browser.SendFormAsync($"/Offers/NewPrice/{offer.Id}", form));
        var saved = await browser.SendFormAsync($"/Offers/NewPrice/{offer.Id}", new Dictionary<string, string>(form) { ["Input.Price"] = "3.985", ["Input.Currency"] = "usd" });

        Assert.Contains("not a currency code", refused.QuerySelector("#Input_Currency_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("398.5", ValueOf(refused, "Price"));
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        var lines = (await browser.ReadAsync($"/Offers/Offer/{offer.Id}")).QuerySelectorAll("[aria-label='Price history'] tbody tr");
        Assert.Equal(2, lines.Length);
        Assert.Equal("hand", lines[0].QuerySelector("td:last-child")!.TextContent.Trim());
        // Worked by hand: 3.985 USD / 0.45359237 kg = 8.7854 USD/kg.
        Assert.Equal(8.7854m, Math.Round((await OfferAsync("R-1")).Price!.Value.PerKilogram, 4));
    }

    [Fact]
    public async Task A_typed_differential_names_its_month_and_a_price_that_says_nothing_new_is_refused()
    {
        var browser = await LoadedAsync();
        var offer = await OfferAsync("R-2");
        var form = new Dictionary<string, string> { ["Input.Way"] = "Differential", ["Input.Differential"] = "-12.5", ["Input.FuturesMonth"] = "KCX27" };

        var refused = await TestBrowser.PageAsync(await browser.SendFormAsync($"/Offers/NewPrice/{offer.Id}", form));
        await browser.SendFormAsync($"/Offers/NewPrice/{offer.Id}", new Dictionary<string, string>(form) { ["Input.FuturesMonth"] = "KCH27" });
        var again = await TestBrowser.PageAsync(await browser.SendFormAsync($"/Offers/NewPrice/{offer.Id}", new Dictionary<string, string> { ["Input.Way"] = "Differential" }));

        Assert.Contains("'KCX27' is not a futures month", refused.QuerySelector("#Input_FuturesMonth_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(("KCH27", -12.5m), ((await OfferAsync("R-2")).Differential!.Value.Month.ToString(), (await OfferAsync("R-2")).Differential!.Value.Quoted));
        Assert.Contains("what the offer asks already", again.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    private static string? ValueOf(IHtmlDocument page, string field) => page.QuerySelector($"[name='Input.{field}']")!.GetAttribute("value");

    private Task<Offer> OfferAsync(string reference) => house.FromLedgerAsync(db => db.Offers.AsNoTracking().SingleAsync(offer => offer.Ref == reference, Cancel));

    private async Task<TestBrowser> LoadedAsync()
    {
        using var script = await LoadedList.LoadAsync(house);
        return await house.BrowserAsync(Role.Buyer);
    }
}

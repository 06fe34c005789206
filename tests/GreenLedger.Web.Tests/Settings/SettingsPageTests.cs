using System.Net;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Settings;

public sealed class SettingsPageTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_currencies_with_an_interest_year_of_365_days_are_the_houses_own()
    {
        var administrator = await house.BrowserAsync(Role.Administrator);
        Assert.Equal("GBP", (await administrator.ReadAsync("/Settings")).QuerySelector("#Input_LongYears")!.GetAttribute("value"));

        var answer = await administrator.SendFormAsync("/Settings", new Dictionary<string, string> { ["Input.LongYears"] = "gbp, KES" });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("GBP KES", (await house.FromLedgerAsync(db => db.Houses.SingleAsync(Stop))).LongYears);
        var history = (await administrator.ReadAsync("/Settings")).QuerySelector("section[aria-labelledby=history]")!.TextContent;
        Assert.Contains("GBP KES", history, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_code_that_is_no_currency_is_refused_beside_its_field_and_kept_as_typed()
    {
        var administrator = await house.BrowserAsync(Role.Administrator);
        var before = await house.FromLedgerAsync(db => db.Houses.Select(one => one.LongYears).SingleAsync(Stop));

        var page = await TestBrowser.PageAsync(await administrator.SendFormAsync(
            "/Settings", new Dictionary<string, string> { ["Input.LongYears"] = "GBP STERLING", ["Input.Name"] = "Sorrel and Sons" }));

        Assert.Contains("'STERLING' is not a currency code", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("GBP STERLING", page.QuerySelector("#Input_LongYears")!.GetAttribute("value"));
        Assert.Equal("Sorrel and Sons", page.QuerySelector("#Input_Name")!.GetAttribute("value"));
        Assert.Equal(before, await house.FromLedgerAsync(db => db.Houses.Select(one => one.LongYears).SingleAsync(Stop)));
    }
}

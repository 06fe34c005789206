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

    /// <summary>Nairobi is three hours ahead of UTC all year (IANA time zone database).</summary>
    [Fact]
    public async Task Clock_times_are_shown_and_entered_in_the_time_zone_of_the_house()
    {
        var table = await Cupping.Table.LayOutAsync(house);
        var administrator = await house.BrowserAsync(Role.Administrator);
        var cupper = await house.BrowserAsync(Role.Cupper);
        Assert.Equal("Etc/UTC", (await administrator.ReadAsync("/Settings")).QuerySelector("#Input_TimeZone option[selected]")!.GetAttribute("value"));

        await administrator.SendFormAsync("/Settings", new Dictionary<string, string> { ["Input.TimeZone"] = "Africa/Nairobi" });
        var written = await cupper.SendFormAsync("/Roasting/New", new Dictionary<string, string> { ["Input.Label"] = table.Labels[0], ["Input.RoastedAt"] = "2026-11-22T01:30", ["Input.MassInGrams"] = "100" });
        var page = await cupper.ReadAsync(written.Headers.Location!.ToString());

        Assert.Contains("roasted 22 Nov 2026, 01:30 UTC+3", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(new DateTimeOffset(2026, 11, 21, 22, 30, 0, TimeSpan.Zero), await house.FromLedgerAsync(db => db.SampleRoasts.Select(roast => roast.RoastedAt).SingleAsync(Stop)));
        var wrong = await TestBrowser.PageAsync(await administrator.SendFormAsync("/Settings", new Dictionary<string, string> { ["Input.TimeZone"] = "Africa/Nowhere" }));
        Assert.Contains("'Africa/Nowhere' is no time zone", wrong.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_repeatability_to_keep_is_proposed_when_a_session_is_closed()
    {
        var table = await Cupping.Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        Assert.Equal("", (await leader.ReadAsync($"/Cupping/Close/{table.SessionId}")).QuerySelector("#stated-repeatability")!.GetAttribute("value") ?? "");

        await leader.SendFormAsync("/Cupping/Habits", new Dictionary<string, string> { ["Input.StatedRepeatabilityPoints"] = "0.75" });
        var close = await leader.ReadAsync($"/Cupping/Close/{table.SessionId}");
        var refused = await TestBrowser.PageAsync(await leader.SendFormAsync("/Cupping/Habits", new Dictionary<string, string> { ["Input.StatedRepeatabilityPoints"] = "0" }));

        Assert.Equal("0.75", close.QuerySelector("#stated-repeatability")!.GetAttribute("value"));
        Assert.Contains("above 0 and at most 10", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
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

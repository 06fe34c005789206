using System.Net;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests;

/// <summary>What every page with a form does, shown on the house's settings.</summary>
public sealed class FormPageTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string Address = "/Settings";

    [Fact]
    public async Task A_rule_that_refuses_stands_beside_its_field_and_in_the_summary_and_keeps_what_was_typed()
    {
        var browser = await house.BrowserAsync(Role.Administrator);
        var form = new Dictionary<string, string> { ["Input.Name"] = "Renamed in vain", ["Input.RepeatabilityPoints"] = "9" };

        var answer = await browser.SendFormAsync(Address, form);

        var page = await TestBrowser.PageAsync(answer);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("cannot exceed", page.QuerySelector("#Input_RepeatabilityPoints_error")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("[data-errors] a[href='#Input_RepeatabilityPoints']"));
        Assert.Equal("Renamed in vain", page.QuerySelector("#Input_Name")!.GetAttribute("value"));
        Assert.Equal("Sorrel Roasters", await house.FromLedgerAsync(db => db.Houses.Select(one => one.Name).SingleAsync()));
    }

    [Fact]
    public async Task A_value_that_cannot_be_read_is_said_beside_its_field()
    {
        var browser = await house.BrowserAsync(Role.Administrator);

        var answer = await browser.SendFormAsync(Address, new Dictionary<string, string> { ["Input.ReproducibilityPoints"] = "much" });

        var page = await TestBrowser.PageAsync(answer);
        Assert.NotEqual("", page.QuerySelector("#Input_ReproducibilityPoints_error")!.TextContent);
        Assert.Equal("much", page.QuerySelector("#Input_ReproducibilityPoints")!.GetAttribute("value"));
        Assert.Equal("true", page.QuerySelector("#Input_ReproducibilityPoints")!.GetAttribute("aria-invalid"));
    }

    [Fact]
    public async Task Somebody_who_was_faster_is_shown_beside_what_was_typed_and_the_next_save_is_taken()
    {
        await using var other = new HouseFixture();
        var browser = await other.BrowserAsync(Role.Administrator);
        var stale = new Dictionary<string, string> { ["Input.Version"] = "0", ["Input.Name"] = "Mine" };
        await browser.SendFormAsync(Address, new Dictionary<string, string> { ["Input.Name"] = "Theirs" });

        var page = await TestBrowser.PageAsync(await browser.SendFormAsync(Address, stale));
        var row = page.QuerySelectorAll("[data-errors] tbody tr").Single(one => one.QuerySelector("th")!.TextContent == "Name");
        stale["Input.Version"] = page.QuerySelector("#Input_Version")!.GetAttribute("value")!;
        var again = await browser.SendFormAsync(Address, stale);

        Assert.Equal(["Mine", "Theirs"], row.QuerySelectorAll("td").Select(cell => cell.TextContent));
        Assert.Equal("Mine", page.QuerySelector("#Input_Name")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Equal("Mine", await other.FromLedgerAsync(db => db.Houses.Select(one => one.Name).SingleAsync()));
    }
}

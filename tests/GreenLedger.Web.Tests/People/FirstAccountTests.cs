using System.Net;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.People;

public sealed class FirstAccountTests
{
    private static readonly Dictionary<string, string> Form = new()
    {
        ["Input.House"] = "Nine Weirs Coffee",
        ["Input.Currency"] = "GBP",
        ["Input.Name"] = "Odalys Brandt",
        ["Input.Email"] = "odalys@nine-weirs.example",
        ["Input.Password"] = "river over nine weirs",
    };

    [Fact]
    public async Task An_empty_house_leads_to_the_first_account_which_may_do_everything()
    {
        await using var house = new HouseFixture();
        var visitor = house.Visitor();

        var led = await visitor.Client.GetAsync("/");
        var made = await visitor.SendFormAsync("/Entrance/FirstAccount", Form);

        Assert.Equal("/Entrance/FirstAccount", led.Headers.Location!.OriginalString);
        Assert.Equal(HttpStatusCode.Redirect, made.StatusCode);
        Assert.Equal("Nine Weirs Coffee", (await visitor.ReadAsync("/")).QuerySelector("h1")!.TextContent.Trim());
        await visitor.ReadAsync("/People");
    }

    [Fact]
    public async Task A_second_first_account_is_not_made()
    {
        await using var house = new HouseFixture();
        await house.Visitor().SendFormAsync("/Entrance/FirstAccount", Form);

        var answer = await house.Visitor().Client.GetAsync("/Entrance/FirstAccount");

        Assert.Equal("/Entrance/SignIn", answer.Headers.Location!.OriginalString);
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Users.CountAsync()));
    }

    [Fact]
    public async Task A_short_password_is_refused_beside_its_field_and_nothing_is_stored()
    {
        await using var house = new HouseFixture();
        var form = new Dictionary<string, string>(Form) { ["Input.Password"] = "short" };

        var page = await TestBrowser.PageAsync(await house.Visitor().SendFormAsync("/Entrance/FirstAccount", form));

        Assert.Equal("A password has at least 12 characters.", page.QuerySelector("#Input_Password_error")!.TextContent);
        Assert.Equal("Nine Weirs Coffee", page.QuerySelector("#Input_House")!.GetAttribute("value"));
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Houses.CountAsync()));
    }
}

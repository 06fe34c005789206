using System.Net;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.People;

public sealed class AccountsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    [Fact]
    public async Task An_invited_person_chooses_a_password_by_the_link_and_is_in()
    {
        var administrator = await house.BrowserAsync(Role.Administrator);

        var link = await InviteAsync(administrator, "Ruta Mbeki", "ruta@sorrel-roasters.example");
        var invited = house.Visitor();
        var answer = await invited.SendFormAsync(link, new Dictionary<string, string> { ["Input.Password"] = "two spoons and a kettle" });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("Ruta Mbeki", (await invited.ReadAsync("/")).QuerySelector(".account summary")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("élodie")]
    [InlineData("ELODIE  marchand")]
    [InlineData("E.Marchand@sorrel")]
    public async Task Somebody_is_found_without_regard_to_accents_and_capitals(string typed)
    {
        await using var other = new HouseFixture();
        var administrator = await other.BrowserAsync(Role.Administrator);
        await InviteAsync(administrator, "ÉLODIE Marchand", "e.marchand@sorrel-roasters.example");

        var page = await administrator.ReadAsync("/People?name=" + Uri.EscapeDataString(typed));

        Assert.Equal("ÉLODIE Marchand", Assert.Single(page.QuerySelectorAll("tbody th")).TextContent);
    }

    [Fact]
    public async Task A_link_works_once()
    {
        var link = await InviteAsync(await house.BrowserAsync(Role.Administrator), "Once Only", "once@sorrel-roasters.example");
        var form = new Dictionary<string, string> { ["Input.Password"] = "two spoons and a kettle" };
        await house.Visitor().SendFormAsync(link, form);

        var page = await TestBrowser.PageAsync(await house.Visitor().SendFormAsync(link, form));

        Assert.Contains("used already", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_has_left_cannot_sign_in_and_their_token_opens_nothing()
    {
        await using var other = new HouseFixture();
        var script = await other.ScriptAsync(Role.Cupper);
        var administrator = await other.BrowserAsync(Role.Administrator);
        var person = await other.FromLedgerAsync(db => db.People.SingleAsync(one => one.Name == "A Cupper"));

        await administrator.SendFormAsync($"/People/Person/{person.Id}", new Dictionary<string, string>(), handler: "Leave");

        var form = new Dictionary<string, string> { ["Input.Email"] = HouseFixture.EmailOf(Role.Cupper), ["Input.Password"] = HouseFixture.Password };
        var page = await TestBrowser.PageAsync(await other.Visitor().SendFormAsync("/Entrance/SignIn", form));
        Assert.NotNull(page.QuerySelector("[data-errors]"));
        Assert.Equal(HttpStatusCode.Unauthorized, (await script.GetAsync("/api/nothing-here")).StatusCode);
    }

    [Fact]
    public async Task A_new_password_by_link_and_a_return_leave_no_old_token_that_opens()
    {
        await using var other = new HouseFixture();
        var (buyer, cupper) = (await other.ScriptAsync(Role.Buyer), await other.ScriptAsync(Role.Cupper));
        var administrator = await other.BrowserAsync(Role.Administrator);
        var people = await other.FromLedgerAsync(db => db.People.ToDictionaryAsync(one => one.Name, one => one.Id));

        await administrator.SendFormAsync($"/People/Person/{people["A Buyer"]}", new Dictionary<string, string>(), handler: "Link");
        var link = (await administrator.ReadAsync($"/People/Person/{people["A Buyer"]}")).QuerySelector("#link")!;
        await other.Visitor().SendFormAsync(new Uri(link.TextContent).PathAndQuery, new Dictionary<string, string> { ["Input.Password"] = "two spoons and a kettle" });
        await administrator.SendFormAsync($"/People/Person/{people["A Cupper"]}", new Dictionary<string, string>(), handler: "Leave");
        await administrator.SendFormAsync($"/People/Person/{people["A Cupper"]}", new Dictionary<string, string>(), handler: "Return");

        Assert.Equal(HttpStatusCode.Unauthorized, (await buyer.GetAsync("/api/nothing-here")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await cupper.GetAsync("/api/nothing-here")).StatusCode);
    }

    [Fact]
    public async Task The_last_administrator_cannot_be_taken_away()
    {
        await using var other = new HouseFixture();
        await other.OpenHouseAsync();
        var browser = await other.BrowserAsync(Role.Administrator);
        await other.InLedgerAsync(async db =>
        {
            (await db.People.SingleAsync(one => one.Name == "Imke Adler")).Leave();
            await db.SaveChangesAsync();
        });
        var last = await other.FromLedgerAsync(db => db.People.SingleAsync(one => one.Name == "A Administrator"));

        var answer = await browser.SendFormAsync($"/People/Person/{last.Id}", new Dictionary<string, string>(), handler: "Leave");

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("only administrator", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.True(await other.FromLedgerAsync(db => db.People.Where(one => one.Id == last.Id).Select(one => one.IsActive).SingleAsync()));
    }

    private static async Task<string> InviteAsync(TestBrowser administrator, string name, string email)
    {
        var form = new Dictionary<string, string> { ["Input.Name"] = name, ["Input.Email"] = email, ["Input.Roles"] = "Cupper" };
        var answer = await administrator.SendFormAsync("/People/Invite", form);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await administrator.ReadAsync(answer.Headers.Location!.OriginalString);
        return new Uri(page.QuerySelector("#link")!.TextContent).PathAndQuery;
    }
}

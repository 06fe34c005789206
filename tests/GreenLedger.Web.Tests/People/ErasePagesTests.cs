using System.Net;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.People;

/// <summary>An administrator erases somebody's data, after seeing what would be changed.</summary>
public sealed class ErasePagesTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_is_erased_is_signed_out_and_stands_as_a_designation()
    {
        await using var house = new HouseFixture();
        var administrator = await house.BrowserAsync(Role.Administrator);
        var address = $"/People/Erase/{await IdAsync(house, "A Buyer")}";

        var preview = await administrator.ReadAsync(address);
        var unsaid = await TestBrowser.PageAsync(await administrator.SendFormAsync(address, new Dictionary<string, string> { ["Input.Reason"] = "" }));
        var erased = await administrator.SendFormAsync(address, new Dictionary<string, string> { ["Input.Reason"] = "Asked for by letter" });

        Assert.Contains(preview.QuerySelectorAll("tbody tr"), row => row.TextContent.Contains("people", StringComparison.Ordinal));
        Assert.Contains("Please say why", unsaid.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, erased.StatusCode);
        var people = await administrator.ReadAsync("/People");
        Assert.DoesNotContain("A Buyer", people.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Person 1", people.Body.TextContent, StringComparison.Ordinal);
        Assert.Contains("Asked for by letter", (await administrator.ReadAsync($"/People/Person/{await IdAsync(house, "Person 1")}")).Body!.TextContent, StringComparison.Ordinal);
        Assert.False(await house.FromLedgerAsync(db => db.Users.AnyAsync(account => account.Email == HouseFixture.EmailOf(Role.Buyer), Stop)));
        var again = await house.Visitor().SendFormAsync("/Entrance/SignIn", new Dictionary<string, string> { ["Input.Email"] = HouseFixture.EmailOf(Role.Buyer), ["Input.Password"] = HouseFixture.Password });
        Assert.NotEqual(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await administrator.Client.GetAsync(new Uri(address, UriKind.Relative), Stop)).StatusCode);
    }

    [Fact]
    public async Task Nobody_erases_themselves_and_the_last_administrator_stays()
    {
        await using var house = new HouseFixture();
        var administrator = await house.BrowserAsync(Role.Administrator);
        var reason = new Dictionary<string, string> { ["Input.Reason"] = "Asked for" };

        var self = await TestBrowser.PageAsync(await administrator.SendFormAsync($"/People/Erase/{await IdAsync(house, "A Administrator")}", reason));
        var owner = await administrator.SendFormAsync($"/People/Erase/{await IdAsync(house, "Imke Adler")}", reason);
        var last = await TestBrowser.PageAsync(await administrator.SendFormAsync($"/People/Erase/{await IdAsync(house, "A Administrator")}", reason));

        Assert.Contains("Another administrator has to erase your data", self.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, owner.StatusCode);
        Assert.Contains("This is the only administrator", last.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("A Administrator", await house.FromLedgerAsync(db => db.People.Where(person => person.Name == "A Administrator").Select(person => person.Name).SingleAsync(Stop)));
    }

    private static Task<string> IdAsync(HouseFixture house, string name) => house.FromLedgerAsync(async db =>
        (await db.People.AsNoTracking().SingleAsync(person => person.Name == name, Stop)).Id.ToString());
}

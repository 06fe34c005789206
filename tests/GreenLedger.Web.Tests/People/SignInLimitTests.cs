using System.Net;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.People;

public sealed class SignInLimitTests
{
    [Fact]
    public async Task The_eleventh_try_within_a_minute_is_turned_away()
    {
        await using var house = new HouseFixture();
        house.Settings.Remove("GreenLedger:SignInsPerMinute");
        await house.OpenHouseAsync();
        var visitor = house.Visitor();
        var form = new Dictionary<string, string> { ["Input.Email"] = "nobody@sorrel-roasters.example", ["Input.Password"] = "guess" };

        var answers = new List<HttpStatusCode>();
        for (var i = 0; i < 11; i++)
        {
            answers.Add((await visitor.SendFormAsync("/Entrance/SignIn", form)).StatusCode);
        }

        Assert.All(answers.Take(10), status => Assert.Equal(HttpStatusCode.OK, status));
        Assert.Equal(HttpStatusCode.TooManyRequests, answers[10]);
    }

    [Fact]
    public async Task Five_wrong_passwords_lock_the_account_also_for_the_right_one()
    {
        await using var house = new HouseFixture();
        await house.OpenHouseAsync();
        var visitor = house.Visitor();
        var form = new Dictionary<string, string> { ["Input.Email"] = HouseFixture.EmailOf(Role.Buyer), ["Input.Password"] = "guess" };

        for (var i = 0; i < 5; i++)
        {
            await visitor.SendFormAsync("/Entrance/SignIn", form);
        }

        form["Input.Password"] = HouseFixture.Password;
        var page = await TestBrowser.PageAsync(await visitor.SendFormAsync("/Entrance/SignIn", form));

        Assert.Contains("locked for five minutes", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }
}

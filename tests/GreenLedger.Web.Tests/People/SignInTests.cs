using System.Net;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.People;

public sealed class SignInTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    [Fact]
    public async Task A_visitor_is_led_to_sign_in_and_comes_back()
    {
        await house.OpenHouseAsync();

        var answer = await house.Visitor().Client.GetAsync("/Myself/Index");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/Entrance/SignIn?ReturnUrl=%2FMyself%2FIndex", answer.Headers.Location!.PathAndQuery);
    }

    [Fact]
    public async Task A_person_with_the_right_password_sees_the_first_page()
    {
        var browser = await house.BrowserAsync(Role.Buyer);

        var page = await browser.ReadAsync("/");

        Assert.Equal("Sorrel Roasters", page.QuerySelector("h1")!.TextContent.Trim());
        Assert.Contains("A Buyer", page.QuerySelector(".account summary")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_password_is_refused_and_the_e_mail_stays_typed()
    {
        await house.OpenHouseAsync();
        var form = new Dictionary<string, string>
        {
            ["Input.Email"] = HouseFixture.EmailOf(Role.Viewer),
            ["Input.Password"] = "not this one, surely",
        };

        var answer = await house.Visitor().SendFormAsync("/Entrance/SignIn", form);

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("do not fit together", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HouseFixture.EmailOf(Role.Viewer), page.QuerySelector("#Input_Email")!.GetAttribute("value"));
    }

    [Fact]
    public async Task A_form_without_the_anti_forgery_token_is_refused()
    {
        await house.OpenHouseAsync();
        using var bare = new FormUrlEncodedContent([new("Input.Email", "a@b.example"), new("Input.Password", "x")]);

        var answer = await house.Visitor().Client.PostAsync(new Uri("/Entrance/SignIn", UriKind.Relative), bare);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }
}

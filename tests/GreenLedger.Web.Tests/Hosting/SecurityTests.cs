using System.Net;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Hosting;

public sealed class SecurityTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    [Theory]
    [InlineData("/Entrance/SignIn")]
    [InlineData("/no-such-page")]
    [InlineData("/css/house.css")]
    [InlineData("/api/cupping/sessions/not-an-identity")]
    public async Task Every_answer_carries_the_safety_headers(string address)
    {
        var answer = await house.Visitor().Client.GetAsync(address);

        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("DENY", answer.Headers.GetValues("X-Frame-Options").Single());
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task The_sign_in_cookie_is_for_the_server_alone_and_secure_over_https()
    {
        await house.OpenHouseAsync();
        var client = house.CreateClient(new() { AllowAutoRedirect = false, BaseAddress = new Uri("https://ledger.example") });
        var browser = new TestBrowser(client);
        var form = new Dictionary<string, string>
        {
            ["Input.Email"] = HouseFixture.EmailOf(Role.Viewer),
            ["Input.Password"] = HouseFixture.Password,
        };

        var answer = await browser.SendFormAsync("/Entrance/SignIn", form);

        var cookie = answer.Headers.GetValues("Set-Cookie").Single(one => one.StartsWith("GreenLedger=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("http://ledger.example", true)]
    [InlineData("https://ledger.example", false)]
    [InlineData("http://localhost", false)]
    public async Task Plain_http_from_elsewhere_is_told_what_will_not_work(string address, bool told)
    {
        await house.OpenHouseAsync();
        var browser = new TestBrowser(house.CreateClient(new() { AllowAutoRedirect = false, BaseAddress = new Uri(address) }));

        var page = await browser.ReadAsync("/Entrance/SignIn");

        Assert.Equal(told, page.Body!.TextContent.Contains("over plain HTTP", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_api_takes_no_change_from_a_cookie_alone()
    {
        var browser = await house.BrowserAsync(Role.Buyer);
        using var nothing = new StringContent("{}");

        var answer = await browser.Client.PostAsync(new Uri("/api/nothing-here", UriKind.Relative), nothing);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("anti-forgery", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}

using System.Net;
using System.Text.RegularExpressions;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace GreenLedger.Web.Tests.Hosting;

/// <summary>What somebody sends who means no good, or whose program is broken: never the server's fault, never another site.</summary>
public sealed partial class HostileRequestsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly string[] Parameters = ["01999999-0000-7000-8000-000000000001", "..%2F..%2Fetc%2Fpasswd", "%27%3B--", "-1", "%F0%9F%A4%96"];

    private static readonly string[] Queries =
    [
        "q=%00&sort=%00&pageNumber=%00",
        "q=%27+OR+1%3D1--&sort=price%3Bdrop&pageNumber=-2147483648&skip=-1&take=-1&page=-1",
        "q=%25_%5B&sort=&pageNumber=2147483647&skip=2147483647&take=2147483647&page=2147483647",
        "q=<script>alert(1)</script>&pageNumber=99999999999999999999&from=0001-01-01&to=9999-12-31&on=9999-12-31",
        "handler=NoSuchHandler&on=0001-01-01&to=0001-01-01&rules=%27",
        "handler=Workbook&sort=-&pageNumber=0",
    ];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_address_makes_the_server_fail()
    {
        await house.OpenHouseAsync();
        var owner = house.Visitor();
        await owner.SignInAsync(HouseFixture.OwnerEmail, HouseFixture.Password);
        var failed = new List<string>();

        foreach (var address in Addresses())
        {
            using var answer = await owner.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
            if (answer.StatusCode >= HttpStatusCode.InternalServerError || (await answer.Content.ReadAsStringAsync(Stop)).Contains("<script>alert(1)", StringComparison.Ordinal))
            {
                failed.Add($"{(int)answer.StatusCode} {address}");
            }
        }

        Assert.True(failed.Count == 0, string.Join('\n', failed));
    }

    [Theory]
    [InlineData("//evil.example/")]
    [InlineData("/\\evil.example/")]
    [InlineData("https://evil.example/")]
    [InlineData("javascript:alert(1)")]
    public async Task Nobody_is_led_to_another_site_after_signing_in(string elsewhere)
    {
        await house.OpenHouseAsync();
        var fields = new Dictionary<string, string> { ["Input.Email"] = HouseFixture.EmailOf(Role.Viewer), ["Input.Password"] = HouseFixture.Password };

        var answer = await house.Visitor().SendFormAsync($"/Entrance/SignIn?ReturnUrl={Uri.EscapeDataString(elsewhere)}", fields);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/", answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_form_without_its_token_changes_nothing()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var form = new FormUrlEncodedContent([new("Input.Name", "Forged Traders"), new("Input.Kind", "Exporter")]);

        var answer = await buyer.Client.PostAsync(new Uri("/Offers/NewSupplier", UriKind.Relative), form, Stop);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.False(await house.FromLedgerAsync(db => Task.FromResult(db.Suppliers.Any(supplier => supplier.Name == "Forged Traders"))));
    }

    [Fact]
    public async Task A_character_that_no_database_keeps_is_refused_in_a_sentence()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);

        var answer = await buyer.SendFormAsync("/Offers/NewSupplier", new Dictionary<string, string> { ["Input.Name"] = "Quay\0Traders" });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("cannot be read", (await TestBrowser.PageAsync(answer)).QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_ledger_is_opened_once_however_many_try_at_the_same_moment()
    {
        await using var empty = new HouseFixture();
        var visitors = Enumerable.Range(0, 4).Select(_ => empty.Visitor()).ToList();
        var names = visitors.Select((_, i) => new Dictionary<string, string>
        {
            ["Input.House"] = $"House {i}",
            ["Input.Currency"] = "EUR",
            ["Input.Name"] = $"Visitor {i}",
            ["Input.Email"] = $"visitor{i}@quay.example",
            ["Input.Password"] = HouseFixture.Password,
        });

        await Task.WhenAll(visitors.Zip(names, (visitor, fields) => visitor.SendFormAsync("/Entrance/FirstAccount", fields)));

        Assert.Equal((1, 1), await empty.FromLedgerAsync(db => Task.FromResult((db.Users.Count(), db.Houses.Count()))));
    }

    /// <summary>Each route with each parameter, and each route with each query.</summary>
    private IEnumerable<string> Addresses()
    {
        var routes = house.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null && endpoint.Metadata.GetMetadata<IAllowAnonymous>() is null)
            .Where(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>() is not { } methods || methods.HttpMethods.Contains("GET"))
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText!.TrimStart('/'))
            .Distinct().ToList();
        var parametered = routes.Where(route => route.Contains('{')).SelectMany(route => Parameters, (route, value) => Parameter().Replace(route, value));
        return parametered.Concat(routes.SelectMany(_ => Queries, (route, query) => $"{Parameter().Replace(route, Parameters[0])}?{query}"));
    }

    [GeneratedRegex(@"\{[^}]+\}")]
    private static partial Regex Parameter();
}

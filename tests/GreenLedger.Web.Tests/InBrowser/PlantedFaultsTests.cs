using System.Net;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>The crawl is tried itself: it tells of a page with a planted fault, at the width that shows it, and of nothing else.</summary>
public sealed class PlantedFaultsTests(Chromium chromium, HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string SignIn = "/Entrance/SignIn";

    [Theory]
    [InlineData("<input type=\"text\">", ", 360 px: label: ", ", wide: label: ")]
    [InlineData("<p style=\"color: #bbb; background: #fff\">Pale</p>", ", 360 px: color-contrast: ", ", wide: color-contrast: ")]
    [InlineData("<style>@media (max-width: 500px) { p { color: #bbb } }</style><p>Pale</p>", ", 360 px: color-contrast: ")]
    [InlineData("<style>p { color: #bbb } @media (max-width: 500px) { p { color: #000 } }</style><p>Pale</p>", ", wide: color-contrast: ")]
    [InlineData("<script>console.error('planted')</script>", ", 360 px: error: planted")]
    [InlineData("<script>console.warn('planted')</script>", ", 360 px: warning: planted")]
    [InlineData("<script>throw new Error('planted')</script>", ", 360 px: script: ")]
    [InlineData("<script>addEventListener('resize', () => console.error('planted'))</script>", ", wide: error: planted")]
    [InlineData("<div style=\"width: 500px\">Broad</div>", ", 360 px: can be pushed ")]
    [InlineData("<ul><li></li><li></li><li></li><li></li><li></li><li></li><li></li><li></li><li><input type=\"text\"></li></ul>", ", 360 px: label: ", ", wide: label: ")]
    [InlineData("<p>Nothing is wrong here.</p>")]
    public async Task A_planted_fault_is_told_at_the_width_that_shows_it(string planted, params string[] told)
    {
        var faults = await FaultsAsync(("visitor", Page(planted)));

        Assert.Equal(told.Length, faults.Count);
        Assert.All(told.Zip(faults), pair => Assert.StartsWith($"visitor at {SignIn}{pair.First}", pair.Second, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_page_is_opened_again_for_another_person_when_its_own_part_its_files_or_its_menus_differ()
    {
        var faults = await FaultsAsync(
            ("first", Page("<input type=\"text\">")),
            ("the same", Page("<input type=\"text\">")),
            ("other part", Page("<input type=\"text\" id=\"more\">")),
            ("other files", Page("<input type=\"text\">", files: "<style>h1 { margin: 0 }</style>")),
            ("other menus", Page("<input type=\"text\">", menus: "<nav><a href=\"/more\">More</a></nav>")));

        Assert.Equal(["first", "other part", "other files", "other menus"], faults.Select(fault => fault.Split(" at ")[0]).Distinct());
    }

    private static string Page(string planted, string files = "", string menus = "<nav><a href=\"/\">Home</a></nav>") =>
        $"<!DOCTYPE html><html lang=\"en\"><head><title>Planted</title><link rel=\"icon\" href=\"data:,\">{files}</head>"
        + $"<body>{menus}<main><h1>Planted</h1>{planted}</main></body></html>";

    /// <summary>What the crawl says when each person in turn is shown this page for the one to sign in.</summary>
    private async Task<List<string>> FaultsAsync(params (string Who, string Markup)[] shown)
    {
        house.Serve();
        var routes = (await PageRoute.AllAsync(house.Services)).Where(route => route.Page == SignIn).ToList();
        var crawl = new Crawl(routes, new RealIds(house));
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        foreach (var (who, markup) in shown)
        {
            await window.Page.UnrouteAllAsync();
            await window.Page.RouteAsync("**" + SignIn, route => route.FulfillAsync(new RouteFulfillOptions { ContentType = "text/html", Body = markup }));
            using var asker = new HttpClient(new Answering(markup)) { BaseAddress = house.ClientOptions.BaseAddress };
            await crawl.VisitAllAsync(window, asker, who);
        }

        return crawl.Faults;
    }

    private sealed class Answering(string markup) : HttpMessageHandler
    {
        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken) =>
            Task.FromResult(new HttpResponseMessage(HttpStatusCode.OK) { Content = new StringContent(markup, null, "text/html") });
    }
}

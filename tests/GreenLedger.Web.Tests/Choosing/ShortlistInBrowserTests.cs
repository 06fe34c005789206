using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>The shortlist's picture under the hand, and its folds; figures are those of handbook quality.md section 5.</summary>
public sealed class ShortlistInBrowserTests(Chromium chromium)
{
    /// <summary>Where lot A lies on the page: 8.80 EUR/kg across, 86.50 points up.</summary>
    private const string PlaceOfA = """
        () => {
          const box = document.querySelector("[data-chart]");
          box.scrollIntoView({ block: "center" });
          const [x, y] = echarts.getInstanceByDom(box).convertToPixel({ seriesIndex: 1 }, [8.80, 86.50]);
          const edge = box.getBoundingClientRect();
          return [edge.left + x, edge.top + y];
        }
        """;

    /// <summary>Every text that is drawn; the tooltip is drawn too, since its HTML form would carry inline styles.</summary>
    private const string Drawn = """
        () => echarts.getInstanceByDom(document.querySelector("[data-chart]")).getZr().storage.getDisplayList(true)
          .map(drawn => drawn.style?.text ?? "").join(" ")
        """;

    [Fact]
    public async Task The_picture_tells_the_lot_under_the_mouse_and_opens_it_on_a_click()
    {
        await using var shop = await OpenAsync();
        await using var window = await ShortlistAsync(shop, Chromium.Wide);

        var place = await window.Page.EvaluateAsync<float[]>(PlaceOfA);
        Assert.DoesNotContain("rank 1", await window.Page.EvaluateAsync<string>(Drawn), StringComparison.Ordinal);
        await window.Page.Mouse.MoveAsync(place[0], place[1]);
        await window.Page.WaitForFunctionAsync($"() => ({Drawn})().includes('rank 1')");
        var told = await window.Page.EvaluateAsync<string>(Drawn);
        await window.Page.Mouse.ClickAsync(place[0], place[1]);
        await window.Page.WaitForURLAsync(url => url.Contains("/Choosing/Decide/", StringComparison.Ordinal));

        Assert.Contains("landed 8.80 EUR/kg", told, StringComparison.Ordinal);
        Assert.Contains(shop.Market.OfferOf("A").Id.ToString(), window.Page.Url, StringComparison.Ordinal);
        Assert.Contains("Decide on A", await window.Page.InnerTextAsync("h1"), StringComparison.Ordinal);
        Assert.Empty(window.Complaints());
    }

    [Theory]
    [InlineData(Chromium.Wide, true, true)]
    [InlineData(Chromium.Wide, false, true)]
    [InlineData(Chromium.Phone, true, false)]
    [InlineData(Chromium.Phone, false, false)]
    public async Task What_is_not_ranked_is_folded_on_a_phone_also_without_scripts(int width, bool runsScripts, bool isShown)
    {
        await using var shop = await OpenAsync();
        await using var window = await ShortlistAsync(shop, width, runsScripts);
        var why = window.Page.Locator("details:has(#failed) td.why");

        Assert.Equal(isShown, await why.IsVisibleAsync());
        if (!isShown)
        {
            await window.Page.Locator("summary:has(#failed)").ClickAsync();
            Assert.True(await why.IsVisibleAsync());
        }
    }

    private static async Task<OpenShop> OpenAsync()
    {
        var shop = new OpenShop();
        shop.House.Serve();
        await shop.InitializeAsync();
        return shop;
    }

    private async Task<Window> ShortlistAsync(OpenShop shop, int width, bool runsScripts = true)
    {
        var window = await chromium.OpenAsync(shop.House.ClientOptions.BaseAddress, width, runsScripts);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);
        await window.GoAsync("/Choosing");
        if (runsScripts)
        {
            await window.Page.WaitForSelectorAsync("[data-chart] canvas", new PageWaitForSelectorOptions { State = WaitForSelectorState.Attached });
        }

        return window;
    }
}

using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>The first thing that somebody sees who starts the demo, as the README shows it.</summary>
public sealed class DemoShortlistTests(Chromium chromium, DemoLedger demo)
{
    [Fact]
    public async Task The_demo_house_has_a_shortlist_worth_looking_at()
    {
        await using var house = (await demo.HouseAsync()).Serve();
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);

        await window.GoAsync("/Choosing");
        await window.Page.WaitForSelectorAsync("[data-chart] canvas");
        await Pictures.TakeAsync(window, "demo-shortlist");

        var ranked = await window.Page.Locator("#ranked .rank").CountAsync();
        Assert.InRange(ranked, 5, 25);
        Assert.NotEqual(0, await window.Page.Locator("#ranked .tag-good").CountAsync());
        Assert.NotEqual(0, await window.Page.Locator("#failed").CountAsync());
        Assert.Equal(0, await window.SidewaysAsync());
        Assert.Empty(window.Complaints());
    }
}


namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// Every page route of the running application, wide and at 360 px, as each role, of a house that has just opened: no
/// accessibility violation, nothing that the browser complains about, nothing that can be pushed sideways on a phone.
/// </summary>
public sealed class CrawlTests(Chromium chromium)
{
    [Fact]
    public async Task A_ledger_without_an_account_shows_its_first_page_without_fault()
    {
        await using var house = new HouseFixture().Serve();
        var crawl = await CrawledHouse.CrawlOfAsync(house);
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        using var asker = await window.AskerAsync(house.ClientOptions.BaseAddress);

        await crawl.VisitAllAsync(window, asker, "visitor");

        Assert.Contains(("/Entrance/FirstAccount", "visitor"), crawl.Shown);
        crawl.FoundNothing();
    }

    [Fact]
    public async Task An_empty_house_shows_every_role_its_pages_without_fault()
    {
        await using var house = new HouseFixture().Serve();
        await house.OpenHouseAsync();
        var crawl = await CrawledHouse.CrawlOfAsync(house);

        await CrawledHouse.VisitAsEachRoleAsync(chromium, house, crawl);

        Assert.All(CrawledHouse.Roles, role => Assert.Contains(("/Index", $"{role}"), crawl.Shown));
        crawl.FoundNothing();
    }
}

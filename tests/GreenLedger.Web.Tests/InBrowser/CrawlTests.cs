using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// Every page route of the running application, wide and at 360 px, as each role: no accessibility violation, nothing that
/// the browser complains about, nothing that can be pushed sideways on a phone, and no page that nobody is shown.
/// </summary>
public sealed class CrawlTests(Chromium chromium)
{
    private static readonly Role[] Roles = [Role.Viewer, Role.Cupper, Role.LeadCupper, Role.Buyer, Role.Administrator];

    [Fact]
    public async Task A_ledger_without_an_account_shows_its_first_page_without_fault()
    {
        await using var house = Served();
        var crawl = await CrawlOfAsync(house);
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        using var asker = await window.AskerAsync(house.ClientOptions.BaseAddress);

        await crawl.VisitAllAsync(window, asker, "visitor");

        Assert.Contains("/Entrance/FirstAccount", crawl.Shown);
        Assert.True(crawl.Faults.Count == 0, string.Join('\n', crawl.Faults));
    }

    [Fact]
    public async Task An_empty_house_shows_every_role_its_pages_without_fault()
    {
        await using var house = Served();
        await house.OpenHouseAsync();
        var crawl = await CrawlOfAsync(house);

        await VisitAsEachRoleAsync(house, crawl);

        Assert.Contains("/Index", crawl.Shown);
        Assert.True(crawl.Faults.Count == 0, string.Join('\n', crawl.Faults));
    }

    private static HouseFixture Served()
    {
        var house = new HouseFixture();
        house.Settings["Logging:LogLevel:Default"] = "Error";
        house.UseKestrel(0);
        house.StartServer();
        return house;
    }

    private static async Task<Crawl> CrawlOfAsync(HouseFixture house) =>
        new(await PageRoute.AllAsync(house.Services), new RealIds(house));

    private async Task VisitAsEachRoleAsync(HouseFixture house, Crawl crawl)
    {
        await using (var visitor = await chromium.OpenAsync(house.ClientOptions.BaseAddress))
        {
            using var asker = await visitor.AskerAsync(house.ClientOptions.BaseAddress);
            await crawl.VisitAllAsync(visitor, asker, "visitor");
        }

        foreach (var role in Roles)
        {
            await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
            await window.SignInAsync(HouseFixture.EmailOf(role), HouseFixture.Password);
            using var asker = await window.AskerAsync(house.ClientOptions.BaseAddress);
            await crawl.VisitAllAsync(window, asker, $"{role}", $"A {role}");
        }
    }
}

using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>The crawl through a served house, as one role after another.</summary>
internal static class CrawledHouse
{
    public static readonly Role[] Roles = [Role.Viewer, Role.Cupper, Role.LeadCupper, Role.Buyer, Role.Administrator];

    public static async Task<Crawl> CrawlOfAsync(HouseFixture house) =>
        new(await PageRoute.AllAsync(house.Services), new RealIds(house));

    public static async Task VisitAsEachRoleAsync(Chromium chromium, HouseFixture house, Crawl crawl)
    {
        var site = house.ClientOptions.BaseAddress;
        await using (var visitor = await chromium.OpenAsync(site))
        {
            using var asker = await visitor.AskerAsync(site);
            await crawl.VisitAllAsync(visitor, asker, "visitor");
        }

        foreach (var role in Roles)
        {
            await using var window = await chromium.OpenAsync(site);
            await window.SignInAsync(HouseFixture.EmailOf(role), HouseFixture.Password);
            using var asker = await window.AskerAsync(site);
            await crawl.VisitAllAsync(window, asker, $"{role}", $"A {role}");
        }
    }
}

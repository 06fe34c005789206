using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>Two phones at one table, one of them without the network for a while.</summary>
public sealed class TwoPhonesTests(Chromium chromium)
{
    private static readonly string[] Attributes = ["Fragrance/aroma", "Flavor", "Aftertaste", "Acidity", "Body", "Balance", "Overall"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_written_without_the_network_is_lost_and_both_sheets_are_in_the_result()
    {
        await using var house = new HouseFixture().Serve();
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper, Role.LeadCupper);
        await using var steady = await SitAsync(house, table, Role.LeadCupper);
        await using var cut = await SitAsync(house, table, Role.Cupper);
        await MarkAsync(cut.Page, "Flavor", "8", ".75");
        await SavedAsync(cut.Page);

        await cut.Page.Context.SetOfflineAsync(true);
        await MarkAsync(cut.Page, "Acidity", "7", ".25");
        await cut.Page.Locator("[data-field=note] textarea").FillAsync("Best when cold.");
        await WaitAsync(cut.Page, "[data-line]", "No network");
        await cut.Page.ReloadAsync();
        await ReadyAsync(cut.Page);

        Assert.Equal("7.25", await cut.Page.Locator("[data-field='mark.acidity'] output").InnerTextAsync());
        Assert.Equal("Best when cold.", await cut.Page.Locator("[data-field=note] textarea").InputValueAsync());
        await FillAsync(cut.Page, "8", "Flavor", "Acidity");
        await cut.Page.Locator("[data-hand-in]").ClickAsync();
        await FillAsync(steady.Page, "8");
        await steady.Page.Locator("[data-hand-in]").ClickAsync();
        await SavedAsync(steady.Page);
        await cut.Page.Context.SetOfflineAsync(false);
        await SavedAsync(cut.Page);

        var sheets = (await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(session => session.Id == table.SessionId, Stop))).Sheets;
        Assert.Equal(2, sheets.Count);
        var sheet = sheets.Single(sheet => sheet.CupperName == "A Cupper");
        // Worked by hand: 8.75 + 7.25 + 5 × 8.00 + 30.
        Assert.Equal((Score.Of(86m), "Best when cold."), (sheet.Total, sheet.Note));
        Assert.Empty(await cut.ViolationsAsync());
        Assert.Equal(0, await cut.SidewaysAsync());
    }

    [Fact]
    public async Task A_sheet_that_two_devices_changed_shows_both_and_asks()
    {
        await using var house = new HouseFixture().Serve();
        var table = await Table.LayOutAsync(house);
        await using var one = await SitAsync(house, table, Role.Cupper);
        await using var other = await SitAsync(house, table, Role.Cupper);
        await MarkAsync(one.Page, "Flavor", "8", ".00");
        await SavedAsync(one.Page);

        await other.Page.Locator("button[aria-label='Flavor: 7']").ClickAsync();
        await other.Page.Locator(".cup-clash").WaitForAsync();

        Assert.Contains("8", await other.Page.Locator(".cup-clash tbody tr").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("7", await other.Page.Locator(".cup-clash tbody tr").InnerTextAsync(), StringComparison.Ordinal);
        await other.Page.Locator("[data-keep=mine]").ClickAsync();
        await SavedAsync(other.Page);
        var draft = await house.FromLedgerAsync(db => db.SheetDrafts.AsNoTracking().SingleAsync(draft => draft.SessionId == table.SessionId, Stop));
        Assert.Equal("7", draft.Values["mark.flavor"]);
    }

    private async Task<Window> SitAsync(HouseFixture house, Table table, Role role)
    {
        var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress, Chromium.Phone);
        await window.SignInAsync(HouseFixture.EmailOf(role), HouseFixture.Password);
        await window.GoAsync($"/Cupping/Cup/{table.SessionId}");
        await ReadyAsync(window.Page);
        // The page has to be kept before the network may go.
        await window.Page.WaitForFunctionAsync(
            "async path => (await (await caches.open('greenledger-table-1')).match(path)) !== undefined", $"/Cupping/Cup/{table.SessionId}");
        return window;
    }

    private static Task ReadyAsync(IPage page) => page.Locator("[data-cup-table]").WaitForAsync();

    private static async Task MarkAsync(IPage page, string attribute, string whole, string part)
    {
        await page.Locator($"button[aria-label='{attribute}: {whole}']").ClickAsync();
        await page.Locator($"button[aria-label='{attribute}: {part}']").ClickAsync();
    }

    private static async Task FillAsync(IPage page, string whole, params string[] except)
    {
        foreach (var attribute in Attributes.Except(except))
        {
            await page.Locator($"button[aria-label='{attribute}: {whole}']").ClickAsync();
        }
    }

    private static Task SavedAsync(IPage page) => WaitAsync(page, "[data-line]", "Everything is saved");

    private static Task WaitAsync(IPage page, string where, string text) =>
        page.Locator(where, new PageLocatorOptions { HasTextString = text }).WaitForAsync();
}

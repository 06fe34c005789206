using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>What a phone keeps of a table when somebody signs out on it, and a strength of nought.</summary>
public sealed class KeptOnPhoneTests(Chromium chromium)
{
    private const string Menu = "details.account summary";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Signing_out_says_what_is_not_sent_keeps_it_and_leaves_the_next_person_nothing_to_read()
    {
        await using var house = new HouseFixture().Serve();
        var table = await Table.LayOutAsync(house);
        await using var phone = await SitAsync(house, table);
        var page = phone.Page;
        var asked = new List<string>();
        page.Dialog += (_, dialog) =>
        {
            asked.Add(dialog.Message);
            _ = asked.Count == 1 ? dialog.DismissAsync() : dialog.AcceptAsync();
        };
        await page.RouteAsync("**/api/**", route => route.AbortAsync());
        await page.Locator("button[aria-label='Flavor: 8']").ClickAsync();
        await page.Locator("[data-line]", new PageLocatorOptions { HasTextString = "one change is kept" }).WaitForAsync();

        await SignOutAsync(page);
        while (asked.Count == 0)
        {
            await Task.Delay(20, Stop);
        }

        var stayed = page.Url;
        await SignOutAsync(page);
        await page.WaitForURLAsync(address => address.Contains("/Entrance/SignIn", StringComparison.Ordinal));
        await page.WaitForFunctionAsync("async () => (await caches.keys()).length === 0");
        await page.Context.SetOfflineAsync(true);
        var away = await Record.ExceptionAsync(() => page.GotoAsync($"/Cupping/Cup/{table.SessionId}"));
        await page.Context.SetOfflineAsync(false);
        await page.UnrouteAllAsync();
        await phone.SignInAsync(HouseFixture.EmailOf(Role.Cupper), HouseFixture.Password);
        await page.GotoAsync($"/Cupping/Cup/{table.SessionId}");
        await page.Locator("[data-line]", new PageLocatorOptions { HasTextString = "Everything is saved" }).WaitForAsync();
        await page.WaitForFunctionAsync("() => document.querySelector(\"[data-field='mark.flavor'] output\").textContent === '8.00'");

        Assert.Contains($"/Cupping/Cup/{table.SessionId}", stayed, StringComparison.Ordinal);
        Assert.Equal(2, asked.Count);
        Assert.StartsWith("One change of a cupping sheet is not sent yet.", asked[0], StringComparison.Ordinal);
        Assert.NotNull(away);
        Assert.Equal("8", await house.FromLedgerAsync(async db => (await db.SheetDrafts.AsNoTracking().SingleAsync(draft => draft.SessionId == table.SessionId, Stop)).Values["mark.flavor"]));
        await SignOutAsync(page);
        await page.WaitForURLAsync(address => address.Contains("/Entrance/SignIn", StringComparison.Ordinal));
        await page.WaitForFunctionAsync("""
            async () => {
              const database = await new Promise(done => { const open = indexedDB.open("greenledger-table"); open.onsuccess = () => done(open.result); });
              const kept = await new Promise(done => { const all = database.transaction("sheets").objectStore("sheets").getAllKeys(); all.onsuccess = () => done(all.result); });
              database.close();
              return kept.length === 0;
            }
            """);
        Assert.Equal(2, asked.Count);
    }

    [Fact]
    public async Task A_slider_that_stands_at_nought_records_nought_when_it_is_touched()
    {
        await using var house = new HouseFixture().Serve();
        var table = await Table.LayOutAsync(house);
        await house.InLedgerAsync(async db =>
        {
            var session = await db.CuppingSessions.SingleAsync(one => one.Id == table.SessionId, Stop);
            session.Prepare(null, null, await db.DescriptiveForms.SingleAsync(one => one.Id == DescriptiveForm.Sca103Id, Stop));
            await db.SaveChangesAsync(Stop);
        });
        await using var phone = await SitAsync(house, table);
        var sliders = phone.Page.Locator("input.strength");
        var (first, second, third) = (await sliders.Nth(0).GetAttributeAsync("id"), await sliders.Nth(1).GetAttributeAsync("id"), await sliders.Nth(2).GetAttributeAsync("id"));

        await phone.Page.Locator($"#{first}").ClickAsync(new LocatorClickOptions { Position = new Position { X = 2, Y = 8 } });
        await Assertions.Expect(phone.Page.Locator($"output[for='{first}']")).ToHaveTextAsync("0");
        await phone.Page.Locator($"#{second}").FocusAsync();
        await phone.Page.Keyboard.PressAsync("Home");
        await Assertions.Expect(phone.Page.Locator($"output[for='{second}']")).ToHaveTextAsync("0");
        await phone.Page.Locator("[data-line]", new PageLocatorOptions { HasTextString = "Everything is saved" }).WaitForAsync();

        var own = (await house.FromLedgerAsync(db => db.SheetDrafts.AsNoTracking().SingleAsync(draft => draft.SessionId == table.SessionId, Stop))).Values;
        Assert.Equal(("0", "0", false), (own[Field(first)], own[Field(second)], own.ContainsKey(Field(third))));
        Assert.Equal("–", await phone.Page.Locator($"output[for='{third}']").InnerTextAsync());
    }

    /// <summary>Without the network the page comes from the phone, and with it the time at which it was kept.</summary>
    [Fact]
    public async Task The_clock_of_a_page_opened_again_without_network_goes_on_from_the_pour()
    {
        await using var house = new HouseFixture().Serve();
        var table = await Table.LayOutAsync(house);
        await using var phone = await SitAsync(house, table);
        await house.InLedgerAsync(async db =>
        {
            var session = await db.CuppingSessions.Whole().SingleAsync(one => one.Id == table.SessionId, Stop);
            session.PourFlight(1, DateTimeOffset.UtcNow.AddMinutes(-5));
            await db.SaveChangesAsync(Stop);
        });
        // 5:00 is known only from the server's last answer: the page that was kept says that nothing is poured.
        await phone.Page.WaitForFunctionAsync(Shows(300));
        await phone.Page.Context.SetOfflineAsync(true);
        await Task.Delay(TimeSpan.FromSeconds(3), Stop);

        await phone.Page.ReloadAsync();

        await phone.Page.WaitForFunctionAsync(Shows(303));
        await phone.Page.Context.SetOfflineAsync(false);

        static string Shows(int seconds) =>
            $"() => {{ const [m, s] = document.querySelector('[data-time]').textContent.split(':').map(Number); return m * 60 + s >= {seconds} && m * 60 + s < 420; }}";
    }

    [Fact]
    public async Task A_fault_in_a_cup_that_still_counts_as_clean_is_doubted_before_the_sheet_is_handed_in()
    {
        await using var house = new HouseFixture().Serve();
        var table = await Table.LayOutAsync(house);
        await using var phone = await SitAsync(house, table);
        var doubts = phone.Page.Locator("[data-doubts]");
        await Assertions.Expect(doubts).ToBeHiddenAsync();

        await phone.Page.Locator("[data-field='bad.fault'] button").First.ClickAsync();

        await Assertions.Expect(doubts).ToHaveTextAsync("A cup with a fault is still counted as clean: usually it is charged as unclean too.");
        await phone.Page.Locator("[data-field='cups.clean-cup'] button").First.ClickAsync();
        await Assertions.Expect(doubts).ToBeHiddenAsync();
    }

    private static string Field(string? id) => id!.Replace("strength-", "strength.", StringComparison.Ordinal);

    private async Task<Window> SitAsync(HouseFixture house, Table table)
    {
        var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress, Chromium.Phone);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Cupper), HouseFixture.Password);
        await window.GoAsync($"/Cupping/Cup/{table.SessionId}");
        await window.Page.Locator("[data-cup-table]").WaitForAsync();
        await window.Page.WaitForFunctionAsync(
            "async path => (await (await caches.open('greenledger-table-1')).match(path)) !== undefined", $"/Cupping/Cup/{table.SessionId}");
        return window;
    }

    private static async Task SignOutAsync(IPage page)
    {
        if (!await page.Locator("details.account").EvaluateAsync<bool>("details => details.open"))
        {
            await page.Locator(Menu).ClickAsync();
        }

        await page.Locator("details.account form button").ClickAsync();
    }
}

using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>The sheet in one hand: 360 px wide, the total added up while it is typed, and the server's total afterwards.</summary>
public sealed class SheetInBrowserTests(Chromium chromium)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_total_of_the_100_point_form_follows_every_mark_and_is_what_the_server_adds_up()
    {
        await using var house = Served();
        var table = await Table.LayOutAsync(house, cups: 3);
        await using var window = await OpenAsync(house, $"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}");
        var page = window.Page;
        Assert.Contains("7 marks are missing", await page.Locator("[data-arithmetic]").InnerTextAsync(), StringComparison.Ordinal);

        foreach (var key in new[] { "fragrance-aroma", "flavor", "aftertaste", "acidity", "body", "balance", "overall" })
        {
            await page.Locator($"#mark-{key}").FillAsync("7.5");
        }

        await page.Locator("#cups-uniformity").FillAsync("2");
        await page.Locator("#deducted-taint").FillAsync("1");

        // Worked by hand: 52.50 + 10 × 2 ÷ 3 + 10 + 10 − 2 = 77.17.
        Assert.Equal("77.17", await page.Locator("[data-total]").InnerTextAsync());
        Assert.Equal("79.17 less 2.00", await page.Locator("[data-arithmetic]").InnerTextAsync());
        Assert.Equal(0, await window.SidewaysAsync());
        await page.Locator("form.cup-sheet button.btn-primary").ClickAsync();
        await page.WaitForURLAsync(url => url.Contains("/Cupping/Table/", StringComparison.Ordinal));
        Assert.Contains("your sheet: 77.17", await page.Locator(".blind-table").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(window.Complaints());
    }

    [Fact]
    public async Task The_affective_form_steps_by_whole_points_and_rounds_half_up()
    {
        await using var house = Served();
        var table = await Table.LayOutAsync(house);
        await house.InLedgerAsync(async db =>
        {
            // Another form under the same codes, before anybody has handed in a sheet.
            await db.CuppingSessions.Where(session => session.Id == table.SessionId).ExecuteUpdateAsync(row => row.SetProperty(session => session.FormId, CuppingForm.AffectiveId), Stop);
        });
        await using var window = await OpenAsync(house, $"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}");
        var page = window.Page;

        foreach (var (key, points) in new[] { ("fragrance", "8"), ("aroma", "8"), ("flavor", "8"), ("aftertaste", "8"), ("acidity", "7"), ("sweetness", "7"), ("mouthfeel", "7") })
        {
            await page.Locator($"#mark-{key}").FillAsync(points);
        }

        // An empty field steps into the middle of its scale, then by the form's step: 5, 6, 7.
        var up = page.Locator("button[aria-label='Overall up']");
        await up.ClickAsync();
        await up.ClickAsync();
        await up.ClickAsync();

        // Handbook quality.md section 1.2: sum 60 is a tie, 92.125, and rounds half up to 92.25.
        Assert.Equal("7", await page.Locator("#mark-overall").InputValueAsync());
        Assert.Equal("92.25", await page.Locator("[data-total]").InnerTextAsync());
        Assert.Contains("92.1250 before rounding", await page.Locator("[data-arithmetic]").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_the_keyboard_one_goes_from_mark_to_mark_in_the_order_of_the_form_and_steps_with_the_arrows()
    {
        await using var house = Served();
        var table = await Table.LayOutAsync(house);
        await using var window = await OpenAsync(house, $"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}");
        var page = window.Page;
        await page.Locator("#mark-fragrance-aroma").FillAsync("7.5");

        await page.Keyboard.PressAsync("ArrowUp");
        var visited = new List<string?>();
        for (var press = 0; press < 5; press++)
        {
            await page.Keyboard.PressAsync("Tab");
            visited.Add(await page.EvaluateAsync<string>("() => document.activeElement.id"));
        }

        Assert.Equal("7.75", await page.Locator("#mark-fragrance-aroma").InputValueAsync());
        Assert.Equal(["mark-flavor", "mark-aftertaste", "mark-acidity", "mark-body", "mark-balance"], visited);
    }

    private static HouseFixture Served()
    {
        var house = new HouseFixture();
        house.Settings["Logging:LogLevel:Default"] = "Error";
        house.UseKestrel(0);
        house.StartServer();
        return house;
    }

    private async Task<Window> OpenAsync(HouseFixture house, string address)
    {
        var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress, Chromium.Phone);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Cupper), HouseFixture.Password);
        await window.GoAsync(address);
        return window;
    }
}

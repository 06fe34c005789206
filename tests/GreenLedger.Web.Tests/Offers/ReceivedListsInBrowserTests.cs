using System.Globalization;
using System.Text.Json;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>
/// The lists in tests/inputs through the page, as a buyer loads them: chosen, looked at, stored, and loaded once more. Every
/// expected figure is that of expected.json beside them.
/// </summary>
public sealed class ReceivedListsInBrowserTests(Chromium chromium)
{
    public static TheoryData<string, int> Lists() =>
        [.. ReceivedLists.Names().Select((list, at) => (list.Data, at % 2 == 0 ? Chromium.Wide : Chromium.Phone))];

    [Theory]
    [MemberData(nameof(Lists))]
    public async Task A_list_is_chosen_looked_at_stored_and_comes_out_as_expected(string name, int width)
    {
        var expected = ReceivedLists.Expected(name);
        await using var house = Served();
        await house.OpenHouseAsync();
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress, width);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);

        await LookAsync(window.Page, name);
        var violations = await window.ViolationsAsync();
        var sideways = await window.SidewaysAsync();
        var proposed = await ProposedAsync(window.Page);
        var preview = await PreviewAsync(window.Page);
        var empty = await house.FromLedgerAsync(db => db.Offers.AnyAsync());
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Store the list" }).ClickAsync();
        await window.Page.WaitForURLAsync("**/Offers/List/*");

        Assert.Empty(violations);
        Assert.Equal(0, sideways);
        Assert.False(empty);
        CheckProposed(expected, proposed);
        CheckPreview(expected, preview);
        Assert.Equal(
            (expected.GetProperty("offers").GetInt32(), 0, 0, ReceivedLists.SetAside(expected)), await CountsAsync(window.Page));
        await CheckStoredAsync(expected, house);
        Assert.Empty(window.Complaints());
    }

    [Fact]
    public async Task The_same_list_loaded_again_on_the_page_leaves_every_table_equal()
    {
        const string name = "offers-grades.tsv";
        await using var house = Served();
        await house.OpenHouseAsync();
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);
        await LoadAsync(window.Page, name);
        var before = await house.FromLedgerAsync(LedgerTables.ReadAsync);

        await LoadAsync(window.Page, name);

        Assert.Contains("nothing was written", await window.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(before, await house.FromLedgerAsync(LedgerTables.ReadAsync));
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Changes.CountAsync(change => change.RecordKind == nameof(OfferList))));
    }

    private static async Task LoadAsync(IPage page, string name)
    {
        await LookAsync(page, name);
        await PreviewAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Store the list" }).ClickAsync();
        await page.WaitForURLAsync("**/Offers/List/*");
    }

    private static async Task LookAsync(IPage page, string name)
    {
        await page.GotoAsync("/Offers/Import");
        await page.Locator("[name='Input.File']").SetInputFilesAsync(ReceivedLists.PathOf(name));
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the list" }).ClickAsync();
        await page.WaitForURLAsync("**/Offers/Columns/*");
    }

    private static async Task<Dictionary<string, string>> ProposedAsync(IPage page)
    {
        var fields = new Dictionary<string, string>();
        foreach (var name in new[] { "Incoterm", "Place", "ValidUntil", "FuturesMonth" })
        {
            fields[name] = await page.Locator($"[name='Input.{name}']").InputValueAsync();
        }

        return fields;
    }

    private static async Task<(IReadOnlyList<string[]> Offers, IReadOnlyList<string> SetAside)> PreviewAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at what it comes to" }).ClickAsync();
        await page.Locator("#outcome").WaitForAsync();
        var rows = await page.Locator("[aria-labelledby=outcome-offers] tbody tr").AllAsync();
        var offers = new List<string[]>();
        foreach (var row in rows)
        {
            offers.Add([.. (await row.Locator("th, td").AllInnerTextsAsync()).Select(text => text.Trim())]);
        }

        return (offers, await page.Locator("[aria-labelledby=outcome-set-aside] tbody tr").AllInnerTextsAsync());
    }

    private static void CheckProposed(JsonElement expected, Dictionary<string, string> proposed)
    {
        expected.Where("incoterm", term => Assert.Equal(term.GetString(), Enum.Parse<Incoterm>(proposed["Incoterm"]).Word()));
        expected.Where("place", place => Assert.Equal(place.GetString(), proposed["Place"]));
        expected.Where("valid_until", day => Assert.Equal(day.GetString(), proposed["ValidUntil"]));
        expected.Where("basis", _ => Assert.Equal("KCH27", proposed["FuturesMonth"])); // KC March 2027: H is March (ICE's month letters)
    }

    private static void CheckPreview(JsonElement expected, (IReadOnlyList<string[]> Offers, IReadOnlyList<string> SetAside) preview)
    {
        Assert.Equal(expected.GetProperty("offers").GetInt32(), preview.Offers.Count);
        Assert.Equal(ReceivedLists.SetAside(expected), preview.SetAside.Count);
        expected.Where("set_aside", rows => Assert.All(rows.EnumerateObject(), row => Assert.Contains(preview.SetAside, shown =>
            shown.Contains(row.Value.GetString()!, StringComparison.OrdinalIgnoreCase) && row.Name.Split(' ').All(word => shown.Contains(word, StringComparison.Ordinal)))));
        expected.Where("available", count => Assert.Equal(count.GetInt32(), preview.Offers.Count(row => row[9] == "on offer")));
        expected.Where("currency", code => Assert.All(preview.Offers, row => Assert.EndsWith($" {code.GetString()}/kg", row[7], StringComparison.Ordinal)));
        expected.Where("price_unit", unit => Assert.All(preview.Offers, row => Assert.EndsWith(" " + unit.GetString()!.Replace(" per ", "/", StringComparison.Ordinal), row[6], StringComparison.Ordinal)));
        expected.Where("first_usd_per_kg", amount => Assert.Equal(Written(amount.GetDecimal(), "0.00") + " USD/kg", preview.Offers[0][7]));
        expected.Where("sold", count => Assert.Equal(count.GetInt32(), preview.Offers.Count(row => row[9] == "sold")));
        expected.Where("rows", rows => Assert.All(rows.EnumerateArray().Zip(preview.Offers), pair => CheckRow(pair.First, pair.Second)));
    }

    /// <summary>The columns: ref, it is, lot, process, score, quantity, asked, per kg, asked before, state.</summary>
    private static void CheckRow(JsonElement expected, string[] shown)
    {
        Assert.Equal(expected.GetProperty("ref").GetString(), shown[0]);
        Assert.Equal(Written(expected.GetProperty("kg").GetDecimal(), "#,0.##") + " kg", shown[5]);
        expected.Where("usd_per_kg", amount => Assert.Equal(Written(amount.GetDecimal(), "0.00") + " USD/kg", shown[7]));
        expected.Where("eur_per_kg", amount => Assert.Equal(Written(amount.GetDecimal(), "0.00") + " EUR/kg", shown[7]));
        expected.Where("differential_cents_per_lb", cents => Assert.Equal("KCH27 " + Written(cents.GetDecimal(), "+0.##;−0.##") + " ¢/lb", shown[6]));
        expected.Where("score", score => Assert.Equal(Written(score.GetDecimal(), "0.00"), shown[4]));
        expected.Where("process", process => Assert.Equal(process.GetString(), shown[3]));
    }

    private static async Task<(int, int, int, int)> CountsAsync(IPage page)
    {
        var counts = (await page.Locator("ul.figures strong").AllInnerTextsAsync()).Select(text => int.Parse(text, CultureInfo.InvariantCulture)).ToList();
        return (counts[0], counts[1], counts[2], counts[3]);
    }

    /// <summary>What the page shows to two decimals stands in the ledger to four and more.</summary>
    private static async Task CheckStoredAsync(JsonElement expected, HouseFixture house)
    {
        var offers = await house.FromLedgerAsync(db => db.Offers.AsNoTracking().ToDictionaryAsync(offer => offer.Ref));
        expected.Where("rows", rows => Assert.All(rows.EnumerateArray(), row =>
        {
            var offer = offers[row.GetProperty("ref").GetString()!];
            row.Where("usd_per_kg", amount => Assert.Equal(amount.GetDecimal(), Math.Round(offer.Price!.Value.PerKilogram, 4)));
            row.Where("eur_per_kg", amount => Assert.Equal(amount.GetDecimal(), offer.Price!.Value.PerKilogram));
            row.Where("differential_cents_per_lb", cents => Assert.Equal(cents.GetDecimal(), offer.Differential!.Value.Quoted));
        }));
    }

    private static string Written(decimal figure, string format) => figure.ToString(format, CultureInfo.InvariantCulture);

    private static HouseFixture Served()
    {
        var house = new HouseFixture();
        house.Settings["Logging:LogLevel:Default"] = "Error";
        house.UseKestrel(0);
        house.StartServer();
        return house;
    }
}

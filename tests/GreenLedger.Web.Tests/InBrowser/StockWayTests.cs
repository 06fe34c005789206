using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// In a real browser: an arrival comes into stock, some is released, the rest is counted on a phone by its label and approved by
/// somebody else, freight is billed late, and the stock is valued.
/// </summary>
public sealed class StockWayTests(Chromium chromium)
{
    private const string SecondBuyer = "second@sorrel-roasters.example";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_arrival_is_taken_in_released_counted_billed_late_and_valued()
    {
        await using var house = new HouseFixture();
        house.Serve();
        var (lot, shipment) = await FillAsync(house);
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);
        window.Page.Dialog += (_, dialog) => dialog.AcceptAsync();

        await TakeInAsync(window);
        await ReleaseAsync(window, lot);
        await BillAsync(window, $"lot:{lot}", "", "112740.00", "C-1");
        await CountOnPhoneAsync(window, lot);
        await ApproveAsync(house);
        await BillAsync(window, $"shipment:{shipment}", "Freight", "1879.00", "F-9");

        // Worked by hand from the handbook's example G, trade 8: 18,790 kg landed, 274.3 kg released, 68.7 kg missed at the count.
        await window.GoAsync($"/Stock/Lot/{lot}");
        var stock = await TextAsync(window);
        Assert.Contains("18,447 kg", stock, StringComparison.Ordinal);
        Assert.Contains("269", stock, StringComparison.Ordinal);
        // 112,740.00 of coffee and 1,879.00 of freight over 18,790 kg are 6.10 a kilogram; 18,447 kg of it are 112,526.70.
        await window.GoAsync($"/Costs/Lot/{lot}");
        Assert.Contains("6.1000 EUR/kg", await TextAsync(window), StringComparison.Ordinal);
        await Pictures.TakeAsync(window, "lot-cost");
        await window.GoAsync("/Costs/Value?on=2026-11-26");
        Assert.Contains("112,526.70 EUR", await TextAsync(window), StringComparison.Ordinal);
        Assert.Empty(window.Complaints());
    }

    private static async Task TakeInAsync(Window window)
    {
        await window.GoAsync("/Stock");
        await window.Page.GetByRole(AriaRole.Link, new() { NameRegex = new("^Take in") }).ClickAsync();
        await window.Page.Locator("[name='Input.WarehouseId']").SelectOptionAsync(new SelectOptionValue { Label = "Quay store" });
        await window.Page.Locator("[name='Input.On']").FillAsync("2026-11-03");
        await PressAsync(window);
        Assert.Contains("18,790 kg", await TextAsync(window), StringComparison.Ordinal);
    }

    private static async Task ReleaseAsync(Window window, Id<Lot> lot)
    {
        await window.GoAsync($"/Stock/Lot/{lot}");
        await window.Page.GetByRole(AriaRole.Link, new() { Name = "Release, sell, draw" }).ClickAsync();
        await window.Page.Locator("[name='Input.On']").FillAsync("2026-11-05");
        await window.Page.Locator("[name='Input.Bags']").FillAsync("4");
        await window.Page.Locator("[name='Input.WeighedKg']").FillAsync("274.3");
        await window.Page.Locator("[name='Input.Document']").FillAsync("R-118");
        await PressAsync(window);
        Assert.Contains("R-118", await TextAsync(window), StringComparison.Ordinal);
    }

    private static async Task BillAsync(Window window, string on, string stage, string amount, string document)
    {
        await window.GoAsync("/Costs/Post");
        await window.Page.Locator("[name='Input.OnWhat']").FillAsync(on);
        await window.Page.Locator("[name='Input.Stage']").SelectOptionAsync(stage);
        await window.Page.Locator("[name='Input.Amount']").FillAsync(amount);
        await window.Page.Locator("[name='Input.Currency']").SelectOptionAsync("EUR");
        await window.Page.Locator("[name='Input.On']").FillAsync("2026-11-20");
        await window.Page.Locator("[name='Input.Document']").FillAsync(document);
        await PressAsync(window);
    }

    /// <summary>As in the warehouse: the count is begun, the label of the pallet is read, and its line filled in.</summary>
    private static async Task CountOnPhoneAsync(Window window, Id<Lot> lot)
    {
        await window.WidenAsync(Chromium.Phone);
        await window.GoAsync("/Stock/Counts");
        await window.Page.Locator("[name='Input.On']").FillAsync("2026-11-25");
        await PressAsync(window);
        await window.Page.Locator("#lot").FillAsync("ZZZ");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Count it" }).ClickAsync();
        Assert.Contains("No lot ZZZ is on this count", await TextAsync(window), StringComparison.Ordinal);
        await window.GoAsync($"/l/{lot}");
        Assert.DoesNotContain("18,515", await TextAsync(window), StringComparison.Ordinal);
        Assert.Equal(0, await window.SidewaysAsync());
        await window.Page.Locator("[name='Input.Bags']").FillAsync("269");
        await window.Page.Locator("[name='Input.WeighedKg']").FillAsync("18447");
        await PressAsync(window);
        Assert.Contains("Every lot is counted", await window.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);
        await window.WidenAsync(Chromium.Wide);
    }

    private async Task ApproveAsync(HouseFixture house)
    {
        await using (var scope = house.Services.CreateAsyncScope())
        {
            await scope.ServiceProvider.GetRequiredService<Accounts>().AddAsync(new Person("Another buyer", Role.Buyer), SecondBuyer, HouseFixture.Password);
        }

        await using var other = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await other.SignInAsync(SecondBuyer, HouseFixture.Password);
        other.Page.Dialog += (_, dialog) => dialog.AcceptAsync();
        await other.GoAsync("/Stock/Counts");
        await other.Page.Locator("main table a").First.ClickAsync();
        await other.Page.GetByText("Approve the differences").ClickAsync();
        Assert.Contains("−68.7 kg", await TextAsync(other), StringComparison.Ordinal);
    }

    private static Task PressAsync(Window window) => window.Page.Locator("main .actions .btn-primary").First.ClickAsync();

    private static async Task<string> TextAsync(Window window) => (await window.Page.Locator("main").InnerTextAsync()).ReplaceLineEndings(" ");

    private static async Task<(Id<Lot> Lot, Id<Domain.Shipments.Shipment> Shipment)> FillAsync(HouseFixture house)
    {
        var arrived = await ArrivedLot.FillAsync(house);
        return await house.FromLedgerAsync(async db =>
        {
            db.Add(new Warehouse("Quay store"));
            await db.SaveChangesAsync(Stop);
            return await db.Arrivals.Where(one => one.Id == arrived.Arrival).Select(one => ValueTuple.Create(one.LotId, one.ShipmentId)).SingleAsync(Stop);
        });
    }
}

using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Costs;

public sealed class CostPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_late_bill_is_told_apart_on_every_page_and_by_script()
    {
        var lot = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Buyer);
        await buyer.SendFormAsync("/Costs/Post", Invoice($"lot:{lot}", "", "112740.00", "2026-11-03"));

        var late = await buyer.SendFormAsync("/Costs/Post", Invoice($"lot:{lot}", "DestinationTerminal", "187.90", "2026-11-20"));

        // Worked by hand, handbook, trade 9.2: 1,879 of 18,790 kg (trade 8 example G) were gone by 20 November: 18.79 of 187.90.
        Assert.Equal(HttpStatusCode.Redirect, late.StatusCode);
        Assert.Contains("18.79 EUR", await TextAsync(buyer, late.Headers.Location!.OriginalString), StringComparison.Ordinal);
        Assert.Contains("18.79 EUR", await TextAsync(buyer, $"/Costs/Lot/{lot}"), StringComparison.Ordinal);
        Assert.Contains("On coffee already gone", await TextAsync(buyer, "/Costs/Value?on=2026-11-26"), StringComparison.Ordinal);
        var cost = await script.GetFromJsonAsync<JsonElement>($"/api/costs/lots/{lot}", Stop);
        var value = await script.GetFromJsonAsync<JsonElement>("/api/costs/value?on=2026-11-26&since=2026-11-20", Stop);
        var none = await script.GetFromJsonAsync<JsonElement>("/api/costs/value?on=2026-11-26&since=2026-11-21", Stop);
        Assert.Equal((18.79m, 18.79m), (Amount(cost, "late"), Amount(cost, "lateAccounting")));
        Assert.Equal(18.79m, Amount(Late(value, lot).Single(), "late"));
        Assert.Empty(Late(none, lot));
        Assert.Equal(16_911m, value.GetProperty("rows").EnumerateArray().Single(row => row.GetProperty("lotId").GetGuid() == lot.Value).GetProperty("lots")[0].GetProperty("leftKg").GetDecimal());
    }

    /// <summary>A contract over 550 bags, 37,950 kg: half of it is afloat, of the other half 18,790 of 18,975 kg landed (handbook, trade 8, example G).</summary>
    [Fact]
    public async Task What_is_billed_for_coffee_afloat_is_in_no_cost_of_a_kilogram_that_landed()
    {
        var arrived = await ArrivedLot.FillAsync(house);
        var (lot, first) = await house.FromLedgerAsync(db => db.Arrivals.Where(one => one.Id == arrived.Arrival).Select(one => ValueTuple.Create(one.LotId, one.ShipmentId)).SingleAsync(Stop));
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Buyer);

        await buyer.SendFormAsync("/Costs/Post", Invoice($"contract:{arrived.Contract}", "", "225480.00", "2026-11-03"));
        await buyer.SendFormAsync("/Costs/Post", Invoice($"shipment:{arrived.Afloat}", "Freight", "3000.00", "2026-11-04"));
        await buyer.SendFormAsync("/Costs/Post", Invoice($"shipment:{first}", "Freight", "1879.00", "2026-11-05"));
        var cost = await script.GetFromJsonAsync<JsonElement>($"/api/costs/lots/{lot}", Stop);

        // Worked by hand: half of the coffee, 112,740.00, and all of the second freight are to come; 112,740.00 and 1,879.00 over 18,790 kg are 6.10.
        Assert.Equal((230_359m, 115_740m, 114_619m), (Amount(cost, "total"), Amount(cost, "coming"), Amount(cost, "accounting")));
        Assert.Equal((6.1m, 6.1m), (cost.GetProperty("perKg").GetDecimal(), cost.GetProperty("accountingPerKg").GetDecimal()));
        Assert.Contains("115,740.00 EUR", await TextAsync(buyer, $"/Costs/Lot/{lot}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Storage_says_which_days_it_covers()
    {
        var lot = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Buyer);
        var landed = await house.FromLedgerAsync(db => db.Arrivals.Where(one => one.LotId == lot).Select(one => one.ReceivedOn).SingleAsync(Stop));
        var days = new Dictionary<string, string>(Invoice($"lot:{lot}", "Storage", "90.00", "2026-11-25"))
        {
            ["Input.CoversFrom"] = $"{landed.AddDays(-10):yyyy-MM-dd}",
            ["Input.CoversUntil"] = $"{landed.AddDays(19):yyyy-MM-dd}",
        };

        var wrong = await buyer.SendFormAsync("/Costs/Post", new Dictionary<string, string>(days) { ["Input.Stage"] = "Freight" });
        var posted = await buyer.SendFormAsync("/Costs/Post", days);
        var reply = await script.GetFromJsonAsync<JsonElement>($"/api{posted.Headers.Location!.OriginalString.ToLowerInvariant().Replace("/costs/posting/", "/costs/postings/", StringComparison.Ordinal)}", Stop);

        var again = await TestBrowser.PageAsync(wrong);
        Assert.Contains("Only storage is billed for days", again.QuerySelector("#Input_CoversFrom_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(days["Input.CoversFrom"], again.QuerySelector("#Input_CoversFrom")!.GetAttribute("value"));
        // Worked by hand: 10 of 30 days lie before it landed (IAS 2.16, from memory).
        Assert.Equal(30m, Amount(reply.GetProperty("shares")[0], "accounting"));
        Assert.Equal(days["Input.CoversUntil"], reply.GetProperty("posting").GetProperty("coversUntil").GetString());
    }

    /// <summary>Facts of bookkeeping, no source: a bill of tomorrow is none, a third of a cent is not billed, 12,5 is not 125.</summary>
    [Theory]
    [InlineData("Input.On", "2099-01-01", "still to come")]
    [InlineData("Input.Amount", "10.005", "at most 2 decimals")]
    [InlineData("Input.Amount", "12,5", "figures take a decimal point")]
    [InlineData("Input.Amount", "1,250.00", "figures take a decimal point")]
    public async Task An_invoice_that_cannot_be_is_refused_and_kept(string field, string value, string sentence)
    {
        var lot = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var count = await house.FromLedgerAsync(db => db.CostPostings.CountAsync(Stop));

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync("/Costs/Post", new Dictionary<string, string>(Invoice($"lot:{lot}", "Freight", "10.00", "2026-11-20")) { [field] = value }));

        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(value, page.QuerySelector($"[name='{field}']")!.GetAttribute("value"));
        Assert.Equal(count, await house.FromLedgerAsync(db => db.CostPostings.CountAsync(Stop)));
    }

    [Fact]
    public async Task What_a_bill_is_charged_to_is_found_as_it_is_typed()
    {
        var lot = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var name = await house.FromLedgerAsync(db => db.Lots.Where(one => one.Id == lot).Select(one => one.Ref).SingleAsync(Stop));
        var page = await buyer.ReadAsync($"/Costs/Post?on=lot:{lot}");

        var unknown = await TestBrowser.PageAsync(await buyer.SendFormAsync("/Costs/Post", Invoice("no such thing", "Freight", "10.00", "2026-11-20")));
        var posted = await buyer.SendFormAsync("/Costs/Post", Invoice(page.QuerySelector("#Input_OnWhat")!.GetAttribute("value")!, "Freight", "10.00", "2026-11-20"));

        Assert.Contains(page.QuerySelectorAll("#targets option"), option => option.GetAttribute("value")!.StartsWith($"Lot {name} ", StringComparison.Ordinal));
        Assert.Contains("choose it from the list", unknown.QuerySelector("#Input_OnWhat_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("no such thing", unknown.QuerySelector("#Input_OnWhat")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, posted.StatusCode);
    }

    [Theory]
    [InlineData("/Costs?handler=Workbook&sort=-house")]
    [InlineData("/Costs/Value?handler=Workbook&sort=-value")]
    public async Task A_list_of_costs_leaves_as_a_workbook(string address)
    {
        await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var answer = await buyer.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);

        Assert.NotEmpty((await buyer.ReadAsync(address.Replace("handler=Workbook&", "", StringComparison.Ordinal))).QuerySelectorAll("th a[href*='sort=']"));
        Assert.Equal("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", answer.Content.Headers.ContentType!.MediaType);
    }

    /// <summary>18,790 kg (handbook, trade 8 example G) taken in, of which 1,879 kg are released on 5 November.</summary>
    private async Task<Id<Lot>> FillAsync()
    {
        var arrived = await ArrivedLot.FillAsync(house);
        var lot = await house.FromLedgerAsync(db => db.Arrivals.Where(one => one.Id == arrived.Arrival).Select(one => one.LotId).SingleAsync(Stop));
        var warehouse = await house.FromLedgerAsync(async db =>
        {
            var store = new Warehouse($"Quay store {Guid.NewGuid():N}");
            db.Add(store);
            await db.SaveChangesAsync(Stop);
            return store.Id;
        });
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Stock/Receive/{arrived.Arrival}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-03" });
        var released = await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Release", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-05", ["Input.Bags"] = "28", ["Input.WeighedKg"] = "1879" });
        Assert.Equal(HttpStatusCode.Redirect, released.StatusCode);
        return lot;
    }

    private static Dictionary<string, string> Invoice(string on, string stage, string amount, string day) => new()
    {
        ["Input.OnWhat"] = on,
        ["Input.Stage"] = stage,
        ["Input.Amount"] = amount,
        ["Input.Currency"] = "EUR",
        ["Input.On"] = day,
        ["Input.Document"] = $"I-{Guid.NewGuid():N}",
        ["Input.From"] = "Weald Freight",
    };

    private static decimal Amount(JsonElement of, string name) => of.GetProperty(name).GetProperty("amount").GetDecimal();

    private static IReadOnlyList<JsonElement> Late(JsonElement value, Id<Lot> lot) => [.. value.GetProperty("late").EnumerateArray().Where(late => late.GetProperty("lotId").GetGuid() == lot.Value)];

    private static async Task<string> TextAsync(TestBrowser browser, string address) => (await browser.ReadAsync(address)).QuerySelector("main")!.TextContent;
}

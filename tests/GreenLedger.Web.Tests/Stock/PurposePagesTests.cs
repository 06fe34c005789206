using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Stock;

public sealed class PurposePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_purpose_is_named_served_released_for_and_covered()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        var (lot, warehouse) = await StockAsync("PU-1");

        var named = await buyer.SendFormAsync("/Stock/EditPurpose", Form("Winter base", "100"));
        var address = named.Headers.Location!.OriginalString;
        await buyer.SendFormAsync(address, new Dictionary<string, string> { ["LotRef"] = "PU-1" }, "Serve");
        var purpose = await house.FromLedgerAsync(db => db.Purposes.Where(one => one.Name == "Winter base").Select(one => one.Id).SingleAsync(Stop));
        var released = await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Release", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = Today, ["Input.Bags"] = "1", ["Input.WeighedKg"] = "60", ["Input.PurposeId"] = $"{purpose}" });
        await buyer.SendFormAsync($"/Stock/Reserve/{lot}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.WeightKg"] = "40", ["Input.PurposeId"] = $"{purpose}" });

        Assert.Equal(HttpStatusCode.Redirect, released.StatusCode);
        // Worked by hand: 600 − 60 = 540 kg, of which 40 are kept for it; 60 kg in the one week since its first release last 9.0 weeks.
        var list = (await buyer.ReadAsync("/Stock/Purposes")).QuerySelector("main")!.TextContent;
        Assert.Contains("540 kg", list, StringComparison.Ordinal);
        Assert.Contains("9.0 weeks", list, StringComparison.Ordinal);
        Assert.Contains("time to buy", list, StringComparison.Ordinal);
        Assert.Contains("60 kg a week, from the releases of 1 week", (await buyer.ReadAsync(address)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Winter base", (await buyer.ReadAsync($"/Stock/Lot/{lot}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var cover = await buyer.ReadAsync($"/Stock/Cover/{purpose}");
        Assert.NotNull(cover.QuerySelector("[data-spec]"));
        // Nine weeks that use it up, and the 43 after them in one row.
        Assert.Equal(10, cover.QuerySelectorAll("[aria-label='Week by week'] tbody tr").Length);
        Assert.Contains("It runs out about", cover.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_that_is_taken_is_refused_with_what_was_typed_kept()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Stock/EditPurpose", Form("Summer filter", "50"));

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync("/Stock/EditPurpose", Form("summer FILTER", "75")));

        Assert.Contains("There is a purpose of that name already", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("75", page.QuerySelector("#Input_WeeklyUseKg")!.GetAttribute("value"));
    }

    [Fact]
    public async Task The_api_names_a_purpose_and_says_its_year_ahead()
    {
        var script = await house.ScriptAsync(Role.Buyer);

        var added = await script.PostAsJsonAsync("/api/stock/purposes", new { name = "Blend, lift", weeklyUseKg = 20m, blend = "Quay blend", sharePercent = 40m }, Stop);
        var id = (await added.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();
        var weeks = await script.GetFromJsonAsync<JsonElement>($"/api/stock/purposes/{id}/outlook", Stop);
        var refused = await script.PostAsJsonAsync("/api/stock/purposes", new { name = "Blend, base", weeklyUseKg = 20m, blend = "Quay blend" }, Stop);
        var blend = await script.PostAsJsonAsync("/api/stock/calculate/blend", new { parts = new[] { new { name = "a", sharePercent = 60m, costPerKg = 6m, points = 82m }, new { name = "b", sharePercent = 40m, costPerKg = 8.5m, points = 86m } }, replace = "b", costPerKg = 7m, points = 85m }, Stop);
        var cost = await blend.Content.ReadFromJsonAsync<JsonElement>(Stop);

        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        Assert.Equal(52, weeks.GetArrayLength());
        Assert.Equal(20m, weeks[0].GetProperty("missingKg").GetDecimal());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        // Worked by hand: 0.6 × 6.00 + 0.4 × 7.00 = 6.40; 0.6 × 82 + 0.4 × 85 = 83.2.
        Assert.Equal((6.4m, 83.2m), (cost.GetProperty("costPerKg").GetDecimal(), cost.GetProperty("points").GetDecimal()));
    }

    [Fact]
    public async Task A_blend_shows_what_its_components_are()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Stock/EditPurpose", new Dictionary<string, string>(Form("Harbour, base", "50")) { ["Input.Blend"] = "Harbour", ["Input.SharePercent"] = "70" });

        var text = (await buyer.ReadAsync("/Stock/Blends?component=Harbour,%20base")).QuerySelector("main")!.TextContent;

        Assert.Contains("The shares add up to 70", text, StringComparison.Ordinal);
        Assert.Contains("In place of Harbour, base", text, StringComparison.Ordinal);
    }

    private static string Today => DateTime.UtcNow.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static Dictionary<string, string> Form(string name, string kilograms) => new() { ["Input.Name"] = name, ["Input.WeeklyUseKg"] = kilograms };

    private async Task<(Id<Lot> Lot, Id<Warehouse> Warehouse)> StockAsync(string @ref)
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        var (lot, warehouse) = await house.FromLedgerAsync(async db =>
        {
            var (lot, warehouse) = (new Lot(@ref, "Cerro Alto"), new Warehouse($"Store {@ref}"));
            db.AddRange(lot, warehouse);
            await db.SaveChangesAsync(Stop);
            return (lot.Id, warehouse.Id);
        });
        await buyer.SendFormAsync($"/Stock/Add/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Opening", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = Today, ["Input.Bags"] = "10", ["Input.PackedKg"] = "600", ["Input.WeighedKg"] = "600" });
        return (lot, warehouse);
    }
}

using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Trace;

/// <summary>The lot of handbook trade.md section 8, example G, with one bag more missing: 274 bags, 18,790 kg landed of 18,975 kg.</summary>
public sealed class TracePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_release_is_traced_back_to_its_plot_and_the_plot_forward_to_it()
    {
        var (lot, plot) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var release = await house.FromLedgerAsync(db => db.Movements.Where(one => one.LotId == lot && one.Kind == MovementKind.Release).Select(one => one.Id).SingleAsync(Stop));

        var back = (await buyer.ReadAsync($"/Trace/Way/Release/{release}")).QuerySelector("main")!.TextContent;
        var forth = (await buyer.ReadAsync($"/Trace/Way/Plot/{plot}")).QuerySelector("main")!;
        var missing = await buyer.Client.GetAsync($"/Trace/Way/Plot/{Guid.NewGuid()}", Stop);

        Assert.All(["Lote 3", "Finca 1", "Cerro Alto Exports", "R-118", "Quay store"], word => Assert.Contains(word, back, StringComparison.Ordinal));
        Assert.Contains("R-118", forth.TextContent, StringComparison.Ordinal);
        Assert.Contains("274.3 kg", forth.TextContent, StringComparison.Ordinal);
        Assert.NotNull(forth.QuerySelector("svg[role=img] path.trace-line"));
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
    }

    [Fact]
    public async Task Page_and_script_tell_the_same_balance()
    {
        var (lot, _) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Viewer);

        var page = (await buyer.ReadAsync($"/Trace/Way/Lot/{lot}")).QuerySelector("main")!.TextContent;
        var reply = await script.GetFromJsonAsync<JsonElement>($"/api/trace/ways/Lot/{lot}", Stop);

        // Example G: 185 kg are lost on the way; 18,790 − 274.3 = 18,515.7 kg, worked by hand.
        Assert.Contains("−185 kg", page, StringComparison.Ordinal);
        Assert.Contains("18,515.7 kg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("does not close:", page, StringComparison.Ordinal);
        var balance = reply.GetProperty("balances")[0];
        Assert.True(balance.GetProperty("closes").GetBoolean());
        Assert.Equal(18_515.7m, balance.GetProperty("steps").EnumerateArray().Last().GetProperty("afterKg").GetDecimal());
    }

    [Fact]
    public async Task A_lot_whose_plots_nobody_said_is_shown_beside_a_plot_of_its_producer()
    {
        var (lot, plot) = await FillAsync();
        var (other, _) = await FillAsync();
        await house.FromLedgerAsync(async db =>
        {
            var producer = await db.Plots.Where(one => one.Id == plot).Select(one => one.ProducerId).SingleAsync(Stop);
            var known = await db.Lots.SingleAsync(one => one.Id == other, Stop);
            known.Grow("CO", null, producer, null, null, null);
            db.RemoveRange(await db.DueDiligences.Where(one => one.LotId == other).ToListAsync(Stop));
            return await db.SaveChangesAsync(Stop);
        });
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync($"/Trace/Way/Plot/{plot}");

        var said = Assert.Single(page.QuerySelectorAll(".note-caution a"));
        Assert.EndsWith($"/Trace/Way/Lot/{other}", said.GetAttribute("href"), StringComparison.Ordinal);
        Assert.NotEqual(lot, other);
    }

    private async Task<(Id<Lot> Lot, Id<Plot> Plot)> FillAsync()
    {
        var arrived = await ArrivedLot.FillAsync(house);
        var lot = await house.FromLedgerAsync(db => db.Arrivals.Where(one => one.Id == arrived.Arrival).Select(one => one.LotId).SingleAsync(Stop));
        var (warehouse, plot) = await house.FromLedgerAsync(async db =>
        {
            var store = new Warehouse($"Quay store {Guid.NewGuid():N}");
            var producer = new Producer("Finca 1", ProducerKind.Farm, "CO");
            // Handbook, trade 7.4: the point of its example.
            var field = new Plot(producer.Id, "Lote 3", "CO", PlotShape.Point(-75.899m, 2.001m), 2.5m);
            var held = new DueDiligence(lot);
            held.GrewOn([field.Id]);
            db.AddRange(store, producer, field, held);
            await db.SaveChangesAsync(Stop);
            return (store.Id, field.Id);
        });
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Stock/Receive/{arrived.Arrival}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-03" });
        await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Release", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-05", ["Input.Bags"] = "4", ["Input.WeighedKg"] = "274.3", ["Input.Document"] = "R-118" });
        return (lot, plot);
    }
}

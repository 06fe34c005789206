using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Trace;

public sealed class RecallPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_recall_is_started_ended_listed_and_printed()
    {
        var lot = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var empty = await buyer.SendFormAsync($"/Trace/NewRecall/Lot/{lot}", new Dictionary<string, string> { ["Input.Reason"] = " " });
        var started = await buyer.SendFormAsync($"/Trace/NewRecall/Lot/{lot}", new Dictionary<string, string> { ["Input.Reason"] = "Yearly exercise" });
        var address = started.Headers.Location!.OriginalString;
        var running = (await buyer.ReadAsync(address)).QuerySelector("main")!.TextContent;
        var ended = await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Learned"] = "All found" });
        var after = (await buyer.ReadAsync(address)).QuerySelector("main")!.TextContent;
        var list = (await buyer.ReadAsync("/Trace/Recalls")).QuerySelector("main")!.TextContent;
        var printed = await buyer.Client.GetAsync(address + "?handler=Pdf", Stop);

        Assert.Contains("Why is it held?", (await TestBrowser.PageAsync(empty)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("the clock runs", running, StringComparison.Ordinal);
        Assert.Contains("R-118", running, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);
        Assert.All(["All found", "100 %", "food authority"], word => Assert.Contains(word, after, StringComparison.Ordinal));
        Assert.Contains("Yearly exercise", list, StringComparison.Ordinal);
        Assert.Equal(("application/pdf", "%PDF"), (printed.Content.Headers.ContentType!.MediaType, Encoding.ASCII.GetString((await printed.Content.ReadAsByteArrayAsync(Stop))[..4])));
    }

    /// <summary>What was found stays, whatever moves afterwards.</summary>
    [Fact]
    public async Task A_script_holds_a_recall_by_the_same_rules_and_what_it_found_stays()
    {
        var lot = await FillAsync();
        using var script = await house.ScriptAsync(Role.Buyer);
        using var viewer = await house.ScriptAsync(Role.Viewer);

        var refused = await viewer.PostAsJsonAsync("/api/trace/recalls", new { from = "Lot", id = lot.Value, reason = "Exercise" }, Stop);
        var started = await (await script.PostAsJsonAsync("/api/trace/recalls", new { from = "Lot", id = lot.Value, reason = "Exercise" }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);
        var id = started.GetProperty("id").GetGuid();
        var ended = await script.PostAsJsonAsync($"/api/trace/recalls/{id}/end", new { learned = "Quick" }, Stop);
        var again = await script.PostAsJsonAsync($"/api/trace/recalls/{id}/end", new { learned = "Quicker" }, Stop);
        var warehouse = await house.FromLedgerAsync(db => db.Holdings.Where(one => one.LotId == lot).Select(one => one.WarehouseId).SingleAsync(Stop));
        await script.PostAsJsonAsync("/api/stock/movements", new { lotId = lot.Value, warehouseId = warehouse.Value, kind = "Release", bags = 1, weighedKg = 60m, on = "2026-11-20", document = "R-119" }, Stop);
        var found = (await viewer.GetFromJsonAsync<JsonElement>($"/api/trace/recalls/{id}", Stop)).GetProperty("findings");

        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.Equal(HttpStatusCode.OK, ended.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        // Example G of the handbook, trade 8: 18,790 kg landed; 274.3 kg were released before the recall, 60 kg after it.
        Assert.Equal((18_790m, 100m), (found.GetProperty("receivedKg").GetDecimal(), found.GetProperty("foundPercent").GetDecimal()));
        Assert.Equal([274.3m], found.GetProperty("lines").EnumerateArray().Where(line => line.GetProperty("kind").GetString() == "Release").Select(line => line.GetProperty("weightKg").GetDecimal()));
    }

    [Fact]
    public async Task A_script_finds_where_to_start_and_reads_the_report()
    {
        var lot = await FillAsync();
        using var script = await house.ScriptAsync(Role.Buyer);
        var name = await house.FromLedgerAsync(db => db.Lots.Where(one => one.Id == lot).Select(one => one.Ref).SingleAsync(Stop));

        var starts = await script.GetFromJsonAsync<JsonElement>($"/api/trace/starts?search={Uri.EscapeDataString(name)}", Stop);
        var recall = await (await script.PostAsJsonAsync("/api/trace/recalls", new { from = "lot", id = lot.Value, reason = "Exercise" }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);
        var report = await script.GetAsync(new Uri($"/api/trace/recalls/{recall.GetProperty("id").GetString()}/report", UriKind.Relative), Stop);

        Assert.Contains(starts.EnumerateArray(), one => one.GetProperty("id").GetGuid() == lot.Value && one.GetProperty("from").GetString() == "lot");
        Assert.Equal(("application/pdf", "%PDF"), (report.Content.Headers.ContentType!.MediaType, Encoding.ASCII.GetString((await report.Content.ReadAsByteArrayAsync(Stop))[..4])));
    }

    [Fact]
    public async Task A_trace_is_exported_by_the_names_of_the_house()
    {
        var lot = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Viewer);

        var wrong = await buyer.SendFormAsync("/Trace/Names", new Dictionary<string, string> { ["Input.WebAddress"] = "trace.example" });
        await buyer.SendFormAsync("/Trace/Names", new Dictionary<string, string> { ["Input.WebAddress"] = "https://trace.sorrel-roasters.example" });
        var file = await buyer.Client.GetAsync($"/Trace/Way/Lot/{lot}?handler=Epcis", Stop);
        var reply = await script.GetFromJsonAsync<JsonElement>($"/api/trace/ways/Lot/{lot}/epcis", Stop);

        Assert.Contains("in full", (await TestBrowser.PageAsync(wrong)).QuerySelector("#Input_WebAddress_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("application/ld+json", file.Content.Headers.ContentType!.MediaType);
        var events = reply.GetProperty("epcisBody").GetProperty("eventList").EnumerateArray().ToList();
        Assert.Contains(events, told => told.GetProperty("type").GetString() == "TransformationEvent");
        Assert.Equal($"https://trace.sorrel-roasters.example/lot/{lot}", events[0].GetProperty("quantityList")[0].GetProperty("epcClass").GetString());
    }

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
        await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Release", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-05", ["Input.Bags"] = "4", ["Input.WeighedKg"] = "274.3", ["Input.Document"] = "R-118" });
        return lot;
    }
}

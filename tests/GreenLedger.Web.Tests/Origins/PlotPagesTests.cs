using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Origins;

public sealed class PlotPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    /// <summary>Polygon A of handbook, trade 7.6: 4.920707 ha.</summary>
    private const string PolygonA = """{"type":"Polygon","coordinates":[[[-75.9,2],[-75.898,2],[-75.898,2.002],[-75.9,2.002],[-75.9,2]]]}""";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Plots_come_from_a_file_stand_for_a_lot_and_leave_as_the_published_GeoJSON()
    {
        var (producer, lot) = await FillAsync("Finca Norte");
        var buyer = await house.BrowserAsync(Role.Buyer);

        var loaded = await LoadAsync(buyer, producer, Feature("Lote 7", PolygonA));
        var plot = await house.FromLedgerAsync(db => db.Plots.Where(one => one.ProducerId == producer).Select(one => one.Id).SingleAsync(Stop));
        var saved = await buyer.SendFormAsync($"/Offers/Diligence/{lot}", new Dictionary<string, string> { ["Input.Plots"] = $"{plot}", ["Input.ProducedFrom"] = "2026-10-01", ["Input.StatementReference"] = "26CO12345678" });

        Assert.Equal(HttpStatusCode.Redirect, loaded.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.Contains("4.9207 ha", (await buyer.ReadAsync($"/Origins/Plots/{producer}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var missing = (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector(".note-caution")!.TextContent;
        Assert.DoesNotContain("plots that it was grown on", missing, StringComparison.Ordinal);
        Assert.Contains("evidence that the land was not deforested", missing, StringComparison.Ordinal);
        var file = JsonSerializer.Deserialize<JsonElement>(await buyer.Client.GetStringAsync($"/Offers/Diligence/{lot}?handler=GeoJson", Stop));
        var properties = file.GetProperty("features")[0].GetProperty("properties");
        Assert.Equal(("Finca Norte", "CO", "Lote 7"), (properties.GetProperty("ProducerName").GetString(), properties.GetProperty("ProducerCountry").GetString(), properties.GetProperty("ProductionPlace").GetString()));
    }

    [Fact]
    public async Task A_file_with_one_plot_that_cannot_be_adds_none_and_says_which()
    {
        var (producer, _) = await FillAsync("Finca Sur");
        var buyer = await house.BrowserAsync(Role.Buyer);

        var refused = await LoadAsync(buyer, producer, Feature("Lote 1", PolygonA), Feature("Lote 2", """{"type":"LineString","coordinates":[[1,2],[3,4]]}"""));

        Assert.Contains("Plot 2: A LineString is no plot", (await TestBrowser.PageAsync(refused)).QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.False(await house.FromLedgerAsync(db => db.Plots.AnyAsync(one => one.ProducerId == producer, Stop)));
    }

    [Fact]
    public async Task A_plot_that_a_lot_grew_on_stays()
    {
        var (producer, lot) = await FillAsync("Finca Este");
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Origins/Plots/{producer}", new Dictionary<string, string> { ["Input.Name"] = "Lote 3", ["Input.CountryCode"] = "CO", ["Input.Longitude"] = "-75.899001", ["Input.Latitude"] = "2.001001", ["Input.Hectares"] = "2.5" });
        var plot = await house.FromLedgerAsync(db => db.Plots.Where(one => one.ProducerId == producer).Select(one => one.Id).SingleAsync(Stop));
        await buyer.SendFormAsync($"/Offers/Diligence/{lot}", new Dictionary<string, string> { ["Input.Plots"] = $"{plot}" });

        var refused = await buyer.SendFormAsync($"/Origins/Plots/{producer}", new Dictionary<string, string>(), "Remove");

        Assert.Contains("take the plot off the lot first", (await TestBrowser.PageAsync(refused)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Plots.CountAsync(one => one.ProducerId == producer, Stop)));
    }

    [Fact]
    public async Task A_script_checks_plots_without_storing_them()
    {
        using var script = await house.ScriptAsync(Role.Viewer);
        var before = await house.FromLedgerAsync(db => db.Plots.CountAsync(Stop));

        var answer = await script.PostAsync("/api/origins/calculate/plot", new StringContent(File(Feature("A", PolygonA), Feature("B", """{"type":"Point","coordinates":[12.5,108]}""")), Encoding.UTF8, "application/geo+json"), Stop);

        var read = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal(4.920707m, Math.Round(read.GetProperty("plots")[0].GetProperty("hectares").GetDecimal(), 6));
        Assert.Contains("longitude comes first", read.GetProperty("problems")[0].GetProperty("reason").GetString(), StringComparison.Ordinal);
        Assert.Equal(before, await house.FromLedgerAsync(db => db.Plots.CountAsync(Stop)));
    }

    private static string Feature(string name, string geometry) =>
        $$"""{"type":"Feature","properties":{"ProductionPlace":"{{name}}","ProducerCountry":"CO"},"geometry":{{geometry}}}""";

    private static string File(params string[] features) => $$"""{"type":"FeatureCollection","features":[{{string.Join(',', features)}}]}""";

    private static Task<HttpResponseMessage> LoadAsync(TestBrowser buyer, Id<Producer> producer, params string[] features) =>
        buyer.SendFormAsync($"/Origins/Plots/{producer}", new Dictionary<string, string>(), "Load", [("file", "plots.geojson", Encoding.UTF8.GetBytes(File(features)))]);

    private async Task<(Id<Producer> Producer, Id<Lot> Lot)> FillAsync(string name)
    {
        await house.OpenHouseAsync();
        return await house.FromLedgerAsync(async db =>
        {
            var producer = new Producer(name, ProducerKind.Farm, "CO");
            var lot = new Lot($"{name[^3..]}-1", $"{name} washed", null);
            db.AddRange(producer, lot);
            db.Entry(lot).Property(nameof(Lot.ProducerId)).CurrentValue = producer.Id;
            await db.SaveChangesAsync(Stop);
            return (producer.Id, lot.Id);
        });
    }
}

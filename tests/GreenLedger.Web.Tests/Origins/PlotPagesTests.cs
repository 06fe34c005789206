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
    private const string PolygonA = """{"type":"Polygon","coordinates":[[[-75.900000,2.000000],[-75.898000,2.000000],[-75.898000,2.002000],[-75.900000,2.002000],[-75.900000,2.000000]]]}""";

    /// <summary>The same, as somebody types it.</summary>
    private const string CornersA = "-75.900000, 2.000000\n-75.898000, 2.000000\n-75.898000, 2.002000\n-75.900000, 2.002000\n-75.900000, 2.000000";

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
    public async Task A_plot_that_a_lot_grew_on_stays()
    {
        var (producer, lot) = await FillAsync("Finca Este");
        var buyer = await house.BrowserAsync(Role.Buyer);
        await DrawAsync(buyer, producer, "Lote 3", "-75.899001, 2.001001", "2.5");
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

    [Fact]
    public async Task A_plot_that_is_typed_is_added_and_shown_on_the_map()
    {
        var (producer, _) = await FillAsync("Finca Alta");
        var buyer = await house.BrowserAsync(Role.Buyer);

        var added = await DrawAsync(buyer, producer, "Lote 7", CornersA, "");

        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        var page = await buyer.ReadAsync($"/Origins/Plots/{producer}");
        // Polygon A of handbook, trade 7.6: 4.920707 ha.
        Assert.Contains("4.9207 ha", page.QuerySelector("table")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Lote 7", page.QuerySelector("svg[role=img] .plot-shape title")!.TextContent);
        Assert.NotNull(page.QuerySelector("svg[role=img] .plot-here"));
        Assert.Empty(page.QuerySelectorAll(".note-caution"));
        var country = await buyer.ReadAsync($"/Origins/Plots/{producer}?at=-73,4&across=2500");
        Assert.NotNull(country.QuerySelector("svg .plot-mark-square"));
        Assert.Contains("Brazil", country.QuerySelectorAll("svg .plot-land-name").Select(name => name.TextContent));
        // Half the Earth, with countries whose coarse outlines cross themselves at the edge of the view.
        Assert.NotNull((await buyer.ReadAsync($"/Origins/Plots/{producer}?at=0,0&across=20000")).QuerySelector("svg[role=img]"));
    }

    [Theory]
    [InlineData("-75.9, 2\n-75.898, 2\n-75.898, 2.002\n-75.9, 2.002", "is open")]
    [InlineData("-75.9, two", "is no position")]
    public async Task Corners_that_are_no_plot_are_refused_beside_their_field_and_kept(string corners, string why)
    {
        var (producer, _) = await FillAsync($"Finca {why}");
        var buyer = await house.BrowserAsync(Role.Buyer);

        var refused = await TestBrowser.PageAsync(await DrawAsync(buyer, producer, "Lote 8", corners, "1.25"));

        Assert.Contains(why, refused.QuerySelector(".field-validation-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(corners, refused.QuerySelector("textarea")!.TextContent.ReplaceLineEndings("\n").Trim());
        Assert.Equal(("Lote 8", "1.25"), (refused.QuerySelector("[name='Input.Name']")!.GetAttribute("value"), refused.QuerySelector("[name='Input.Hectares']")!.GetAttribute("value")));
        Assert.False(await house.FromLedgerAsync(db => db.Plots.AnyAsync(one => one.ProducerId == producer, Stop)));
    }

    [Fact]
    public async Task Without_script_the_map_moves_keeps_what_is_typed_and_tells_the_area_and_the_doubts()
    {
        var (producer, _) = await FillAsync("Finca Baja");
        var buyer = await house.BrowserAsync(Role.Buyer);
        await DrawAsync(buyer, producer, "Lote 7", CornersA, "");
        var page = await buyer.ReadAsync($"/Origins/DrawPlot/{producer}?at=-75.899,2.001&across=4");

        // The same polygon half its width farther east: they share half of 4.920707 ha.
        var east = CornersA.Replace("-75.900000,", "-75.899000,", StringComparison.Ordinal).Replace("-75.898000,", "-75.897000,", StringComparison.Ordinal);
        var moved = await TestBrowser.PageAsync(await buyer.SendStandingAsync(
            page, "", new Dictionary<string, string> { ["Input.Name"] = "", ["Input.Corners"] = east, ["move"] = "nearer" }, to: $"/Origins/DrawPlot/{producer}?handler=Look"));

        Assert.Equal(("-75.899,2.001", "2"), (moved.QuerySelector("[name=At]")!.GetAttribute("value"), moved.QuerySelector("[name=Across]")!.GetAttribute("value")));
        Assert.Equal(east, moved.QuerySelector("textarea")!.TextContent.ReplaceLineEndings("\n").Trim());
        var judged = moved.QuerySelector("#judged")!.TextContent;
        Assert.Contains("A polygon of 4 corners: 4.9207 ha", judged, StringComparison.Ordinal);
        Assert.Contains("This plot and Lote 7 overlap by 2.4604 ha.", judged, StringComparison.Ordinal);
        Assert.Empty(moved.QuerySelectorAll(".field-validation-error"));
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Plots.CountAsync(one => one.ProducerId == producer, Stop)));
    }

    [Fact]
    public async Task A_plot_whose_numbers_are_exchanged_is_told_so_where_it_is_drawn_shown_sent_and_stands_for_a_lot()
    {
        var (producer, lot) = await FillAsync("Finca Mar");
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Viewer);

        // The point of the example in handbook, trade 7.4, with its numbers the wrong way round, which lies in Antarctica.
        var added = await DrawAsync(buyer, producer, "Lote 4", "2.001000, -75.899000", "2.5");
        var plot = await house.FromLedgerAsync(db => db.Plots.Where(one => one.ProducerId == producer).Select(one => one.Id).SingleAsync(Stop));
        await buyer.SendFormAsync($"/Offers/Diligence/{lot}", new Dictionary<string, string> { ["Input.Plots"] = $"{plot}" });
        var answer = await script.PostAsync("/api/origins/calculate/plot", new StringContent(File(Feature("Lote 4", """{"type":"Point","coordinates":[2.001000,-75.899000]}""")), Encoding.UTF8, "application/geo+json"), Stop);

        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        const string said = "Longitude and latitude of Lote 4 look swapped: it is said to lie in CO and does so at longitude -75.899, latitude 2.001";
        Assert.Contains(said, (await buyer.ReadAsync($"/Origins/Plots/{producer}")).QuerySelector(".note-caution")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(said, (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var doubt = (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("doubts")[0].GetString();
        Assert.StartsWith(said, doubt, StringComparison.Ordinal);
        Assert.EndsWith("Longitude comes first.", doubt, StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> DrawAsync(TestBrowser buyer, Id<Producer> producer, string name, string corners, string hectares) => buyer.SendFormAsync(
        $"/Origins/DrawPlot/{producer}", new Dictionary<string, string> { ["Input.Name"] = name, ["Input.CountryCode"] = "CO", ["Input.Corners"] = corners, ["Input.Hectares"] = hectares });

    private static string Feature(string name, string geometry) =>
        $$"""{"type":"Feature","properties":{"ProductionPlace":"{{name}}","ProducerCountry":"CO"},"geometry":{{geometry}}}""";

    private static string File(params string[] features) => $$"""{"type":"FeatureCollection","features":[{{string.Join(',', features)}}]}""";

    /// <summary>Sends a file, looks at it and keeps what is proposed.</summary>
    private static async Task<HttpResponseMessage> LoadAsync(TestBrowser buyer, Id<Producer> producer, params string[] features)
    {
        var sent = await buyer.SendFormAsync($"/Origins/Plots/{producer}", new Dictionary<string, string>(), "Read", [("Input.File", "plots.geojson", Encoding.UTF8.GetBytes(File(features)))]);
        return await buyer.SendFormAsync(sent.Headers.Location!.OriginalString, new Dictionary<string, string>(), "Keep");
    }

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

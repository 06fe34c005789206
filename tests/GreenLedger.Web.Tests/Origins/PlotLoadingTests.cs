using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using AngleSharp.Html.Dom;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Origins;

/// <summary>Plots from a file: read, looked at, and only then kept; by page and by script.</summary>
public sealed class PlotLoadingTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    /// <summary>Polygon A of handbook, trade 7.6: 4.920707 ha.</summary>
    private const string PolygonA = """{"type":"Polygon","coordinates":[[[-75.900000,2.000000],[-75.898000,2.000000],[-75.898000,2.002000],[-75.900000,2.002000],[-75.900000,2.000000]]]}""";

    /// <summary>The same half its width farther east: they share half of 4.920707 ha.</summary>
    private const string East = """{"type":"Polygon","coordinates":[[[-75.899000,2.000000],[-75.897000,2.000000],[-75.897000,2.002000],[-75.899000,2.002000],[-75.899000,2.000000]]]}""";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_file_is_looked_at_before_any_plot_is_kept_and_single_ones_are_left_out()
    {
        var producer = await ProducerAsync("Finca Vista");
        var buyer = await house.BrowserAsync(Role.Buyer);

        var preview = await SendAsync(buyer, producer, Feature("Lote 1", PolygonA), Feature("Lote 2", East), Feature("Lote 3", PolygonA), Feature("Lote 4", """{"type":"Point","coordinates":[-75.95,2.05]}"""), Feature("Lote 5", """{"type":"LineString","coordinates":[[1,2],[3,4]]}"""));

        Assert.Empty(await NamesAsync(producer));
        Assert.Equal(["5", "A LineString is no plot: send points or polygons."], Assert.Single(Rows(preview.Page, "refused")));
        var rows = Rows(preview.Page, "taken").ToDictionary(row => row[1]);
        Assert.Equal("4.9207 ha", rows["1"][5]);
        Assert.Contains("Lote 1 and Lote 2 overlap by 2.4604 ha.", rows["2"][2], StringComparison.Ordinal);
        Assert.Contains("Lote 1 and Lote 3 are the same place.", rows["3"][2], StringComparison.Ordinal);
        // Two decimals: a hundredth of 111.195 km.
        Assert.Contains("Lote 4 has a coordinate of 2 decimals, steps of about 1,112 m on the ground.", rows["4"][2], StringComparison.Ordinal);
        Assert.Equal(["3"], Ticked(preview.Page));

        var kept = await buyer.SendStandingAsync(preview.Page, preview.Address, new Dictionary<string, string> { ["Input.Leave"] = "2" }, "Keep");

        // The one box that is sent is ticked, all others are not: rows 1, 3 and 4 are kept.
        Assert.Equal(HttpStatusCode.Redirect, kept.StatusCode);
        Assert.Equal(["Lote 1", "Lote 3", "Lote 4"], await NamesAsync(producer));
        var page = (await buyer.ReadAsync($"/Origins/Plots/{producer}")).QuerySelector("main")!.TextContent;
        Assert.Contains("3 plots are added, 1 left out, 1 refused.", page, StringComparison.Ordinal);
        Assert.Contains("Lote 4 has a coordinate of 2 decimals", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_held_is_left_out_when_a_file_comes_twice()
    {
        var producer = await ProducerAsync("Finca Dos");
        var buyer = await house.BrowserAsync(Role.Buyer);
        var first = await SendAsync(buyer, producer, Feature("Lote 1", PolygonA));
        await buyer.SendStandingAsync(first.Page, first.Address, new Dictionary<string, string>(), "Keep");

        var again = await SendAsync(buyer, producer, Feature("Lote 1", PolygonA));
        var refused = await TestBrowser.PageAsync(await buyer.SendStandingAsync(again.Page, again.Address, new Dictionary<string, string>(), "Keep"));

        Assert.Equal(["1"], Ticked(again.Page));
        Assert.Contains("Every plot is left out", refused.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["Lote 1"], await NamesAsync(producer));
    }

    [Fact]
    public async Task Land_that_another_producer_has_is_told_with_its_name()
    {
        var (norte, sur) = (await ProducerAsync("Finca Lindero Norte"), await ProducerAsync("Finca Lindero Sur"));
        using var script = await house.ScriptAsync(Role.Buyer);
        var there = PolygonA.Replace("-75.9", "-73.9", StringComparison.Ordinal).Replace("-75.898", "-73.898", StringComparison.Ordinal);
        await LoadAsync(script, norte, File(Feature("Lote 1", there)), true);

        var asked = await LoadAsync(script, sur, File(Feature("Lote 9", there)), false);

        var plot = asked.GetProperty("plots")[0];
        Assert.Equal("Lote 9 is the same place as Lote 1 of Finca Lindero Norte: two producers claim it.", plot.GetProperty("doubts")[0].GetString());
        Assert.True(plot.GetProperty("taken").GetBoolean());
    }

    [Theory]
    [InlineData("""{"type":"FeatureCollection","features":[]}""", "The file holds no plot")]
    [InlineData("a,b\n1,2\n", "Send GeoJSON, or CSV")]
    [InlineData("", "Choose a file of plots")]
    public async Task What_is_no_file_of_plots_is_refused_with_a_sentence(string text, string why)
    {
        var producer = await ProducerAsync("Finca Nada");
        var buyer = await house.BrowserAsync(Role.Buyer);

        var answer = await TestBrowser.PageAsync(await PostAsync(buyer, producer, text));

        Assert.Contains(why, answer.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lot_is_told_that_its_plot_was_rounded()
    {
        var producer = await ProducerAsync("Finca Media");
        var lot = new Lot("Media-1", "Media washed");
        lot.Grow("CO", null, producer, null, null, null);
        using var script = await house.ScriptAsync(Role.Buyer);
        var added = await script.PostAsJsonAsync($"/api/origins/producers/{producer}/plots", new { name = "Lote 9", corners = "-75.9, 2.0" }, Stop);
        var reply = await added.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var plot = new Id<Plot>(reply.GetProperty("plot").GetProperty("id").GetGuid());
        var held = new DueDiligence(lot.Id);
        held.GrewOn([plot]);
        await house.FromLedgerAsync(async db => { db.AddRange(lot, held); return await db.SaveChangesAsync(Stop); });

        const string said = "Lote 9 has a coordinate of 1 decimal, steps of about 11,120 m on the ground. The rules ask for six decimals";
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        Assert.StartsWith(said, reply.GetProperty("doubts")[0].GetString(), StringComparison.Ordinal);
        Assert.Contains(said, (await (await house.BrowserAsync(Role.Buyer)).ReadAsync($"/Offers/Diligence/{lot.Id}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var open = await script.GetFromJsonAsync<JsonElement>($"/api/offers/lots/{lot.Id}/diligence", Stop);
        Assert.Contains(open.GetProperty("toLookAt").EnumerateArray(), one => one.GetString()!.StartsWith(said, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await script.DeleteAsync(new Uri($"/api/origins/plots/{plot}", UriKind.Relative), Stop)).StatusCode);
    }

    [Fact]
    public async Task A_script_looks_keeps_lists_exports_and_removes()
    {
        var producer = await ProducerAsync("Finca Tres");
        using var script = await house.ScriptAsync(Role.Buyer);
        var file = File(Feature("Lote 1", PolygonA), Feature("Lote 2", PolygonA), Feature("Lote 3", """{"type":"Point","coordinates":[-75.950001,2.050001]}"""), Feature("B", """{"type":"Point","coordinates":[12.5,108]}"""));

        var asked = await LoadAsync(script, producer, file, false);
        Assert.Empty(await NamesAsync(producer));
        var stored = await LoadAsync(script, producer, file, true);

        Assert.Equal([(1, true, false), (2, false, true), (3, true, false)], asked.GetProperty("plots").EnumerateArray().Select(one => (one.GetProperty("row").GetInt32(), one.GetProperty("taken").GetBoolean(), one.GetProperty("isHeld").GetBoolean())));
        Assert.Equal(4, asked.GetProperty("refused")[0].GetProperty("row").GetInt32());
        Assert.True(stored.GetProperty("stored").GetBoolean());
        Assert.Equal(["Lote 1", "Lote 3"], await NamesAsync(producer));
        var listed = await script.GetFromJsonAsync<JsonElement>($"/api/origins/producers/{producer}/plots/held", Stop);
        var last = listed.GetProperty("plots")[1].GetProperty("id").GetGuid();
        Assert.Equal(HttpStatusCode.NoContent, (await script.DeleteAsync(new Uri($"/api/origins/plots/{last}", UriKind.Relative), Stop)).StatusCode);
        Assert.Equal(["Lote 1"], await NamesAsync(producer));
        Assert.Contains("[-75.900000,2.000000]", await script.GetStringAsync($"/api/origins/producers/{producer}/plots", Stop), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SendLoadAsync(script, producer, file, true, "4")).StatusCode);
    }

    /// <summary>Overlaps and one place twice within the one file that is sent.</summary>
    [Fact]
    public async Task The_calculator_tells_what_plots_of_one_file_share_and_how_they_were_rounded()
    {
        using var script = await house.ScriptAsync(Role.Viewer);
        var file = File(Feature("A", PolygonA), Feature("B", East), Feature("C", PolygonA), Feature("D", """{"type":"Point","coordinates":[-46.57,-20.23]}"""));

        var answer = await script.PostAsync("/api/origins/calculate/plot", new StringContent(file, Encoding.UTF8, "application/geo+json"), Stop);

        var read = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var doubts = read.GetProperty("doubts").EnumerateArray().Select(one => one.GetString()!).ToList();
        Assert.Contains("A and B overlap by 2.4604 ha.", doubts);
        Assert.Contains("A and C are the same place.", doubts);
        Assert.Contains(doubts, one => one.StartsWith("D has a coordinate of 2 decimals, steps of about 1,112 m on the ground.", StringComparison.Ordinal));
        Assert.Equal(2, read.GetProperty("plots")[0].GetProperty("doubts").GetArrayLength());
        Assert.Equal(2, read.GetProperty("plots")[3].GetProperty("fewestDecimals").GetInt32());
    }

    private static async Task<(IHtmlDocument Page, string Address)> SendAsync(TestBrowser buyer, Id<Producer> producer, params string[] features)
    {
        var address = (await PostAsync(buyer, producer, File(features))).Headers.Location!.OriginalString;
        return (await buyer.ReadAsync(address), address);
    }

    private static Task<HttpResponseMessage> PostAsync(TestBrowser buyer, Id<Producer> producer, string text) => buyer.SendFormAsync(
        $"/Origins/LoadPlots/{producer}", new Dictionary<string, string>(), "Read", text.Length == 0 ? [] : [("Input.File", "plots.geojson", Encoding.UTF8.GetBytes(text))]);

    private static async Task<JsonElement> LoadAsync(HttpClient script, Id<Producer> producer, string file, bool isCommitted)
    {
        using var answer = await SendLoadAsync(script, producer, file, isCommitted, null);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }

    private static async Task<HttpResponseMessage> SendLoadAsync(HttpClient script, Id<Producer> producer, string file, bool isCommitted, string? rows)
    {
        using var form = new MultipartFormDataContent { { new ByteArrayContent(Encoding.UTF8.GetBytes(file)), "file", "plots.geojson" }, { new StringContent(isCommitted ? "true" : "false"), "commit" } };
        if (rows is not null)
        {
            form.Add(new StringContent(rows), "rows");
        }

        return await script.PostAsync(new Uri($"/api/origins/producers/{producer}/plots/load", UriKind.Relative), form, Stop);
    }

    private static List<string[]> Rows(IHtmlDocument page, string heading) =>
        [.. page.QuerySelectorAll($"[aria-labelledby={heading}] tbody tr").Select(row => row.Children.Select(cell => cell.TextContent.Trim()).ToArray())];

    private static List<string> Ticked(IHtmlDocument page) =>
        [.. page.QuerySelectorAll("[name='Input.Leave']").OfType<IHtmlInputElement>().Where(box => box.IsChecked).Select(box => box.Value)];

    private static string Feature(string name, string geometry) =>
        $$"""{"type":"Feature","properties":{"ProductionPlace":"{{name}}","ProducerCountry":"CO"},"geometry":{{geometry}}}""";

    private static string File(params string[] features) => $$"""{"type":"FeatureCollection","features":[{{string.Join(',', features)}}]}""";

    private Task<List<string>> NamesAsync(Id<Producer> producer) =>
        house.FromLedgerAsync(db => db.Plots.Where(one => one.ProducerId == producer).OrderBy(one => one.Name).Select(one => one.Name).ToListAsync(Stop));

    private async Task<Id<Producer>> ProducerAsync(string name)
    {
        await house.OpenHouseAsync();
        return await house.FromLedgerAsync(async db =>
        {
            var producer = new Producer(name, ProducerKind.Farm, "CO");
            db.Add(producer);
            await db.SaveChangesAsync(Stop);
            return producer.Id;
        });
    }
}

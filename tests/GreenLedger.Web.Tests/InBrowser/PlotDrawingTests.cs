using System.Text.Json;
using System.Text.RegularExpressions;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using NetTopologySuite.Features;
using NetTopologySuite.IO.Converters;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>In a real browser: a plot is drawn with the mouse, added, and read back from its GeoJSON by a reader that is not ours.</summary>
public sealed class PlotDrawingTests(Chromium chromium)
{
    private static readonly JsonSerializerOptions GeoJson = new() { Converters = { new GeoJsonConverterFactory() } };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Polygon A of handbook, trade 7.6: 4.920707 ha.</summary>
    private static readonly (double Longitude, double Latitude)[] PolygonA = [(-75.9, 2), (-75.898, 2), (-75.898, 2.002), (-75.9, 2.002)];

    [Fact]
    public async Task A_polygon_drawn_with_the_mouse_has_its_area_and_leaves_as_GeoJSON()
    {
        await using var house = new HouseFixture();
        house.Serve();
        var producer = await ProducerAsync(house);
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);

        await window.GoAsync($"/Origins/DrawPlot/{producer}");
        await GoToPolygonAsync(window);
        await window.Page.Locator("[name='Input.Name']").FillAsync("Lote 7");
        await ClickAsync(window, (-75.8985, 2.0005));
        await window.Page.GetByText("Undo the last corner").ClickAsync();
        foreach (var corner in PolygonA)
        {
            await ClickAsync(window, corner);
        }

        Assert.Equal(4, (await LinesAsync(window)).Length);
        await ClickAsync(window, PolygonA[0]);
        var lines = await LinesAsync(window);
        await window.Page.Locator("#judged").GetByText("A polygon of 4 corners").WaitForAsync();
        await Pictures.TakeAsync(window, "plot");
        Assert.Empty(await window.ViolationsAsync());
        await window.Page.GetByText("Add the plot").ClickAsync();
        await window.Page.WaitForURLAsync(url => url.Contains("/Origins/Plots/", StringComparison.Ordinal));

        Assert.Equal((5, lines[0]), (lines.Length, lines[^1]));
        Assert.All(lines, line => Assert.Matches(@"^-?\d+\.\d{6}, -?\d+\.\d{6}$", line));
        // A click is true to a pixel, less than a metre here; a metre more or less on each side of 222 m is 1.8 % of the area.
        var hectares = double.Parse(Regex.Match(await window.Page.Locator("table tbody").InnerTextAsync(), @"([\d.]+) ha").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(hectares / 4.920707, 0.982, 1.018);
        Assert.Empty(await window.ViolationsAsync());
        var plot = Assert.Single(await ExportedAsync(window, house.ClientOptions.BaseAddress, producer.ToString()));
        Assert.Equal(("Polygon", "Lote 7"), (plot.Geometry.GeometryType, (string)plot.Attributes["ProductionPlace"]));
        Assert.All(PolygonA, corner => Assert.Contains(plot.Geometry.Coordinates, one => Sphere.Kilometres(one, new(corner.Longitude, corner.Latitude)) < 0.002));
        Assert.Empty(window.Complaints());
    }

    /// <summary>Each plot is seen with its doubts, wide and on a phone, one is left out, and only then are the others kept.</summary>
    [Fact]
    public async Task A_file_is_looked_at_before_its_plots_are_kept()
    {
        await using var house = new HouseFixture();
        house.Serve();
        var producer = await ProducerAsync(house);
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);
        const string lines = "name,longitude,latitude,hectares\nLote 1,-75.899001,2.001001,1.5\nLote 2,-75.89,2.01,1\nLote 3,-75.897001,2.003001,2\nLote 4,-75.9,91,1\n";

        await window.GoAsync($"/Origins/Plots/{producer}");
        await window.Page.Locator("[name='Input.File']").SetInputFilesAsync(new Microsoft.Playwright.FilePayload { Name = "plots.csv", MimeType = "text/csv", Buffer = System.Text.Encoding.UTF8.GetBytes(lines) });
        await window.Page.GetByText("Read the file").ClickAsync();
        await window.Page.GetByText("Lote 2 has a coordinate of 2 decimals").WaitForAsync();
        Assert.Empty(await window.ViolationsAsync());
        await window.Page.SetViewportSizeAsync(360, 800);
        Assert.Empty(await window.ViolationsAsync());
        Assert.False(await window.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"));
        await window.Page.GetByLabel("Leave out row 3, Lote 3").CheckAsync();
        await window.Page.GetByText("Add the plots").ClickAsync();
        await window.Page.WaitForURLAsync(url => url.Contains("/Origins/Plots/", StringComparison.Ordinal));

        await window.Page.GetByText("2 plots are added, 1 left out, 1 refused.").WaitForAsync();
        Assert.Equal(["Lote 1", "Lote 2"], (await ExportedAsync(window, house.ClientOptions.BaseAddress, producer.ToString())).Select(plot => (string)plot.Attributes["ProductionPlace"]));
        Assert.Empty(window.Complaints());
    }

    private static async Task<Id<Producer>> ProducerAsync(HouseFixture house)
    {
        await house.OpenHouseAsync();
        return await house.FromLedgerAsync(async db =>
        {
            var one = new Producer("Finca 2", ProducerKind.Farm, "CO");
            db.Add(one);
            await db.SaveChangesAsync(Stop);
            return one.Id;
        });
    }

    /// <summary>By the field, then nearer: half a kilometre is 0.8 m a pixel or less.</summary>
    private static async Task GoToPolygonAsync(Window window)
    {
        await window.Page.Locator("[name='Input.GoTo']").FillAsync("-75.899, 2.001");
        await window.Page.GetByText("Go there").ClickAsync();
        foreach (var across in new[] { "3", "1.5", "0.75" })
        {
            await window.Page.Locator($"[name=Across][value='{across}']").WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
            await window.Page.GetByText("Nearer").ClickAsync();
        }

        await window.Page.Locator("[name=Across][value='0.375']").WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
    }

    private static async Task ClickAsync(Window window, (double Longitude, double Latitude) corner)
    {
        var map = window.Page.Locator("svg[data-map]");
        await map.ScrollIntoViewIfNeededAsync();
        var box = (await map.BoundingBoxAsync())!;
        var edge = async (string side) => double.Parse((await map.GetAttributeAsync("data-" + side))!, System.Globalization.CultureInfo.InvariantCulture);
        var (west, east, north, south) = (await edge("west"), await edge("east"), await edge("north"), await edge("south"));
        await window.Page.Mouse.ClickAsync(
            box.X + (float)((corner.Longitude - west) / (east - west) * box.Width), box.Y + (float)((north - corner.Latitude) / (north - south) * box.Height));
    }

    private static async Task<string[]> LinesAsync(Window window) => (await window.Page.Locator("[data-corners]").InputValueAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static async Task<FeatureCollection> ExportedAsync(Window window, Uri site, string producer)
    {
        using var asker = await window.AskerAsync(site);
        return JsonSerializer.Deserialize<FeatureCollection>(await asker.GetStringAsync($"/Origins/Plots/{producer}?handler=GeoJson", Stop), GeoJson)!;
    }
}

using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;
using NetTopologySuite.Features;
using NetTopologySuite.IO.Converters;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>In a real browser: a batch is traced, a mock recall is held and printed, and the plots of the lot are exported for due diligence.</summary>
public sealed class TracedLotTests(Chromium chromium)
{
    private static readonly JsonSerializerOptions GeoJson = new() { Converters = { new GeoJsonConverterFactory() } };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_recall_is_held_and_the_plots_are_read_back_by_another_reader()
    {
        await using var house = new HouseFixture();
        house.Serve();
        var lot = await FillAsync(house);
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);

        await window.GoAsync("/Trace");
        await window.Page.Locator("#trace-search").FillAsync("R-118");
        await window.Page.Locator("form.filters button").ClickAsync();
        await window.Page.Locator(".trace-picks a").First.ClickAsync();
        Assert.Contains("Lote 3", await window.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        await window.GoAsync($"/Trace/Way/Lot/{lot}");
        await window.Page.GetByText("Hold a mock recall").ClickAsync();
        await window.Page.Locator("[name='Input.Reason']").FillAsync("Yearly exercise");
        await window.Page.GetByText("Start the clock").ClickAsync();
        await window.Page.Locator("[name='Input.Learned']").FillAsync("All found");
        await window.Page.GetByText("Stop the clock and keep what is found").ClickAsync();
        Assert.Contains("100 % are found", (await window.Page.Locator("main").InnerTextAsync()).ReplaceLineEndings(" "), StringComparison.Ordinal);
        var report = await FileAsync(window, house.ClientOptions.BaseAddress, "Report (PDF)");
        using var pdf = PdfDocument.Open(report);
        // Example G of the handbook, trade 8: 18,790 kg landed.
        Assert.Contains("18,790", string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)), StringComparison.Ordinal);

        await window.GoAsync($"/Offers/Diligence/{lot}");
        var features = JsonSerializer.Deserialize<FeatureCollection>(await FileAsync(window, house.ClientOptions.BaseAddress, "Its plots as GeoJSON"), GeoJson)!;
        // The point of the example in the handbook, trade 7.4, with the published property names.
        var plot = Assert.Single(features);
        Assert.Equal((-75.899, 2.001), (plot.Geometry.Coordinate.X, plot.Geometry.Coordinate.Y));
        Assert.Equal(("Finca 1", "CO", "Lote 3"), ((string)plot.Attributes["ProducerName"], (string)plot.Attributes["ProducerCountry"], (string)plot.Attributes["ProductionPlace"]));
    }

    /// <summary>What the link on the page leads to, asked for as whoever is signed in.</summary>
    private static async Task<byte[]> FileAsync(Window window, Uri site, string link)
    {
        using var asker = await window.AskerAsync(site);
        var address = await window.Page.Locator($"main a:has-text('{link}')").First.GetAttributeAsync("href");
        return await asker.GetByteArrayAsync(address, Stop);
    }

    private static async Task<Id<Lot>> FillAsync(HouseFixture house)
    {
        var arrived = await ArrivedLot.FillAsync(house);
        return await house.FromLedgerAsync(async db =>
        {
            var arrival = await db.Arrivals.SingleAsync(one => one.Id == arrived.Arrival, Stop);
            var buyer = await db.People.FirstAsync(person => person.Roles == Role.Buyer, Stop);
            var (store, producer) = (new Warehouse("Quay store"), new Producer("Finca 1", ProducerKind.Farm, "CO"));
            var plot = new Plot(producer.Id, "Lote 3", "CO", PlotShape.Point(-75.899m, 2.001m), 2.5m);
            var (held, holding) = (new DueDiligence(arrival.LotId), new Holding(arrival.LotId, store.Id));
            held.GrewOn([plot.Id]);
            (await db.Lots.SingleAsync(one => one.Id == arrival.LotId, Stop)).Grow("CO", null, producer.Id, null, null, null);
            var came = holding.Receive(arrival, new MovementNote(arrival.ReceivedOn, "WR-1", null), buyer.Id, arrival.At);
            var left = holding.Take(MovementKind.Release, 4, Domain.Measures.Weight.FromKilograms(274.3m), new RunningStock([(came.On, came.Amount)]), new MovementNote(arrival.ReceivedOn, "R-118", null), buyer.Id, arrival.At);
            db.AddRange(store, producer, plot, held, holding, came, left);
            await db.SaveChangesAsync(Stop);
            return arrival.LotId;
        });
    }
}

using System.Globalization;
using System.Net;
using System.Text;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Offers;
using GreenLedger.Web.Tests.Arrivals;
using GreenLedger.Web.Tests.Cupping;
using GreenLedger.Web.Tests.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// Every page route of the running application, wide and at 360 px, as each role, of the demo house: without fault, and no
/// page that nobody is shown.
/// </summary>
public sealed class FilledCrawlTests(Chromium chromium, DemoLedger demo)
{
    /// <summary>Pages that their own rule opens to fewer than the table of roles does; somebody must be shown them all the same.</summary>
    private static readonly Dictionary<string, string> ForFewer = new()
    {
        ["/Cupping/Close"] = "whoever leads the session or cups it alone",
        ["/Cupping/Key"] = "whoever laid the session out or pours",
        ["/Cupping/Preview"] = "whoever sent the file that it shows",
        ["/Cupping/Undersides"] = "whoever cups that session alone",
        ["/Papers/Attach"] = "whoever may change the record",
        ["/Papers/RemoveAttachment"] = "whoever may change the record",
        ["/Papers/RemoveNote"] = "whoever may change the record",
        ["/Papers/WriteNote"] = "whoever may change the record",
    };

    private const string OfferList = "Ref;Country;Process;Score;Bags;kg/bag;USD/kg\nP-1;Kenya;washed;87;40;60;9.85\nP-2;Peru;natural;186;12;69;7.10\n";

    private const string CuppingResults = "Sample;Fragrance;Flavor;Aftertaste;Acidity;Body;Balance;Uniformity;Clean cup;Sweetness;Overall;Total\n"
        + "P-1;7.75;7.75;7.50;7.75;7.50;7.50;10;10;10;7.75;83.50\n";

    [Fact]
    public async Task A_filled_house_shows_every_page_to_somebody_and_each_without_fault()
    {
        await using var house = (await demo.HouseAsync()).Serve();
        await AddWhatTheDemoHasNotAsync(house, await house.BrowserAsync(Role.Buyer));
        var crawl = await CrawledHouse.CrawlOfAsync(house);

        await CrawledHouse.VisitAsEachRoleAsync(chromium, house, crawl);

        var all = await PageRoute.AllAsync(house.Services);
        crawl.Faults.AddRange(
            from route in all
            from role in CrawledHouse.Roles
            where route.IsOpenTo(role) && !ForFewer.ContainsKey(route.Page) && !crawl.Shown.Contains((route.Page, $"{role}"))
            select $"{role} may open {route.Page} and was not shown it");
        crawl.Faults.AddRange(ForFewer.Where(one => crawl.Shown.All(shown => shown.Page != one.Key)).Select(one => $"Nobody was shown {one.Key}, which is for {one.Value}"));
        crawl.FoundNothing();
    }

    /// <summary>
    /// A list that was taken in, a document on a checklist, a count of the stock, files that were sent and not yet taken in, papers on a lot, a table whose key one of the
    /// crawl's people may open, one that another cups alone with codes under the bowls, and a score agreed on in talk.
    /// </summary>
    private static async Task AddWhatTheDemoHasNotAsync(HouseFixture house, TestBrowser buyer)
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        using var form = new MultipartFormDataContent
        {
            { new StringContent("Quay Traders"), "supplier" }, { new StringContent("true"), "commit" }, { new StringContent(OfferList), "file", "list.csv" },
        };
        (await script.PostAsync(new Uri("/api/offers/import", UriKind.Relative), form)).EnsureSuccessStatusCode();
        await SendAsync(buyer, "/Offers/Import", new() { ["Input.Supplier"] = "Quay Traders" }, null, OfferList.Replace("9.85", "9.95", StringComparison.Ordinal));
        await SendAsync(buyer, "/Cupping/Import", [], "Read", CuppingResults);
        await AddFailedJobAsync(house);
        var arrived = await ArrivedLot.FillAsync(house);
        await SendAsync(buyer, $"/Shipments/Shipment/{arrived.Afloat}", new() { ["name"] = "Weighing note" }, "AddDocument", null);
        var warehouse = await house.FromLedgerAsync(db => db.Holdings.Where(one => one.Bags > 0).OrderBy(one => one.Id).Select(one => one.WarehouseId).FirstAsync());
        await SendAsync(buyer, "/Stock/Counts", new() { ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) }, null, null);
        var table = await Table.LayOutAsync(house);
        await CupAloneAsync(buyer, table);
        await DiscussAsync(house);
        await TellAsync(house);
        var lot = await house.FromLedgerAsync(db => db.Lots.OrderByDescending(one => one.Id).Select(one => one.Id).FirstAsync());
        await SendAsync(buyer, PapersHouse.AttachTo("Lot", lot), new() { ["ReturnUrl"] = "/" }, null, "Cupped blind on arrival.");
        await SendAsync(buyer, $"/Papers/WriteNote/Lot/{lot}?ReturnUrl=%2F", new() { ["Input.Text"] = "Ask for the moisture again." }, null, null);
    }

    /// <summary>What a supplier was told, as a PDF that was taken.</summary>
    private static Task TellAsync(HouseFixture house) => house.InLedgerAsync(async db =>
    {
        var lot = await db.Lots.Where(one => one.SupplierId != null && db.Arrivals.Any(arrival => arrival.LotId == one.Id)).OrderBy(one => one.Id).FirstAsync();
        var by = await db.People.OrderBy(person => person.Id).Select(person => person.Id).FirstAsync();
        var file = new StoredFile("feedback.pdf", "application/pdf", "%PDF-1.7"u8.ToArray(), by, DateTimeOffset.UtcNow);
        db.AddRange(file, new FeedbackCopy(lot.SupplierId!.Value, "en", [lot.Id], file, isMailed: false, by, DateTimeOffset.UtcNow));
        await db.SaveChangesAsync();
    });

    private static Task DiscussAsync(HouseFixture house) => house.InLedgerAsync(async db =>
    {
        var result = (await db.CuppingSessions.Closed().Whole().OrderByDescending(one => one.Id).FirstAsync()).Result!;
        var by = await db.People.OrderBy(person => person.Id).Select(person => person.Id).FirstAsync();
        result.Discuss(result.Samples[0].SampleId, 84.5m, "Cupped again side by side.", by, DateTimeOffset.UtcNow);
        await db.SaveChangesAsync();
    });

    /// <summary>A form with two samples ticked, which one field of a dictionary cannot say.</summary>
    private static async Task CupAloneAsync(TestBrowser buyer, Table table)
    {
        var token = (await buyer.ReadAsync("/")).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var chosen = new FormUrlEncodedContent(
        [
            new("__RequestVerificationToken", token), new("Input.CupsPerSample", "3"), new("Input.Samples", table.SampleIds[0]), new("Input.Samples", table.SampleIds[1]),
        ]);
        var answer = await buyer.Client.PostAsync(new Uri("/Cupping/Alone?handler=Blind", UriKind.Relative), chosen);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    /// <summary>A long list that could not be taken in; one that is still to be done would be done while the crawl looks.</summary>
    private static Task AddFailedJobAsync(HouseFixture house) => house.InLedgerAsync(async db =>
    {
        var file = await db.StoredFiles.Where(one => one.Name == "list.csv").OrderByDescending(one => one.Id).FirstAsync();
        var by = await db.People.OrderBy(person => person.Id).Select(person => person.Id).FirstAsync();
        var job = new Job(ListWork.Load, new ListOrder(file.Id.Value, "Quay Traders", new DateOnly(2026, 11, 25), "{}").ToJson(), by, DateTimeOffset.UtcNow);
        job.Fail("The list holds no row that can be read.", DateTimeOffset.UtcNow);
        db.Add(job);
        await db.SaveChangesAsync();
    });

    /// <summary>Sends a page's form, with a file where there is one; where it leads.</summary>
    private static async Task<string> SendAsync(TestBrowser buyer, string address, Dictionary<string, string> fields, string? handler, string? file)
    {
        var files = file is null ? [] : new[] { ("Input.File", file.Contains(';') ? "list.csv" : "note.txt", Encoding.UTF8.GetBytes(file)) };

        var answer = await buyer.SendFormAsync(address, fields, handler, files);

        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, $"{address}: {await answer.Content.ReadAsStringAsync()}");
        return answer.Headers.Location!.ToString();
    }
}

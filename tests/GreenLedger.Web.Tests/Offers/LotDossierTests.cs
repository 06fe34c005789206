using System.Globalization;
using System.Net;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Summaries;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>A lot's complete way as one paper, of the demo's lots that arrived, read back from the PDF.</summary>
public sealed class LotDossierTests(DemoSummary demo) : IClassFixture<DemoSummary>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_tells_offer_cup_contract_arrival_and_what_is_left()
    {
        var lot = await demo.House.FromLedgerAsync(db => db.Lots.AsNoTracking()
            .Where(one => db.Offers.Any(offer => offer.LotId == one.Id && offer.Price != null) && db.Arrivals.Any(arrival => arrival.LotId == one.Id) && db.SampleResults.Any(result => result.LotId == one.Id) && db.Movements.Any(movement => movement.LotId == one.Id))
            .OrderBy(one => one.Ref).FirstAsync(Stop));
        var contract = await demo.House.FromLedgerAsync(db => db.Contracts.Where(one => one.Lots.Any(line => line.LotId == lot.Id)).Select(one => one.Ref).FirstAsync(Stop));
        var labels = await demo.House.FromLedgerAsync(db => db.Samples.Where(sample => sample.LotId == lot.Id).Select(sample => sample.LabelCode).ToListAsync(Stop));
        var left = await demo.House.FromLedgerAsync(db => db.Database.SqlQuery<long>($"""SELECT SUM("WeighedMicrograms") AS "Value" FROM "Movements" WHERE "LotId" = {lot.Id.Value}""").SingleAsync(Stop)) / 1_000_000_000m;
        var browser = await demo.House.BrowserAsync(Role.Viewer);

        var text = await ReadAsync(browser, $"/Offers/Lot/{lot.Id}?handler=Dossier");

        Assert.Contains(lot.Ref, text, StringComparison.Ordinal);
        var asked = await demo.House.FromLedgerAsync(db => db.Offers.Where(offer => offer.LotId == lot.Id).SelectMany(offer => offer.Prices).Select(price => price.Price).FirstAsync(Stop));
        Assert.Contains(asked!.Value.AsQuoted(), text, StringComparison.Ordinal);
        Assert.Contains(contract, text, StringComparison.Ordinal);
        Assert.All(labels, label => Assert.Contains(label, text, StringComparison.Ordinal));
        Assert.Contains($"{left.ToString("#,0.###", CultureInfo.InvariantCulture)} kg as weighed", text, StringComparison.Ordinal);
        Assert.Contains("not a statement of due diligence and not legal advice", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_a_lot_that_is_not_there_nobody_gets_one()
    {
        var answer = await (await demo.House.BrowserAsync(Role.Viewer)).Client.GetAsync(new Uri($"/Offers/Lot/{Guid.NewGuid()}?handler=Dossier", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private static async Task<string> ReadAsync(TestBrowser browser, string address)
    {
        using var answer = await browser.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        using var document = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(Stop));
        return string.Join('\n', document.GetPages().Select(page => ContentOrderTextExtractor.GetText(page))).Replace("\r", "", StringComparison.Ordinal).Replace('\n', ' ');
    }
}

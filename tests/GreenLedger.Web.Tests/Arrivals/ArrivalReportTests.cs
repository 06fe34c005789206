using System.Net;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Tests.Summaries;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Arrivals;

/// <summary>
/// What a supplier hears of an arrival (handbook, trade 8, example G), while another supplier's coffee travelled in the same shipment
/// and stood on the same table, with a marker in every field.
/// </summary>
public sealed class ArrivalReportTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string Marker = "PLANTED";
    private static readonly DateTimeOffset Noon = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("en", "What arrived", "639.09 USD", "The arrival is short of what was agreed.")]
    [InlineData("es", "Lo que llegó", "639,09 USD", "La llegada queda por debajo de lo acordado.")]
    [InlineData("pt", "O que chegou", "639,09 USD", "A chegada fica abaixo do que foi combinado.")]
    [InlineData("fr", "Ce qui est arrivé", "639,09 USD", "L’arrivage est en dessous de ce qui a été convenu.")]
    public async Task Preview_PDF_and_script_say_the_same_in_the_language_and_nothing_of_anybody_else(string language, params string[] expected)
    {
        var lot = await PlantedAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync($"/Arrivals/Report/{lot.Arrival}?Language={language}");
        using var taken = await buyer.SendFormAsync($"/Arrivals/Report/{lot.Arrival}?Language={language}", new Dictionary<string, string>(), "Pdf");
        using var read = await (await house.ScriptAsync(Role.Viewer)).GetAsync(new Uri($"/api/arrivals/{lot.Arrival}/report?language={language}", UriKind.Relative), Stop);
        var preview = page.QuerySelector(".feedback")!;
        var (pdf, api) = (await PdfAsync(taken), await PdfAsync(read));

        Assert.Equal(language, preview.GetAttribute("lang"));
        foreach (var text in new[] { preview.TextContent, pdf, api })
        {
            Assert.All(expected, words => Assert.Contains(words, text, StringComparison.Ordinal));
            Assert.Empty(FeedbackLeakTests.Leaks(text, ["83.21", "83,21"]));
        }

        Assert.Equal(language, await house.FromLedgerAsync(db => db.Contracts.Where(contract => contract.Id == lot.Contract).Join(db.Suppliers, contract => contract.SupplierId, supplier => supplier.Id, (_, supplier) => supplier.Language).SingleAsync(Stop)));
        Assert.Equal(language, (await buyer.ReadAsync($"/Arrivals/Report/{lot.Arrival}")).QuerySelector(".feedback")!.GetAttribute("lang")); // remembered for this supplier
    }

    [Fact]
    public async Task What_is_planted_would_be_found_on_the_pages_that_show_it()
    {
        var lot = await PlantedAsync();
        var shipment = await house.FromLedgerAsync(db => db.Arrivals.Where(arrival => arrival.Id == lot.Arrival).Select(arrival => arrival.ShipmentId).SingleAsync(Stop));

        var page = (await (await house.BrowserAsync(Role.Buyer)).ReadAsync($"/Shipments/Shipment/{shipment}")).QuerySelector("main")!.TextContent;

        Assert.Equal([Marker], FeedbackLeakTests.Leaks(page, ["83.21", "83,21"]));
    }

    [Fact]
    public async Task A_viewer_reads_it_a_cupper_does_not_and_an_unknown_language_is_refused()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var address = new Uri($"/api/arrivals/{lot.Arrival}/report?language=sw", UriKind.Relative);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await (await house.ScriptAsync(Role.Viewer)).GetAsync(address, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Cupper)).GetAsync(address, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.ScriptAsync(Role.Viewer)).GetAsync(new Uri($"/api/arrivals/{Guid.NewGuid()}/report", UriKind.Relative), Stop)).StatusCode);
    }

    /// <summary>The text with title, author and name of the file.</summary>
    private static async Task<string> PdfAsync(HttpResponseMessage answer)
    {
        Assert.Equal((HttpStatusCode.OK, "application/pdf"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(Stop));
        var text = string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
        return $"{text} {pdf.Information.Title} {pdf.Information.Author} {pdf.Information.Subject} {pdf.Information.Keywords} {answer.Content.Headers.ContentDisposition?.FileName}";
    }

    private async Task<ArrivedLot> PlantedAsync()
    {
        var lot = await ArrivedLot.FillAsync(house);
        await house.InLedgerAsync(async db =>
        {
            var buyer = await db.People.FirstAsync(person => person.Roles == Role.Buyer, Stop);
            Person[] panel = [await db.People.FirstAsync(person => person.Roles == Role.Cupper, Stop), await db.People.FirstAsync(person => person.Roles == Role.LeadCupper, Stop), buyer];
            var arrival = await db.Arrivals.SingleAsync(one => one.Id == lot.Arrival, Stop);
            var own = await db.Samples.Where(sample => sample.Id == arrival.ApprovedSampleId || sample.Id == arrival.ArrivalSampleId).OrderBy(sample => sample.Kind).ToListAsync(Stop);
            var shipment = await db.Shipments.Include(one => one.Lots).Include(one => one.Containers).SingleAsync(one => one.Id == arrival.ShipmentId, Stop);
            var (supplier, other, contract) = Other(buyer);
            shipment.Carry(contract, contract.Lots[0].Id, 100, Weight.FromKilograms(6_000m));
            var theirs = new Sample(other.Id, SampleKind.Arrival, $"PL{Guid.NewGuid().ToString("n")[..6]}", new DateOnly(2026, 11, 20), Weight.FromGrams(500m), $"{Marker} sample");
            var session = Session(await db.CuppingForms.SingleAsync(form => form.Id == CuppingForm.HundredPointId, Stop), [.. own, theirs], panel);
            db.AddRange(supplier, other, contract, theirs, session, new Note(PapersOf.Shipment, shipment.Id.Value, $"{Marker} note", buyer.Id, Noon), new Note(PapersOf.Lot, other.Id.Value, $"{Marker} note", buyer.Id, Noon));
            await db.SaveChangesAsync(Stop);
        });
        return lot;
    }

    private static (Supplier, Lot, Contract) Other(Person buyer)
    {
        var number = Guid.NewGuid().ToString("n")[..8];
        var supplier = new Supplier($"{Marker} {number}", SupplierKind.Exporter, "PE", "es");
        var lot = new Lot($"{Marker}-{number}", $"{Marker} lot {number}", supplier.Id);
        lot.Note($"{Marker} words");
        var terms = ArrivedLot.Terms(lot) with { Seller = supplier.Name, Note = $"{Marker} terms", Payment = $"{Marker} payment", Quality = new QualityTerms($"{Marker} quality", Score.Of(83.21m)) };
        var contract = Contract.Draft($"PL-{number}", supplier.Id, terms, new Dictionary<Id<Lot>, Id<Decision>>(), buyer.Id, Noon);
        contract.Sign(new DateOnly(2026, 7, 1), null, buyer.Id, Noon);
        return (supplier, lot, contract);
    }

    /// <summary>The newest session that both of ours stand in, which the verdict is taken from; the arrival seven quarter points lower.</summary>
    private static CuppingSession Session(CuppingForm form, IReadOnlyList<Sample> samples, Person[] panel)
    {
        var session = new CuppingSession($"{Marker} table", new DateOnly(2026, 11, 24), form, 5, panel[1].Id);
        foreach (var (at, sample) in samples.Index())
        {
            session.Pour(sample, $"{501 + at}");
            foreach (var (seat, cupper) in panel.Index())
            {
                session.Submit($"{501 + at}", cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m - at * 0.25m - seat * 0.25m), 7)], [5, 5, 5], [0, 0]), Noon);
            }
        }

        session.Close(panel[1].Id, Noon, new ExpectedErrors(1.0, 0.5));
        return session;
    }
}

using System.Globalization;
using System.Net;
using GreenLedger.Data;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Summaries;

/// <summary>
/// Every text and number field of six other suppliers carries a marker of its own; they are cupped at one table with the sample
/// that is told of. None of the markers may reach the report.
/// </summary>
public sealed class FeedbackLeakTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string Marker = "PLANTED";
    private static readonly DateOnly Day = DateOnly.FromDateTime(DateTime.UtcNow.AddDays(-20));

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    [InlineData("pt")]
    [InlineData("fr")]
    public async Task Nothing_planted_in_another_suppliers_fields_reaches_the_report(string language)
    {
        var (supplier, sample, numbers) = await PlantedAsync();

        var (preview, pdf, name) = await ReportAsync(supplier, sample, language, null);

        Assert.Contains(language == "en" ? "86.00" : "86,00", preview, StringComparison.Ordinal); // its own score is told, with the language's decimal mark
        Assert.Empty(Leaks(preview, numbers).Concat(Leaks(pdf, numbers)).Concat(Leaks(name, numbers)));
    }

    [Fact]
    public async Task A_marker_that_is_let_through_is_found_in_preview_and_PDF()
    {
        var (supplier, sample, numbers) = await PlantedAsync();

        var (preview, pdf, _) = await ReportAsync(supplier, sample, "en", $"Cheaper than {Marker}-name-3 at {numbers[0]}.");

        Assert.Equal(2, Leaks(preview, numbers).Count);
        Assert.Equal(2, Leaks(pdf, numbers).Count);
    }

    [Fact]
    public async Task Six_others_of_three_suppliers_or_more_give_a_quarter_and_the_language_is_kept()
    {
        var (supplier, sample, _) = await PlantedAsync();

        var (preview, _, _) = await ReportAsync(supplier, sample, "pt", null);

        Assert.Contains("no quarto superior", preview, StringComparison.Ordinal);
        Assert.Equal("pt", await house.FromLedgerAsync(db => db.Suppliers.Where(one => one.Id == new Domain.Id<Supplier>(supplier)).Select(one => one.Language).SingleAsync(Stop)));
    }

    [Fact]
    public async Task A_sample_of_another_supplier_cannot_be_asked_for_in_a_report()
    {
        var (supplier, _, _) = await PlantedAsync();
        var other = await house.FromLedgerAsync(db => db.Samples.Where(one => one.LabelCode == "PLN3").Select(one => one.Id).FirstAsync(Stop));

        var answer = await SendAsync(supplier, other.Value, "en", null, null);

        Assert.Contains("A sample is not there any more", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    private async Task<(string Preview, string Pdf, string FileName)> ReportAsync(Guid supplier, Guid sample, string language, string? message)
    {
        var preview = await SendAsync(supplier, sample, language, message, null);
        var file = await SendAsync(supplier, sample, language, message, "Pdf");
        Assert.Equal((HttpStatusCode.OK, "application/pdf"), (file.StatusCode, file.Content.Headers.ContentType?.MediaType));
        using var pdf = PdfDocument.Open(await file.Content.ReadAsByteArrayAsync(Stop));
        var text = string.Join(" ", pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
        var page = await TestBrowser.PageAsync(preview);
        var shown = page.QuerySelector(".feedback") ?? throw new InvalidOperationException(page.Body!.TextContent);
        var charts = string.Join(" ", shown.QuerySelectorAll("[data-spec]").Select(chart => chart.GetAttribute("data-spec") + chart.GetAttribute("aria-label")));
        return (shown.TextContent + charts, $"{text} {pdf.Information.Title} {pdf.Information.Author} {pdf.Information.Subject} {pdf.Information.Keywords}", file.Content.Headers.ContentDisposition!.FileNameStar!);
    }

    private async Task<HttpResponseMessage> SendAsync(Guid supplier, Guid sample, string language, string? message, string? handler)
    {
        var browser = await house.BrowserAsync(Role.Buyer);
        var address = $"/Summaries/Feedback?Supplier={supplier}";
        var token = (await browser.ReadAsync(address)).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var form = new FormUrlEncodedContent(
        [
            new("__RequestVerificationToken", token), new("Input.Samples", sample.ToString()), new("Input.Language", language), new("Input.Message", message ?? ""),
        ]);
        return await browser.Client.PostAsync(new Uri(handler is null ? address : $"{address}&handler={handler}", UriKind.Relative), form, Stop);
    }

    internal static List<string> Leaks(string text, IReadOnlyList<string> numbers) =>
        [.. numbers.Append(Marker).Where(marker => text.Contains(marker, StringComparison.OrdinalIgnoreCase))];

    /// <summary>Our supplier and sample, and every number planted in its written forms.</summary>
    internal async Task<(Guid Supplier, Guid Sample, IReadOnlyList<string> Numbers)> PlantedAsync()
    {
        await house.OpenHouseAsync();
        var own = await house.FromLedgerAsync(async db =>
        {
            if (await db.Suppliers.SingleOrDefaultAsync(one => one.Name == "Cooperativa São João", Stop) is { } known)
            {
                return (known.Id, (await db.Samples.SingleAsync(one => one.LabelCode == "OWN1", Stop)).Id);
            }

            return await PlantAsync(db);
        });
        var numbers = Enumerable.Range(1, 6).SelectMany(i => new[] { Price(i), ScoreOf(i), Moisture(i), Kilograms(i) })
            .SelectMany(number => new[] { "en-GB", "pt-BR" }.Select(culture => number.ToString("0.00", CultureInfo.GetCultureInfo(culture)))).Distinct().ToList();
        return (own.Item1.Value, own.Item2.Value, numbers);
    }

    private static decimal Price(int i) => 173.41m + i;

    private static decimal ScoreOf(int i) => 75.13m + i * 0.57m;

    private static decimal Moisture(int i) => 9.17m + i * 0.11m;

    private static decimal Kilograms(int i) => 43_217.31m + i;

    private static async Task<(Domain.Id<Supplier>, Domain.Id<Sample>)> PlantAsync(LedgerContext db)
    {
        var form = await db.CuppingForms.SingleAsync(one => one.Id == CuppingForm.HundredPointId, Stop);
        var person = await db.People.FirstAsync(Stop);
        var session = CuppingSession.OfPast($"{Marker} table", Day, form);
        var supplier = new Supplier("Cooperativa São João", SupplierKind.Producer, "BR", "pt");
        var lot = new Lot("SJ-1", "Talhão do Alto", supplier.Id);
        var sample = new Sample(lot.Id, SampleKind.Offer, "OWN1", Day, Weight.FromGrams(350m));
        db.AddRange(supplier, lot, sample, new GreenGrade(sample.Id, lot.Id, Day, person.Id, GreenGrade.UsualSample).Measure(Percent.Of(11.2m), null, null, null));
        session.Pour(sample, new Random(1));
        session.TakeIn(sample, Sheet(86m, "jasmine"), DateTimeOffset.UtcNow);
        for (var i = 1; i <= 6; i++)
        {
            Plant(db, session, i, person);
        }

        session.Close(person.Id, DateTimeOffset.UtcNow, new ExpectedErrors(1, 0.5));
        db.Add(session);
        await db.SaveChangesAsync(Stop);
        return (supplier.Id, sample.Id);
    }

    private static void Plant(LedgerContext db, CuppingSession session, int i, Person person)
    {
        string Text(string field) => $"{Marker}-{field}-{i}";
        var supplier = new Supplier(Text("name"), SupplierKind.Exporter, "PE", "es");
        supplier.Describe(Text("name"), SupplierKind.Exporter, "PE", "es", $"{Marker}{i}@planted.example");
        var lot = new Lot(Text("ref"), Text("lot"), supplier.Id);
        lot.Grow("PE", Text("region"), null, Text("varieties"), 1911 + i, 1977 + i);
        lot.Process(null, Text("process"));
        lot.Prepare("2025/26", Text("grade"), Text("screen"), Percent.Of(Moisture(i)));
        lot.Pack(new Packing(313 + i, Weight.FromKilograms(61.7m), Weight.FromKilograms(Kilograms(i))));
        lot.Certify([Text("certificate")]);
        lot.Mark(Text("ico"));
        lot.Note(Text("notes"));
        var offer = new Offer(
            supplier.Id, lot, new Packing(313 + i, Weight.FromKilograms(61.7m), Weight.FromKilograms(Kilograms(i))), Asking.Outright(PricePerWeight.Of(Price(i), Currency.Usd, PriceUnit.Kilogram)),
            new Terms(Incoterm.Fob, Text("place"), null, Text("availability")), OfferState.OnOffer, Day);
        offer.StateScore(Score.Of(ScoreOf(i)));
        var sample = new Sample(lot.Id, SampleKind.Offer, $"PLN{i}", Day, Weight.FromGrams(350m), Text("sample-note"));
        db.AddRange(supplier, lot, offer, sample, new Note(PapersOf.Lot, lot.Id.Value, Text("note"), person.Id, DateTimeOffset.UtcNow));
        db.Add(new GreenGrade(sample.Id, lot.Id, Day, person.Id, GreenGrade.UsualSample, Text("grade-note")).Measure(Percent.Of(Moisture(i)), Text("method"), null, null).Look(Text("colour"), Text("odour"), false));
        session.Pour(sample, new Random(1 + i));
        session.TakeIn(sample, Sheet(ScoreOf(i), Text("word"), Text("sheet-note")), DateTimeOffset.UtcNow);
    }

    /// <summary>Six attributes at 6.50 and the three of cups in full make 69; the seventh mark makes up the score.</summary>
    private static PastResult Sheet(decimal score, string word, string? note = null)
    {
        var each = score > 80m ? 8m : 6.5m;
        return new PastResult("Ines Duarte", [each, each, each, each, each, each, 10m, 10m, 10m, score - each * 6 - 30m], [0m, 0m], null, [word], note);
    }
}

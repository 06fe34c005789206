using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using ClosedXML.Excel;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Arrivals;
using GreenLedger.Web.Tests.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>Due diligence of a lot that was received on 29 October 2026, 31 days after it was on board, half of it still afloat.</summary>
public sealed class DiligencePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    /// <summary>Five years after 29 October 2026: handbook, trade 7.3, retention (from memory there).</summary>
    private const string KeptUntil = "29 October 2031";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Evidence_that_came_as_a_file_counts_and_is_not_removed_before_its_years_are_over()
    {
        var lot = await ReceivedAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Buyer);

        var saved = await buyer.SendFormAsync($"/Offers/Diligence/{lot}", new Dictionary<string, string> { ["Input.Deforestation"] = "Satellite pictures of 2020" }, files: [("Input.LegalityFile", "title deed.pdf", PapersHouse.Pdf)]);
        var page = (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector("main")!;
        var file = await house.FromLedgerAsync(db => db.Attachments.Where(one => one.AboutId == lot.Value).Select(one => one.Id).SingleAsync(Stop));
        var refused = await buyer.PostAsync($"/Papers/RemoveAttachment/{file}");
        var refusedToo = await script.DeleteAsync(new Uri($"/api/papers/attachments/{file}", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.DoesNotContain("grown by the law", page.QuerySelector(".note-caution")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("not deforested after", page.QuerySelector(".note-caution")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("the judgement of risk", page.QuerySelector(".note-caution")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("title deed.pdf", page.TextContent, StringComparison.Ordinal);
        Assert.Contains($"is kept until {KeptUntil}, 5 years after", (await TestBrowser.PageAsync(refused)).QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refusedToo.StatusCode);
        Assert.Contains($"kept until {KeptUntil}", await refusedToo.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.False(await house.FromLedgerAsync(db => db.Attachments.AnyAsync(one => one.Id == file && one.RemovedAt != null, Stop)));
    }

    /// <summary>docs/decisions/0015. The lot's own page says until when it is kept in place of a way to remove it.</summary>
    [Fact]
    public async Task A_file_attached_by_mistake_is_taken_back_with_its_reason_and_is_evidence_no_more()
    {
        var lot = await ReceivedAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Offers/Diligence/{lot}", new Dictionary<string, string> { ["Input.Role"] = "Operator" }, files: [("Input.RiskFile", "payroll.pdf", PapersHouse.Pdf)]);
        var file = await house.FromLedgerAsync(db => db.Attachments.Where(one => one.AboutId == lot.Value).Select(one => one.Id).SingleAsync(Stop));

        var own = (await buyer.ReadAsync($"/Offers/Lot/{lot}")).QuerySelector("[aria-labelledby=attachments]")!;
        var bare = await buyer.SendFormAsync($"/Papers/RemoveAttachment/{file}", new Dictionary<string, string> { ["Input.MistakenBecause"] = "" });
        var taken = await buyer.SendFormAsync($"/Papers/RemoveAttachment/{file}", new Dictionary<string, string> { ["Input.MistakenBecause"] = "The payroll of another farm" });
        await buyer.PostAsync($"/Papers/RemoveAttachment/{file}?handler=PutBack");

        Assert.Contains("evidence, kept until 29 Oct 2031", own.TextContent, StringComparison.Ordinal);
        Assert.Null(own.QuerySelector("a.btn-stop"));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Redirect), (bare.StatusCode, taken.StatusCode));
        Assert.Contains("is kept until", (await TestBrowser.PageAsync(bare)).QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("the judgement of risk", await MissingAsync(buyer, lot), StringComparison.Ordinal);
        var page = (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector("main")!;
        Assert.DoesNotContain(page.QuerySelectorAll(".papers a"), link => link.TextContent == "payroll.pdf");
        Assert.Equal("The payroll of another farm", await house.FromLedgerAsync(db => db.DueDiligences.Where(one => one.LotId == lot).SelectMany(one => one.Files).Select(one => one.MistakenBecause).SingleAsync(Stop)));
        Assert.NotNull((await buyer.ReadAsync($"/Offers/Lot/{lot}")).QuerySelector("[aria-labelledby=attachments] a.btn-stop"));
    }

    [Fact]
    public async Task Evidence_of_a_lot_that_is_not_placed_on_the_market_can_be_removed_and_is_missing_again()
    {
        var (lot, _, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Offers/Diligence/{lot.Id}", new Dictionary<string, string> { ["Input.Role"] = "Operator" }, files: [("Input.RiskFile", "visit.pdf", PapersHouse.Pdf)]);
        var file = await house.FromLedgerAsync(db => db.Attachments.Where(one => one.AboutId == lot.Id.Value).Select(one => one.Id).SingleAsync(Stop));

        var before = await MissingAsync(buyer, lot.Id);
        var removed = await buyer.PostAsync($"/Papers/RemoveAttachment/{file}");

        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
        Assert.DoesNotContain("the judgement of risk", before, StringComparison.Ordinal);
        Assert.Contains("the judgement of risk", await MissingAsync(buyer, lot.Id), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_day_that_holds_for_the_house_goes_by_its_size()
    {
        await house.OpenHouseAsync();
        var lot = await ReceivedAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        // Article 38 as amended (handbook, trade 7.1): 30 December 2026, and 30 June 2027 for micro and small undertakings.
        var unsaid = (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector("main")!.TextContent;
        await buyer.SendFormAsync("/Offers/DiligenceHabits", new Dictionary<string, string> { ["Input.Size"] = "Small" });
        var small = (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector("main")!.TextContent;
        var refused = await buyer.SendFormAsync("/Offers/DiligenceHabits", new Dictionary<string, string> { ["Input.KeepYears"] = "0" });
        await buyer.SendFormAsync("/Offers/DiligenceHabits", new Dictionary<string, string> { ["Input.Size"] = "" });

        Assert.Contains("30 Dec 2026, the earlier of two days", unsaid, StringComparison.Ordinal);
        Assert.Contains("from 30 Jun 2027.", small, StringComparison.Ordinal);
        Assert.Contains("1 to 50 years", (await TestBrowser.PageAsync(refused)).QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_tells_what_is_where_and_how_much_is_missing()
    {
        var lot = await ReceivedAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var reference = await house.FromLedgerAsync(db => db.Lots.Where(one => one.Id == lot).Select(one => one.Ref).SingleAsync(Stop));

        var row = Assert.Single((await buyer.ReadAsync($"/Offers/Diligences?search={reference}&stage=Afloat&lacking=true&sort=-missing")).QuerySelectorAll("tbody tr"), one => one.QuerySelector("a")!.GetAttribute("href")!.EndsWith($"{lot}", StringComparison.Ordinal));
        var none = await buyer.ReadAsync($"/Offers/Diligences?search={reference}&stage=Contracted");
        var bytes = await buyer.Client.GetByteArrayAsync(new Uri($"/Offers/Diligences?handler=Workbook&search={reference}", UriKind.Relative), Stop);

        // The half that is afloat: 275 bags of 69 kg, 18,975 kg (handbook, trade 8, example G).
        Assert.Contains("18,975 kg", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("afloat", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("missing", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("No lot fits", none.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        using var book = new XLWorkbook(new MemoryStream(bytes));
        Assert.Contains(book.Worksheet(1).RowsUsed().Skip(1), line => line.Cell(1).GetString() == reference && line.Cell(6).GetValue<decimal>() == 18_975m);
    }

    /// <summary>1,000 kg of parchment are 800 kg of green coffee: ITC, The Coffee Guide, 01.01.02 (handbook, trade 1.2); the lot weighs more.</summary>
    [Fact]
    public async Task A_harvest_in_parchment_is_told_in_green_coffee_and_doubted_where_it_is_less_than_the_lot()
    {
        var lot = await ReceivedAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        await house.InLedgerAsync(async db =>
        {
            (await db.Lots.SingleAsync(one => one.Id == lot, Stop)).Pack(new Packing(20, Weight.FromKilograms(60m), null));
            await db.SaveChangesAsync(Stop);
        });

        var none = await buyer.SendFormAsync($"/Offers/Diligence/{lot}", new Dictionary<string, string> { ["Input.Harvest"] = "0" });
        var saved = await buyer.SendFormAsync($"/Offers/Diligence/{lot}", new Dictionary<string, string> { ["Input.Harvest"] = "1000", ["Input.HarvestForm"] = "Parchment" });
        var page = (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector("main")!.TextContent;
        using var script = await house.ScriptAsync(Role.Buyer);
        var read = await script.GetFromJsonAsync<JsonElement>($"/api/offers/lots/{lot}/diligence", Stop);

        Assert.Contains("lies above zero", (await TestBrowser.PageAsync(none)).QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.Contains("800 kg in green coffee.", page, StringComparison.Ordinal);
        Assert.Contains("The plots gave 1,000 kg of parchment, 800 kg in green coffee, and the lot weighs 1,200 kg", page, StringComparison.Ordinal);
        Assert.Equal((1000m, "Parchment", 800m), (read.GetProperty("harvestKg").GetDecimal(), read.GetProperty("harvestForm").GetString(), read.GetProperty("harvestInGreenKg").GetDecimal()));
    }

    /// <summary>60 kg of green coffee are 120 kg of dried cherry, 75 kg of parchment and 50.420 kg roasted: the same place.</summary>
    [Fact]
    public async Task A_script_asks_what_a_weight_is_in_green_coffee_and_in_each_form()
    {
        using var script = await house.ScriptAsync(Role.Viewer);

        var answer = await script.PostAsJsonAsync("/api/origins/calculate/green", new { form = "DriedCherry", kg = 120 }, Stop);
        var below = await script.PostAsJsonAsync("/api/origins/calculate/green", new { form = "Roasted", kg = -1 }, Stop);

        var told = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        decimal Of(string form) => told.GetProperty("forms").EnumerateArray().Single(one => one.GetProperty("form").GetString() == form).GetProperty("kg").GetDecimal();
        Assert.Equal((60m, 75m, 50.420m), (told.GetProperty("greenKg").GetDecimal(), Of("Parchment"), decimal.Round(Of("Roasted"), 3)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, below.StatusCode);
    }

    [Fact]
    public async Task A_script_reads_writes_and_takes_the_plots_along()
    {
        var lot = await ReceivedAsync();
        using var script = await house.ScriptAsync(Role.Buyer);
        var plot = await house.FromLedgerAsync(async db =>
        {
            // The point of the example in the handbook, trade 7.4.
            var producer = new Producer("Finca 1", ProducerKind.Farm, "CO");
            var field = new Plot(producer.Id, "Lote 3", "CO", PlotShape.Point(-75.899m, 2.001m), 2.5m);
            (await db.Lots.SingleAsync(one => one.Id == lot, Stop)).Grow("CO", null, producer.Id, null, null, null);
            db.AddRange(producer, field);
            await db.SaveChangesAsync(Stop);
            return field.Id;
        });

        var put = await script.PutAsJsonAsync($"/api/offers/lots/{lot}/diligence", new { version = 0, role = "Operator", producedFrom = "2026-04-01", producedUntil = "2026-07-31", legality = "Title deed", statementReference = "26CO12345678", plots = new[] { plot.Value } }, Stop);
        var read = await script.GetFromJsonAsync<JsonElement>($"/api/offers/lots/{lot}/diligence", Stop);
        var again = await script.PutAsJsonAsync($"/api/offers/lots/{lot}/diligence", new { version = 0, role = "Operator", legality = "Title deed", statementReference = "26CO12345678", producedFrom = "2026-04-01", plots = new[] { plot.Value } }, Stop);
        var late = await script.PutAsJsonAsync($"/api/offers/lots/{lot}/diligence", new { version = 0, role = "Downstream" }, Stop);
        var geo = await script.GetFromJsonAsync<JsonElement>($"/api/offers/lots/{lot}/diligence/plots", Stop);
        var list = await script.GetFromJsonAsync<JsonElement>("/api/offers/diligences?stage=Afloat&lacking=true", Stop);

        Assert.Equal(HttpStatusCode.OK, put.StatusCode);
        var missing = read.GetProperty("missing").EnumerateArray().Select(one => one.GetString()).ToList();
        Assert.Contains("the verification number that came with the reference number", missing);
        Assert.DoesNotContain(missing, what => what!.StartsWith("the plots", StringComparison.Ordinal));
        Assert.Equal(("2031-10-29", "2026-12-30"), (read.GetProperty("keptUntil").GetString(), read.GetProperty("appliesFrom").GetString()));
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Equal("Lote 3", geo.GetProperty("features")[0].GetProperty("properties").GetProperty("ProductionPlace").GetString());
        Assert.Single(list.EnumerateArray(), one => one.GetProperty("lotId").GetGuid() == lot.Value && one.GetProperty("missing").GetArrayLength() == missing.Count);
    }

    private async Task<Id<Lot>> ReceivedAsync()
    {
        var arrived = await ArrivedLot.FillAsync(house);
        return await house.FromLedgerAsync(db => db.Arrivals.Where(one => one.Id == arrived.Arrival).Select(one => one.LotId).SingleAsync(Stop));
    }

    private static async Task<string> MissingAsync(TestBrowser buyer, Id<Lot> lot) => (await buyer.ReadAsync($"/Offers/Diligence/{lot}")).QuerySelector(".note-caution")!.TextContent;
}

using System.Net;
using ClosedXML.Excel;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Arrivals;

public sealed class ClaimPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_claim_is_opened_from_the_verdicts_answered_settled_and_taken_back()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var claim = await OpenAsync(buyer, lot, new() { ["Input.Grounds"] = "Weight", ["Input.On"] = "2026-11-25" });
        await buyer.SendFormAsync($"/Arrivals/Note/{claim}", new Dictionary<string, string> { ["Input.Side"] = "FromSeller", ["Input.On"] = "2026-11-25", ["Input.Text"] = "They accept the weights." });
        await buyer.SendFormAsync($"/Arrivals/Settle/{claim}", new Dictionary<string, string> { ["Input.Outcome"] = "Allowance", ["Input.Amount"] = "600", ["Input.On"] = "2026-11-25" });

        var text = await TextAsync(buyer, $"/Arrivals/Claim/{claim}");
        // Handbook, trade 8, example G; the cost worked by hand: 134,554.93 ÷ 18,790 = 7.1610, less 600 it is 7.1291.
        Assert.Contains("639.09 USD", text, StringComparison.Ordinal);
        Assert.Contains("185 kg lost less the franchise of 94.875 kg is 90.125 kg, at 321.65 ¢/lb", text, StringComparison.Ordinal);
        Assert.Contains("They accept the weights.", text, StringComparison.Ordinal);
        Assert.Contains("Over 18,790 kg landed: 7.1610 USD/kg.", text, StringComparison.Ordinal);
        Assert.Contains("Less 600.00 USD: 7.1291 USD/kg", text, StringComparison.Ordinal);

        await buyer.SendFormAsync($"/Arrivals/Reopen/{claim}", new Dictionary<string, string> { ["Input.Reason"] = "Entered too early." });
        Assert.Contains("Entered too early.", await TextAsync(buyer, $"/Arrivals/Claim/{claim}"), StringComparison.Ordinal);
        Assert.Null(await house.FromLedgerAsync(db => db.Claims.Where(one => one.Id == claim).Select(one => one.Outcome).SingleAsync(Stop)));
    }

    [Fact]
    public async Task What_a_claim_brings_stands_once_in_the_cost_of_its_lot_and_follows_its_outcome()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var claim = await OpenAsync(buyer, lot, new() { ["Input.Grounds"] = "Weight", ["Input.On"] = "2026-11-20" });
        var lotId = await house.FromLedgerAsync(db => db.Claims.Where(one => one.Id == claim).Select(one => one.LotId).SingleAsync(Stop));

        await SettleAsync("600", "2026-11-24");
        var cost = await TextAsync(buyer, $"/Costs/Lot/{lotId}");
        var shown = await TextAsync(buyer, $"/Arrivals/Claim/{claim}");
        await buyer.SendFormAsync($"/Arrivals/Reopen/{claim}", new Dictionary<string, string> { ["Input.Reason"] = "Another amount was agreed." });
        var between = await StandingAsync();
        await SettleAsync("500", "2026-11-25");
        var after = await StandingAsync();

        // Worked by hand at 1.25 USD for a euro: 600 ÷ 1.25 = 480 and 500 ÷ 1.25 = 400.
        Assert.Contains("−480.00", cost, StringComparison.Ordinal);
        Assert.Contains("settled claim", cost, StringComparison.Ordinal);
        Assert.Contains("480.00 EUR", shown, StringComparison.Ordinal);
        Assert.Empty(between);
        Assert.Equal([(-40_000L, new DateOnly(2026, 11, 25))], after);
        Assert.Equal(2, await house.FromLedgerAsync(db => db.CostPostings.CountAsync(one => one.LotId == lotId, Stop)));

        Task<HttpResponseMessage> SettleAsync(string amount, string on) =>
            buyer.SendFormAsync($"/Arrivals/Settle/{claim}", new Dictionary<string, string> { ["Input.Outcome"] = "Allowance", ["Input.Amount"] = amount, ["Input.On"] = on });

        async Task<List<(long, DateOnly)>> StandingAsync() =>
            [.. (await house.FromLedgerAsync(db => db.CostPostings.Where(one => one.LotId == lotId && one.WithdrawnAt == null).ToListAsync(Stop))).Select(one => (one.House.MinorUnits, one.On))];
    }

    [Fact]
    public async Task Without_a_rate_of_the_day_nothing_is_settled_and_the_page_says_what_to_do()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var claim = await OpenAsync(buyer, lot, new() { ["Input.Grounds"] = "Weight", ["Input.On"] = "2026-11-20" });
        var rate = await house.FromLedgerAsync(db => db.ExchangeRates.AsNoTracking().SingleAsync(Stop));
        await house.FromLedgerAsync(db => db.ExchangeRates.ExecuteDeleteAsync(Stop));

        var answer = await buyer.SendFormAsync($"/Arrivals/Settle/{claim}", new Dictionary<string, string> { ["Input.Outcome"] = "Allowance", ["Input.Amount"] = "600", ["Input.On"] = "2026-11-24" });
        await house.FromLedgerAsync(async db =>
        {
            db.Add(rate);
            return await db.SaveChangesAsync(Stop);
        });

        Assert.Contains("There is no exchange rate of USD", (await TestBrowser.PageAsync(answer)).QuerySelector("#Input_Amount_error")!.TextContent, StringComparison.Ordinal);
        Assert.Null(await house.FromLedgerAsync(db => db.Claims.Where(one => one.Id == claim).Select(one => one.Outcome).SingleAsync(Stop)));
    }

    [Fact]
    public async Task What_it_comes_to_is_shown_before_anything_is_stored()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var shown = await buyer.SendFormAsync(
            $"/Arrivals/OpenClaim/{lot.Arrival}",
            new Dictionary<string, string> { ["Input.Grounds"] = "Cup", ["Input.SharePercent"] = "3", ["Input.On"] = "2026-11-25" }, "Count");

        // Worked by hand: 18,790 ÷ 0.45359237 × 3.2165 = 133,243.06, of which 3 % are 3,997.29.
        Assert.Contains("3 % of 133,243.06 USD, the price of 18,790 kg landed", (await TestBrowser.PageAsync(shown)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Claims.CountAsync(claim => claim.ArrivalId == lot.Arrival, Stop)));
    }

    [Fact]
    public async Task What_may_not_be_claimed_is_refused_with_a_sentence_and_keeps_what_was_typed()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var form = new Dictionary<string, string> { ["Input.Grounds"] = "PhysicalLimits", ["Input.On"] = "2026-11-25", ["Input.Words"] = "Please answer." };

        var unshown = await buyer.SendFormAsync($"/Arrivals/OpenClaim/{lot.Arrival}", form);
        var late = await buyer.SendFormAsync($"/Arrivals/OpenClaim/{lot.Arrival}", new Dictionary<string, string>(form) { ["Input.Grounds"] = "Cup" });

        var page = await TestBrowser.PageAsync(unshown);
        Assert.Contains("Nothing shows physical limits as a ground.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Please answer.", page.QuerySelector("#Input_Words")!.TextContent.Trim());
        // Discharged on 26 October: 28 days end on 23 November (rule of handbook, trade, check value 36).
        Assert.Contains("A deadline is past", (await TestBrowser.PageAsync(late)).QuerySelector("#Input_LateReason_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Claims.CountAsync(claim => claim.ArrivalId == lot.Arrival, Stop)));
    }

    [Fact]
    public async Task A_settled_claim_is_not_settled_again()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var claim = await OpenAsync(buyer, lot, new() { ["Input.Grounds"] = "Weight", ["Input.On"] = "2026-11-25" });
        var withdrawn = new Dictionary<string, string> { ["Input.Outcome"] = "Withdrawn", ["Input.On"] = "2026-11-25", ["Input.Words"] = "The scales were wrong." };

        var nothing = await buyer.SendFormAsync($"/Arrivals/Settle/{claim}", new Dictionary<string, string>(withdrawn) { ["Input.Words"] = "" });
        var settled = await buyer.SendFormAsync($"/Arrivals/Settle/{claim}", withdrawn);
        var again = await buyer.ReadAsync($"/Arrivals/Settle/{claim}");

        Assert.Contains("is missing", (await TestBrowser.PageAsync(nothing)).QuerySelector("#Input_Words_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, settled.StatusCode);
        Assert.Contains("is settled already: withdrawn", again.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Null(again.QuerySelector("#Input_Outcome"));
    }

    [Fact]
    public async Task The_list_filters_and_the_letter_is_a_pdf()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var claim = await OpenAsync(buyer, lot, new() { ["Input.Grounds"] = "Cup", ["Input.On"] = "2026-11-20" });
        var number = await house.FromLedgerAsync(db => db.Claims.Where(one => one.Id == claim).Select(one => one.Ref).SingleAsync(Stop));

        var open = await TextAsync(buyer, "/Arrivals/Claims?Open=True&Late=False&Sort=-made");
        var settled = await TextAsync(buyer, $"/Arrivals/Claims?Open=False&Search={number}");
        var letter = await buyer.Client.GetAsync($"/Arrivals/Claim/{claim}?handler=Letter", Stop);
        var workbook = await buyer.Client.GetAsync("/Arrivals/Claims?handler=Workbook", Stop);

        Assert.Contains(number, open, StringComparison.Ordinal);
        Assert.Contains("No claim fits", settled, StringComparison.Ordinal);
        Assert.Equal("application/pdf", letter.Content.Headers.ContentType!.MediaType);
        using var pdf = PdfDocument.Open(await letter.Content.ReadAsByteArrayAsync(Stop));
        Assert.Contains(number, pdf.GetPage(1).Text, StringComparison.Ordinal);
        using var book = new XLWorkbook(await workbook.Content.ReadAsStreamAsync(Stop));
        Assert.Contains(book.Worksheets.Single().CellsUsed(), cell => cell.GetString() == number);
    }

    private static async Task<Id<Claim>> OpenAsync(TestBrowser buyer, ArrivedLot lot, Dictionary<string, string> form)
    {
        var answer = await buyer.SendFormAsync($"/Arrivals/OpenClaim/{lot.Arrival}", form);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, await answer.Content.ReadAsStringAsync(Stop));
        return Id<Claim>.Parse(answer.Headers.Location!.OriginalString.Split('/')[^1], null);
    }

    private static async Task<string> TextAsync(TestBrowser browser, string address) => (await browser.ReadAsync(address)).QuerySelector("main")!.TextContent;
}

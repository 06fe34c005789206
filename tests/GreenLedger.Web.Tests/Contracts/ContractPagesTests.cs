using System.Net;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Web.Tests.Contracts;

/// <summary>From the decision over draft and signature to fixings, on the pages.</summary>
public sealed class ContractPagesTests(BoughtShop shop) : IClassFixture<BoughtShop>
{
    [Fact]
    public async Task A_contract_is_drafted_in_one_step_from_the_page_of_a_decision()
    {
        var decision = await shop.BuyAsync("A");
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var button = (await buyer.ReadAsync($"/Choosing/Decision/{decision}")).QuerySelector($"a[href='/Contracts/Draft/{decision}']");

        Assert.NotNull(button);
        var answer = await buyer.SendFormAsync($"/Contracts/Draft/{decision}", new Dictionary<string, string> { ["Input.Payment"] = "30 days after arrival", ["Input.QualityFromClearance"] = "true", ["Input.WeighFrom"] = "Availability", ["Input.WeighWithinDays"] = "15" });

        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, (await TestBrowser.PageAsync(answer)).Body!.TextContent);
        var contract = await shop.FindAsync(IdIn(answer));
        var lot = Assert.Single(contract.Terms.Lots);
        Assert.Equal((10, Weight.FromKilograms(60m)), (lot.Bags, lot.BagWeight)); // worked by hand: 600 kg decided, bags of 60 kg
        Assert.Equal(PricePerWeight.Of(8.80m, Currency.Eur, PriceUnit.Kilogram), contract.Terms.Price.Outright);
        Assert.Equal(("Antwerp", "30 days after arrival", GoodsState.Drafted, PriceState.Outright), (contract.Terms.Delivery.Place, contract.Terms.Payment, contract.Goods, contract.Price));
        var page = (await buyer.ReadAsync($"/Contracts/Contract/{contract.Id}")).Body!.TextContent;
        Assert.Contains("5,280.00 EUR", page, StringComparison.Ordinal); // worked by hand: 600 x 8.80
        Assert.Equal((15, WeighingStart.Availability), (contract.Terms.Form.WeighWithinDays!.Value, contract.Terms.Form.WeighFrom));
        Assert.Contains("15 to weigh from availability of the goods; ", page, StringComparison.Ordinal);
        Assert.Contains("for a quality claim from discharge or clearance, whichever is later", page, StringComparison.Ordinal);
        Assert.Contains(contract.Ref, (await buyer.ReadAsync($"/Choosing/Decision/{decision}")).Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains($"This decision stands on contract {contract.Ref} already.", (await buyer.ReadAsync($"/Contracts/Draft/{decision}")).Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains(contract.Ref, (await buyer.ReadAsync($"/Offers/Lot/{shop.Market.LotOf("A").Id}")).QuerySelector(".way")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(contract.Ref, (await buyer.ReadAsync($"/Search?q={contract.Ref}")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_draft_without_a_lot_is_refused_and_nothing_typed_is_lost()
    {
        var decision = await shop.BuyAsync("B");
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var refused = await buyer.SendFormAsync($"/Contracts/Draft/{decision}", new Dictionary<string, string> { ["Input.Lots[0].IsTaken"] = "false", ["Input.Note"] = "Two pallets." });

        var page = await TestBrowser.PageAsync(refused);
        Assert.Contains("Choose at least one lot to buy.", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Two pallets.", page.QuerySelector("#Input_Note")!.TextContent.Trim());
    }

    [Fact]
    public async Task Signed_once_a_contract_is_not_signed_again()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var id = await shop.DraftToBeFixedAsync("C", signed: false);

        var signed = await buyer.SendFormAsync($"/Contracts/Sign/{id}", new Dictionary<string, string> { ["Input.SignedForSeller"] = "Rui Antunes" });
        var again = await buyer.SendFormAsync($"/Contracts/Sign/{id}", new Dictionary<string, string> { ["Input.SignedForSeller"] = "Somebody else" });

        Assert.Equal(HttpStatusCode.Redirect, signed.StatusCode);
        Assert.Contains("a contract is signed once, then amended", (await TestBrowser.PageAsync(again)).Body!.TextContent, StringComparison.Ordinal);
        var contract = await shop.FindAsync(id);
        Assert.Equal(("Rui Antunes", 1), (contract.InForce!.SignedForSeller, contract.Moves.Count));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await shop.PostAsync(id, "sign", new { signedOn = shop.Market.Today })).StatusCode);
    }

    [Fact] // handbook, trade 2.3, example A: 2 lots at 285.40, 1 at 279.15, 2 at 291.65, +35.00: 321.65, 611,613.30 USD
    public async Task Fixings_are_entered_averaged_and_never_more_than_agreed()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var id = await shop.DraftToBeFixedAsync("D");

        Assert.Equal(HttpStatusCode.Redirect, (await FixAsync(buyer, id, "2", "285.40")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await FixAsync(buyer, id, "1", "279.15")).StatusCode);
        var over = await FixAsync(buyer, id, "3", "291.65");
        var between = await FixAsync(buyer, id, "2", "291.67");

        Assert.Contains("Only 2 lots of KC are open", (await TestBrowser.PageAsync(over)).QuerySelector("#Input_Lots_error")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("steps of 0.05", (await TestBrowser.PageAsync(between)).QuerySelector("#Input_Level_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal((2, PriceState.PartlyFixed), ((await shop.FindAsync(id)).Fixings.Count, (await shop.FindAsync(id)).Price));
        Assert.Equal(HttpStatusCode.Redirect, (await FixAsync(buyer, id, "2", "291.65")).StatusCode);
        var page = (await buyer.ReadAsync($"/Contracts/Contract/{id}")).Body!.TextContent;
        Assert.Contains("321.65", page, StringComparison.Ordinal);
        Assert.Contains("611,613.30 USD", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_open_stands_by_month_and_rolls_with_its_spread()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var id = await shop.DraftToBeFixedAsync("E");
        var contract = await shop.FindAsync(id);

        var open = (await buyer.ReadAsync("/Contracts/Open")).Body!.TextContent;
        Assert.Contains($"{BoughtShop.May}: ", open, StringComparison.Ordinal);
        Assert.Contains(contract.Ref, open, StringComparison.Ordinal);
        var july = FuturesMonth.Of(FuturesMarket.Arabica, BoughtShop.May.Year, 7);
        var rolled = await buyer.SendFormAsync($"/Contracts/Roll/{id}", new Dictionary<string, string> { ["Input.To"] = july.ToString(), ["Input.Spread"] = "3.20" });

        Assert.Equal(HttpStatusCode.Redirect, rolled.StatusCode);
        Assert.Equal((july, 31.80m), ((await shop.FindAsync(id)).OpenMonth, (await shop.FindAsync(id)).Position!.Differential)); // handbook, trade 2.3, example B
        Assert.Contains($"{july}: 5 lots open", (await buyer.ReadAsync("/Contracts/Open")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_amendment_leaves_the_signed_version_and_both_can_be_read()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var id = await shop.DraftToBeFixedAsync("F");

        var written = await buyer.SendFormAsync($"/Contracts/Terms/{id}", new Dictionary<string, string> { ["Input.Reason"] = "Twenty bags fewer.", ["Input.Lots[0].Bags"] = "1230" });

        Assert.True(written.StatusCode == HttpStatusCode.Redirect, (await TestBrowser.PageAsync(written)).Body!.TextContent);
        Assert.Equal(1250, (await shop.FindAsync(id)).Terms.Lots[0].Bags);
        Assert.Equal(HttpStatusCode.Redirect, (await buyer.SendFormAsync($"/Contracts/Sign/{id}", new Dictionary<string, string> { ["Input.SignedForSeller"] = "" })).StatusCode);
        var contract = await shop.FindAsync(id);
        Assert.Equal((1230, 1250), (contract.Terms.Lots[0].Bags, contract.Versions[0].Terms.Lots[0].Bags));
        var page = (await buyer.ReadAsync($"/Contracts/Contract/{id}")).Body!.TextContent;
        Assert.Contains("Twenty bags fewer.", page, StringComparison.Ordinal);
        Assert.Contains("1,250 bags × 69 kg", page, StringComparison.Ordinal);
        Assert.Contains("1,230 bags × 69 kg", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sample_is_refused_and_its_replacement_approved_and_only_then_it_is_ready()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var id = await shop.DraftToBeFixedAsync("B", signed: false);
        await buyer.SendFormAsync($"/Contracts/Terms/{id}", new Dictionary<string, string> { ["Input.ApprovalRule"] = "Replace", ["Input.MostSamples"] = "3" });
        await shop.PostAsync(id, "sign", new { signedOn = shop.Market.Today });
        var (first, second) = (await SampleAsync("PSS1"), await SampleAsync("PSS2"));

        var reasonless = await JudgeAsync(buyer, id, first, "Refused", "");
        var refused = await JudgeAsync(buyer, id, first, "Refused", "Two phenolic cups.");
        Assert.Equal(GoodsState.AwaitingApproval, (await shop.FindAsync(id)).Goods);
        var approved = await JudgeAsync(buyer, id, second, "Approved", "");
        var twice = await shop.PostAsync(id, "approvals", new { sampleId = second.Value, verdict = "approved", on = shop.Market.Today });

        Assert.Contains("The reasons for refusing is missing", (await TestBrowser.PageAsync(reasonless)).Body!.TextContent, StringComparison.Ordinal);
        Assert.All([refused, approved], answer => Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, twice.StatusCode);
        var contract = await shop.FindAsync(id);
        Assert.Equal((GoodsState.ReadyToShip, 2), (contract.Goods, contract.Approvals.Count));
        var page = (await buyer.ReadAsync($"/Contracts/Contract/{id}")).Body!.TextContent;
        Assert.Contains("Two phenolic cups.", page, StringComparison.Ordinal);
        Assert.Contains("replaces PSS1", page, StringComparison.Ordinal);
        Assert.Contains(first.ToString(), (await buyer.ReadAsync($"/Samples/Sample/{second}")).QuerySelectorAll("dd a").Select(link => link.GetAttribute("href")!.Split('/')[^1]));
        Assert.Contains(second.ToString(), (await buyer.ReadAsync($"/Samples/Sample/{first}")).QuerySelectorAll("dd a").Select(link => link.GetAttribute("href")!.Split('/')[^1]));
    }

    [Fact]
    public async Task A_lot_is_approved_once_also_by_a_form_that_was_open_before()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var (id, other) = (await AwaitingAsync(buyer), await AwaitingAsync(buyer));
        var (first, second) = (await SampleAsync("PSS3"), await SampleAsync("PSS4"));
        Assert.Equal(HttpStatusCode.Redirect, (await JudgeAsync(buyer, id, first, "Approved", "")).StatusCode);

        var again = await buyer.SendFormAsync($"/Contracts/Approve/{other}", new Dictionary<string, string> { ["Input.SampleId"] = $"{second}", ["Input.Verdict"] = "Approved" }, to: $"/Contracts/Approve/{id}");

        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Contains("no sample waits for approval", (await TestBrowser.PageAsync(again)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Single((await shop.FindAsync(id)).Approvals);
        Assert.Equal(GoodsState.AwaitingApproval, (await shop.FindAsync(other)).Goods);
    }

    [Fact]
    public async Task A_closing_day_that_is_added_moves_the_first_notice()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var before = Calendar();

        var added = await buyer.SendFormAsync("/Contracts/Calendar", new Dictionary<string, string>
        {
            ["Market"] = "Arabica",
            ["On"] = before.FirstNotice(BoughtShop.May).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
            ["Name"] = "Snow",
        }, "Close");

        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        var row = (await buyer.ReadAsync("/Contracts/Calendar")).QuerySelectorAll("tr").First(one => one.TextContent.Contains(BoughtShop.May.ToString(), StringComparison.Ordinal));
        var earlier = before.FirstNotice(BoughtShop.May).AddDays(-1);
        while (!before.IsBusinessDay(FuturesMarket.Arabica, earlier))
        {
            earlier = earlier.AddDays(-1);
        }

        Assert.Contains(earlier.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture), row.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_confirmation_is_a_pdf_and_a_viewer_may_have_it_but_change_nothing()
    {
        var id = await shop.DraftToBeFixedAsync("A", signed: false);
        var viewer = await shop.House.BrowserAsync(Role.Viewer);

        var pdf = await viewer.Client.GetAsync($"/Contracts/Contract/{id}?handler=Confirmation", TestContext.Current.CancellationToken);
        var page = await viewer.ReadAsync($"/Contracts/Contract/{id}");

        Assert.Equal("application/pdf", pdf.Content.Headers.ContentType!.MediaType);
        Assert.Null(page.QuerySelector($"a[href='/Contracts/Sign/{id}']"));
        Assert.Equal(HttpStatusCode.Forbidden, (await (await shop.House.BrowserAsync(Role.Cupper)).Client.GetAsync($"/Contracts/Contract/{id}", TestContext.Current.CancellationToken)).StatusCode);
    }

    private static Task<HttpResponseMessage> FixAsync(TestBrowser buyer, Id<Contract> id, string lots, string level) =>
        buyer.SendFormAsync($"/Contracts/Fix/{id}", new Dictionary<string, string> { ["Input.Lots"] = lots, ["Input.Level"] = level });

    private static Task<HttpResponseMessage> JudgeAsync(TestBrowser buyer, Id<Contract> id, Id<Sample> sample, string verdict, string remarks) =>
        buyer.SendFormAsync($"/Contracts/Approve/{id}", new Dictionary<string, string> { ["Input.SampleId"] = $"{sample}", ["Input.Verdict"] = verdict, ["Input.Remarks"] = remarks });

    private async Task<Id<Contract>> AwaitingAsync(TestBrowser buyer)
    {
        var id = await shop.DraftToBeFixedAsync("B", signed: false);
        await buyer.SendFormAsync($"/Contracts/Terms/{id}", new Dictionary<string, string> { ["Input.ApprovalRule"] = "Replace", ["Input.MostSamples"] = "3" });
        await shop.PostAsync(id, "sign", new { signedOn = shop.Market.Today });
        return id;
    }

    /// <summary>A pre-shipment sample of lot B that came today.</summary>
    private Task<Id<Sample>> SampleAsync(string code) => shop.House.FromLedgerAsync(async db =>
    {
        var sample = new Sample(shop.Market.LotOf("B").Id, SampleKind.PreShipment, code, shop.Market.Today, Weight.FromGrams(500m));
        db.Add(sample);
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        return sample.Id;
    });

    private static Id<Contract> IdIn(HttpResponseMessage answer) =>
        Id<Contract>.Parse(answer.Headers.Location!.ToString().Split('/')[^1], null);

    private static ExchangeCalendar Calendar() =>
        new(Enumerable.Range(DateTime.UtcNow.Year, 3).SelectMany(StandardHolidays.Of), new FixingHabits());
}

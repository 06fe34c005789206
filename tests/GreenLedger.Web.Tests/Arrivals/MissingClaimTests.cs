using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Shipments;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Arrivals;

/// <summary>Claims on goods that did not come: of a contract over 550 bags of 69 kg at 321.65 ¢/lb, to be shipped by 30 September 2026.</summary>
public sealed class MissingClaimTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_never_shipped_is_claimed_from_the_page_of_the_contract_settled_and_counted()
    {
        var contract = await SignedContract.StoreAsync(house);
        await house.InLedgerAsync(async db =>
        {
            db.Add(new Note(PapersOf.Contract, contract.Id.Value, "The seller named no vessel.", (await db.People.FirstAsync(Stop)).Id, new DateTimeOffset(2026, 10, 2, 12, 0, 0, TimeSpan.Zero)));
            await db.SaveChangesAsync(Stop);
        });
        var buyer = await house.BrowserAsync(Role.Buyer);
        var address = $"/Arrivals/Missing/{contract.Id}";
        var fields = new Dictionary<string, string> { ["Input.On"] = "2026-11-02", ["Input.Market"] = "3.40", ["Input.Words"] = "Ship or pay." };

        Assert.NotNull((await buyer.ReadAsync($"/Contracts/Contract/{contract.Id}")).QuerySelector($"a[href='{address}']"));
        var opened = await buyer.SendFormAsync(address, fields);
        Assert.True(opened.StatusCode == HttpStatusCode.Redirect, (await TestBrowser.PageAsync(opened)).Body!.TextContent);
        var again = await TestBrowser.PageAsync(await buyer.SendFormAsync(address, fields));
        var page = await buyer.ReadAsync(opened.Headers.Location!.ToString());

        // Worked by hand: 37,950 kg ÷ 0.45359237 × (3.40 and 3.2165) USD are 284,462.46 and 269,109.85.
        Assert.Contains("15,352.61", page.QuerySelector(".figures")!.TextContent, StringComparison.Ordinal);
        foreach (var said in new[] { "550 of 550 bags", "shipment period ended on 30 Sep 2026", "The seller named no vessel.", "Version 1, signed 1 Aug 2026", "14 Nov 2026", "the end of the shipment period" }) // 45 days from 30 September, worked by hand
        {
            Assert.Contains(said, page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        }

        Assert.Contains("names goods not shipped already", again.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("goods not shipped", (await buyer.ReadAsync($"/Contracts/Contract/{contract.Id}")).QuerySelector("#claims")!.ParentElement!.TextContent, StringComparison.Ordinal);
        Assert.Contains("1 on goods that did not come", (await buyer.ReadAsync($"/Offers/SupplierRecord/{contract.Supplier}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var letter = await buyer.Client.GetAsync(new Uri($"{opened.Headers.Location}?handler=Letter", UriKind.Relative), Stop);
        using var pdf = PdfDocument.Open(await letter.Content.ReadAsByteArrayAsync(Stop));
        var text = string.Join(' ', pdf.GetPages().SelectMany(one => one.GetWords()).Select(word => word.Text));
        Assert.Contains("Goods not shipped", text, StringComparison.Ordinal);
        Assert.Contains("Did not come: 550 bags, 37,950 kg", text, StringComparison.Ordinal);
        Assert.Contains("15,352.61", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Received:", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_script_claims_what_went_on_board_and_did_not_arrive_and_only_that()
    {
        var lot = await ArrivedLot.FillAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);
        var address = new Uri($"/api/arrivals/missing/{lot.Contract}", UriKind.Relative);

        var listed = (await script.GetFromJsonAsync<JsonElement>(address, Stop)).EnumerateArray().ToList();
        var missing = Assert.Single(listed, one => one.GetProperty("isMissing").GetBoolean());
        var refused = new List<string>();
        foreach (var part in listed.Where(one => !one.GetProperty("isMissing").GetBoolean()))
        {
            var answer = await script.PostAsJsonAsync($"{address}/claims", new { on = "2026-11-25", part = part.GetProperty("part").GetGuid() }, Stop);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            refused.Add((await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("detail").GetString()!);
        }

        var opened = await script.PostAsJsonAsync($"{address}/claims", new { on = "2026-11-25", part = missing.GetProperty("part").GetGuid(), paid = new { amount = 134_554.93m, currency = "USD" } }, Stop);
        var claim = await opened.Content.ReadFromJsonAsync<JsonElement>(Stop);

        Assert.Equal(lot.AfloatLot.Value, missing.GetProperty("part").GetGuid());
        Assert.Equal(["What is agreed was shipped: open a claim on what came from its arrival.", "This part was received: open the claim from its arrival."], refused);
        Assert.Equal(HttpStatusCode.Created, opened.StatusCode);
        Assert.Equal((JsonValueKind.Null, lot.Afloat.Value), (claim.GetProperty("arrivalId").ValueKind, claim.GetProperty("shipmentId").GetGuid()));
        Assert.Equal("notArrived", claim.GetProperty("grounds")[0].GetProperty("ground").GetString());
        Assert.Equal((275, 18_975m), (claim.GetProperty("evidence").GetProperty("missing").GetProperty("bags").GetInt32(), claim.GetProperty("evidence").GetProperty("missing").GetProperty("weightKg").GetDecimal())); // handbook, trade 8
        Assert.Equal("2026-12-10", claim.GetProperty("lastDay").GetString()); // worked by hand: 45 days from discharge on 26 October
    }

    [Fact]
    public async Task Its_settlement_stands_in_the_cost_of_the_lot_and_is_taken_back_with_a_reason()
    {
        var lot = await ArrivedLot.FillAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);
        var opened = await script.PostAsJsonAsync($"/api/arrivals/missing/{lot.Contract}/claims", new { on = "2026-11-25", part = lot.AfloatLot.Value, paid = new { amount = 1_000m, currency = "USD" } }, Stop);
        var id = (await opened.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();

        var settled = await script.PostAsJsonAsync($"/api/arrivals/claims/{id}/settle", new { outcome = "allowance", on = "2026-11-25", amount = new { amount = 500m, currency = "USD" } }, Stop);
        var cost = await house.FromLedgerAsync(db => db.CostPostings.Where(one => one.ClaimId == new Domain.Id<Domain.Arrivals.Claim>(id) && one.WithdrawnAt == null).Select(one => one.House).SingleAsync(Stop));
        var back = await script.PostAsJsonAsync($"/api/arrivals/claims/{id}/reopen", new { reason = "Entered on the wrong claim." }, Stop);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (settled.StatusCode, back.StatusCode));
        Assert.Equal(-400m, cost.Amount); // worked by hand: 500 USD at 1.25 USD for a euro, a credit
        Assert.Equal(0, await house.FromLedgerAsync(db => db.CostPostings.CountAsync(one => one.ClaimId == new Domain.Id<Domain.Arrivals.Claim>(id) && one.WithdrawnAt == null, Stop)));
    }

    [Fact]
    public async Task A_viewer_reads_and_a_cupper_does_not_and_nobody_claims_in_their_place()
    {
        var contract = await SignedContract.StoreAsync(house);
        var address = $"/api/arrivals/missing/{contract.Id}";

        Assert.Equal(HttpStatusCode.OK, (await (await house.ScriptAsync(Role.Viewer)).GetAsync(new Uri(address, UriKind.Relative), Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Cupper)).GetAsync(new Uri(address, UriKind.Relative), Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Viewer)).PostAsJsonAsync($"{address}/claims", new { on = "2026-11-02" }, Stop)).StatusCode);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Claims.CountAsync(claim => claim.ContractId == contract.Id, Stop)));
    }
}

using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Contracts;

/// <summary>The example's lots were cupped on an offer sample of 300 g.</summary>
public sealed class ApprovalBesideTests(BoughtShop shop) : IClassFixture<BoughtShop>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_offer_sample_stands_beside_the_pre_shipment_sample_and_both_can_be_laid_out()
    {
        var (id, offered, sent) = await AwaitingAsync("D", "PSD1");
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync($"/Contracts/Approve/{id}");
        var reply = Assert.Single((await (await shop.House.ScriptAsync(Role.Viewer)).GetFromJsonAsync<JsonElement>(Address(id), Stop)).EnumerateArray());

        var text = page.QuerySelector("main")!.TextContent;
        Assert.Contains("84.00 ±", page.QuerySelector("table")!.TextContent, StringComparison.Ordinal); // the example's score of lot D
        Assert.Contains("not graded", page.QuerySelector("table")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("300 g of QXMD and 500 g of PSD1 are left.", text, StringComparison.Ordinal);
        var link = page.QuerySelectorAll("main a").Single(one => one.TextContent.Contains("Lay out both in one session", StringComparison.Ordinal));
        var picked = (await buyer.ReadAsync(link.GetAttribute("href")!)).QuerySelectorAll("input[name='Input.Samples'][checked]").Select(box => box.GetAttribute("value")!);
        Assert.Equal(new HashSet<string> { offered.Value.ToString(), sent.Value.ToString() }, picked.ToHashSet());
        Assert.Equal(84.00m, reply.GetProperty("offer").GetProperty("cup").GetProperty("score").GetDecimal());
        Assert.Equal(JsonValueKind.Null, reply.GetProperty("sample").GetProperty("cup").ValueKind);
        Assert.Equal([offered.Value, sent.Value], reply.GetProperty("inOneTable").EnumerateArray().Select(one => one.GetGuid()));
    }

    [Fact]
    public async Task What_is_left_is_weighed_with_a_reason_and_where_nothing_was_kept_the_page_says_so()
    {
        var (id, offered, _) = await AwaitingAsync("E", "PSE1");
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        using var script = await shop.House.ScriptAsync(Role.Buyer);

        var reasonless = await buyer.SendFormAsync($"/Samples/Left/{offered}", new Dictionary<string, string> { ["Input.LeftGrams"] = "0", ["Input.Reason"] = "" });
        var tooMuch = await script.PostAsJsonAsync(new Uri("/api/samples/QXME/left", UriKind.Relative), new { leftGrams = 301, reason = "Weighed." }, Stop);
        Assert.Contains("300 g", (await buyer.ReadAsync($"/Samples/Sample/{offered}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var weighed = await buyer.SendFormAsync($"/Samples/Left/{offered}", new Dictionary<string, string> { ["Input.LeftGrams"] = "0", ["Input.Reason"] = "The bag was thrown away." });

        Assert.Contains("Say why", (await TestBrowser.PageAsync(reasonless)).QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, tooMuch.StatusCode);
        Assert.Contains("Between 0 g and the 300 g that came can be left", await tooMuch.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, weighed.StatusCode);
        Assert.Contains("The bag was thrown away.", (await buyer.ReadAsync($"/Samples/Sample/{offered}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var page = await buyer.ReadAsync($"/Contracts/Approve/{id}");
        Assert.Contains("No offer sample was kept: nothing is left to cup the two together.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Lay out both", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Empty((await script.GetFromJsonAsync<JsonElement>(Address(id), Stop))[0].GetProperty("inOneTable").EnumerateArray());
        Assert.Equal(0m, (await script.GetFromJsonAsync<JsonElement>(new Uri("/api/samples/QXME/way", UriKind.Relative), Stop)).GetProperty("leftGrams").GetDecimal());
    }

    private static Uri Address(Id<Contract> id) => new($"/api/contracts/{id}/approvals", UriKind.Relative);

    /// <summary>A signed contract over a lot, with a pre-shipment sample of 500 g that came today.</summary>
    private async Task<(Id<Contract> Id, Id<Sample> Offered, Id<Sample> Sent)> AwaitingAsync(string lot, string label)
    {
        var id = await shop.DraftToBeFixedAsync(lot, signed: false);
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Contracts/Terms/{id}", new Dictionary<string, string> { ["Input.ApprovalRule"] = "Replace", ["Input.MostSamples"] = "3" });
        Assert.Equal(HttpStatusCode.OK, (await shop.PostAsync(id, "sign", new { signedOn = shop.Market.Today })).StatusCode);
        return await shop.House.FromLedgerAsync(async db =>
        {
            var sent = new Sample(shop.Market.LotOf(lot).Id, SampleKind.PreShipment, label, shop.Market.Today, Weight.FromGrams(500m));
            db.Add(sent);
            await db.SaveChangesAsync(Stop);
            return (id, await db.Samples.Where(sample => sample.LabelCode == "QXM" + lot).Select(sample => sample.Id).SingleAsync(Stop), sent.Id);
        });
    }
}

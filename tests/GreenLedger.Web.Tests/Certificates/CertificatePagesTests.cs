using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Certificates;

/// <summary>Lots that were signed for on 1 July 2026 and went on board on 28 September 2026 (<see cref="ArrivedLot"/>); today is 26 November 2026.</summary>
public sealed class CertificatePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_claim_without_a_certificate_on_its_day_is_told_on_contract_and_arrival_until_there_is_one()
    {
        var (arrived, supplier) = await FillAsync("organic");
        var buyer = await house.BrowserAsync(Role.Buyer);

        var contract = await MainAsync(buyer, $"/Contracts/Contract/{arrived.Contract}");
        var arrival = await MainAsync(buyer, $"/Arrivals/Arrival/{arrived.Arrival}");
        var until = DateTime.UtcNow.Date.AddDays(14).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var added = await buyer.SendFormAsync("/Certificates/Edit", Form(supplier, "organic", "2026-09-01", until));
        var after = await MainAsync(buyer, $"/Arrivals/Arrival/{arrived.Arrival}");

        Assert.Contains("organic is claimed, and no certificate", contract, StringComparison.Ordinal);
        Assert.Contains("was valid on board, 28 Sep 2026", arrival, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        Assert.DoesNotContain("organic is claimed, and no certificate", after, StringComparison.Ordinal);
        Assert.Contains("was valid on board, 28 Sep 2026", after, StringComparison.Ordinal);
        // Handbook, trade 6.4: alerts at 60 and 30 days.
        Assert.Contains("ends in 14 days", await MainAsync(buyer, added.Headers.Location!.OriginalString), StringComparison.Ordinal);
        Assert.Contains("O-77", await MainAsync(buyer, "/Due"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_suspension_is_written_down_with_its_reason()
    {
        var (arrived, supplier) = await FillAsync("rainforest alliance");
        var buyer = await house.BrowserAsync(Role.Buyer);
        var address = (await buyer.SendFormAsync("/Certificates/Edit", Form(supplier, "rainforest alliance", "2026-01-01", "2027-12-31"))).Headers.Location!.OriginalString;

        var bare = await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Standing"] = "Suspended", ["Input.StandingReason"] = "" });
        await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Standing"] = "Suspended", ["Input.StandingReason"] = "The inspection was put off" });

        Assert.Contains("The reason is kept", (await TestBrowser.PageAsync(bare)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("decide by hand", await MainAsync(buyer, $"/Contracts/Contract/{arrived.Contract}"), StringComparison.Ordinal);
    }

    /// <summary>Handbook, trade 6.4: alerts at 60 and 30 days; Fairtrade by the contract's date.</summary>
    [Fact]
    public async Task A_script_reads_and_sets_the_days_that_matter()
    {
        using var script = await house.ScriptAsync(Role.Buyer);

        var usual = await script.GetFromJsonAsync<JsonElement>("/api/certificates/habits", Stop);
        var refused = await script.PutAsJsonAsync("/api/certificates/habits", new { version = usual.GetProperty("version").GetInt32(), firstAlertDays = 30, lastAlertDays = 60, byContractDay = new[] { "fairtrade" } }, Stop);
        var kept = await script.PutAsJsonAsync("/api/certificates/habits", new { version = usual.GetProperty("version").GetInt32(), firstAlertDays = 60, lastAlertDays = 30, byContractDay = new[] { "Fairtrade" } }, Stop);

        Assert.Equal((60, 30, "fairtrade"), (usual.GetProperty("firstAlertDays").GetInt32(), usual.GetProperty("lastAlertDays").GetInt32(), usual.GetProperty("byContractDay")[0].GetString()));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK), (refused.StatusCode, kept.StatusCode));
        Assert.Equal("fairtrade", (await kept.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("byContractDay")[0].GetString());
    }

    [Fact]
    public async Task A_script_keeps_certificates_by_the_same_rules()
    {
        var (arrived, supplier) = await FillAsync("fairtrade");
        using var script = await house.ScriptAsync(Role.Buyer);
        object Request(string until) => new { scheme = "fairtrade", holder = "Supplier", supplierId = supplier.Value, number = "F-9", from = "2026-01-01", until };

        var refused = await script.PostAsJsonAsync("/api/certificates", Request("2025-01-01"), Stop);
        var added = await (await script.PostAsJsonAsync("/api/certificates", Request("2026-07-15"), Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);
        var changed = await script.PutAsJsonAsync($"/api/certificates/{added.GetProperty("id").GetGuid()}", Request("2026-07-01"), Stop);
        var claims = await script.GetFromJsonAsync<JsonElement>($"/api/certificates/contracts/{arrived.Contract}", Stop);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        // Signed on 1 July 2026, the last day of the certificate; that it ended before shipment does not matter for this scheme.
        Assert.True(claims[0].GetProperty("holds").GetBoolean());
    }

    private static Dictionary<string, string> Form(Id<Supplier> supplier, string scheme, string from, string until) => new()
    {
        ["Input.Scheme"] = scheme,
        ["Input.Holder"] = nameof(CertificateHolder.Supplier),
        ["Input.SupplierId"] = $"{supplier}",
        ["Input.Number"] = "O-77",
        ["Input.From"] = from,
        ["Input.Until"] = until,
    };

    private static async Task<string> MainAsync(TestBrowser browser, string address) => (await browser.ReadAsync(address)).QuerySelector("main")!.TextContent;

    private async Task<(ArrivedLot Arrived, Id<Supplier> Supplier)> FillAsync(string scheme)
    {
        var arrived = await ArrivedLot.FillAsync(house);
        var supplier = await house.FromLedgerAsync(async db =>
        {
            var lot = await db.Lots.SingleAsync(one => db.Arrivals.Any(arrival => arrival.Id == arrived.Arrival && arrival.LotId == one.Id), Stop);
            lot.Certify([scheme]);
            await db.SaveChangesAsync(Stop);
            return await db.Contracts.Where(one => one.Id == arrived.Contract).Select(one => one.SupplierId).SingleAsync(Stop);
        });
        return (arrived, supplier);
    }
}

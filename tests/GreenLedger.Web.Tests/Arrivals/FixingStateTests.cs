using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Arrivals;

/// <summary>A contract over 550 bags of 69 kg (handbook, trade 8) at KC to be fixed in two lots, of which one is fixed, all of it shipped and received.</summary>
public sealed class FixingStateTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Contract_arrival_and_claim_tell_the_gap_and_the_day_to_fix_by_on_page_and_API()
    {
        var (contract, arrival) = await FillAsync();
        using var script = await house.ScriptAsync(Role.Buyer);
        var viewer = await house.BrowserAsync(Role.Viewer);
        var opened = await script.PostAsJsonAsync($"/api/arrivals/{arrival}/claims", new { on = "2026-11-24", grounds = new[] { "condition" } }, Stop);
        var claim = (await opened.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();

        // Worked by hand: 37,950 kg less one lot of 17,009.713875 kg (handbook, trade 2.1) are 20,940.286 kg, 1.2311 lots.
        const string Gap = "Under-fixed by 20,940.286 kg, 1.2311 lots of KC: 17,009.714 kg are fixed, 37,950 kg were shipped.";
        foreach (var address in new[] { $"/api/contracts/{contract}", $"/api/arrivals/{arrival}", $"/api/arrivals/claims/{claim}" })
        {
            var fixing = (await script.GetFromJsonAsync<JsonElement>(new Uri(address, UriKind.Relative), Stop)).GetProperty("fixing");
            Assert.Equal(Gap, fixing.GetProperty("gapSentence").GetString());
            Assert.Equal((20_940.286125m, 0m, true), (fixing.GetProperty("underKg").GetDecimal(), fixing.GetProperty("overKg").GetDecimal(), fixing.GetProperty("isFlagged").GetBoolean()));
            // Handbook, trade 2.1 and check value of its section 12: first notice of KCH27 is 18 February 2027, and three business days before it, Presidents’ Day on the 15th left out, the 12th.
            Assert.Equal(("2027-02-18", "2027-02-12"), (fixing.GetProperty("firstNotice").GetString(), fixing.GetProperty("lastSensibleDay").GetString()));
        }

        foreach (var address in new[] { $"/Contracts/Contract/{contract}", $"/Arrivals/Arrival/{arrival}" })
        {
            var page = (await viewer.ReadAsync(address)).QuerySelector("main")!.TextContent;
            Assert.Contains(Gap, page, StringComparison.Ordinal);
            Assert.Contains("12 Feb 2027", page, StringComparison.Ordinal);
        }
    }

    private async Task<(Id<Contract> Contract, Id<Arrival> Arrival)> FillAsync()
    {
        await house.OpenHouseAsync();
        return await house.FromLedgerAsync(async db =>
        {
            var buyer = await db.People.FirstAsync(person => person.Roles == Role.Buyer, Stop);
            var supplier = new Supplier("Unfixed Exports", SupplierKind.Exporter);
            var lot = new Lot("UF-1", "Unfixed washed", supplier.Id);
            var price = new PriceTerms(null, FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3), 35m, 2, Caller.Buyer, null, null);
            var contract = Contract.Draft("PF-1", supplier.Id, ArrivedLot.Terms(lot) with { Price = price }, new Dictionary<Id<Lot>, Id<Decision>>(), buyer.Id, Noon);
            contract.Sign(new DateOnly(2026, 7, 1), null, buyer.Id, Noon);
            contract.Fix(new FixingOrder(new DateOnly(2026, 9, 1), 1, null, 285.40m, null), buyer.Id, Noon);
            var shipment = new Shipment("SF-1", new Passage("BL-1", "Linnet", "012E", "COCTG", "DEHAM", null, null, new DateOnly(2026, 9, 28), new DateOnly(2026, 10, 26), null));
            shipment.Carry(contract, contract.Lots[0].Id, 550, Weight.FromKilograms(37_950m));
            shipment.Board(contract, [], null, buyer.Id, Noon);
            var arrival = new Arrival(shipment, shipment.Lots[0].Id, new Receipt(new DateOnly(2026, 10, 29), 550, Weight.FromKilograms(37_940m), new ReceiptCondition(2, 0, 0, false, null, true), null), buyer.Id, Noon);
            db.AddRange(supplier, lot, contract, shipment, arrival);
            await db.SaveChangesAsync(Stop);
            return (contract.Id, arrival.Id);
        });
    }
}

using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

public sealed class SupplierRecordsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_suppliers_record_tells_what_arrived_of_what_was_agreed_on_page_and_api()
    {
        var (lot, supplier) = await StoreAsync();

        var page = await (await house.BrowserAsync(Role.Viewer)).ReadAsync($"/Offers/SupplierRecord/{supplier}");
        var reply = await (await house.ScriptAsync(Role.Viewer)).GetFromJsonAsync<JsonElement>(new Uri($"/api/offers/suppliers/{supplier}/record", UriKind.Relative), Stop);

        var text = page.QuerySelector("main")!.TextContent;
        // Worked by hand from ArrivedLot: seven marks 0.25 lower in the arrival, 1.75 points; two parts on board on 28 September for a
        // period to the 30th; 18,790 kg landed of 18,975 (handbook, trade 8), -0.97 %.
        Assert.Equal(-1.75, Math.Round(reply.GetProperty("differences").GetProperty("mean").GetDouble(), 4));
        Assert.Equal((2, 2), (reply.GetProperty("shippedInTime").GetProperty("count").GetInt32(), reply.GetProperty("shippedInTime").GetProperty("of").GetInt32()));
        Assert.Equal(-0.975m, Math.Round(reply.GetProperty("weightDifferencePercent").GetDecimal(), 3));
        Assert.Contains("−1.75 (1 arrival)", text, StringComparison.Ordinal);
        Assert.Contains("2 of 2", text, StringComparison.Ordinal);
        Assert.DoesNotContain("100.0 %", text, StringComparison.Ordinal); // two parts are too few for a share
        Assert.Equal($"/Arrivals/Arrival/{lot.Arrival}", page.QuerySelector("table a")!.GetAttribute("href"));
        Assert.Contains("in one session", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_ranking_marks_what_is_too_few_until_the_house_asks_for_less()
    {
        await StoreAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var before = (await buyer.ReadAsync("/Offers/Records?by=InTime")).QuerySelector("main")!.TextContent;
        await buyer.SendFormAsync("/Offers/RecordHabits", new Dictionary<string, string> { ["Input.LeastNumber"] = "2" });
        var after = await buyer.ReadAsync("/Offers/Records?by=InTime");
        await buyer.SendFormAsync("/Offers/RecordHabits", new Dictionary<string, string> { ["Input.LeastNumber"] = "5" });

        Assert.Contains("too few (2)", before, StringComparison.Ordinal);
        Assert.Equal("1", after.QuerySelector("tbody td")!.TextContent.Trim());
        Assert.Contains("100.0 % (2 of 2)", after.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Producer")]
    [InlineData("Origin")]
    public async Task Producers_and_origins_have_their_pages(string of)
    {
        var stored = await StoreAsync();
        await house.InLedgerAsync(async db =>
        {
            var producer = new Producer("Finca La Candela", ProducerKind.Farm, "CO");
            db.Add(producer);
            foreach (var lot in await db.Lots.Where(lot => db.Arrivals.Any(arrival => arrival.LotId == lot.Id && arrival.Id == stored.Lot.Arrival)).ToListAsync(Stop))
            {
                lot.Grow("CO", null, producer.Id, null, null, null);
            }

            await db.SaveChangesAsync(Stop);
        });
        var buyer = await house.BrowserAsync(Role.Buyer);

        var listed = (await buyer.ReadAsync($"/Offers/Records?of={of}")).QuerySelectorAll("tbody th a");
        var record = await buyer.ReadAsync(listed[0].GetAttribute("href")!);

        Assert.Contains(listed[0].TextContent.Trim(), record.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Bought of what was offered", record.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cupper_sees_no_record()
    {
        var (_, supplier) = await StoreAsync();

        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.BrowserAsync(Role.Cupper)).Client.GetAsync($"/Offers/SupplierRecord/{supplier}", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.LeadCupper)).GetAsync(new Uri("/api/offers/suppliers/record", UriKind.Relative), Stop)).StatusCode);
    }

    private async Task<(ArrivedLot Lot, Id<Supplier> Supplier)> StoreAsync()
    {
        var lot = await ArrivedLot.FillAsync(house);
        return (lot, await house.FromLedgerAsync(db => db.Contracts.Where(contract => contract.Id == lot.Contract).Select(contract => contract.SupplierId).SingleAsync(Stop)));
    }
}

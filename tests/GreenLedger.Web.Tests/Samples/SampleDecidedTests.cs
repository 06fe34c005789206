using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Samples;

/// <summary>A sample's way names the record that decided it, to whoever may read it.</summary>
public sealed class SampleDecidedTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_arrival_sample_leads_to_the_arrival_that_it_was_compared_for()
    {
        var arrived = await ArrivedLot.FillAsync(house);
        var sample = await house.FromLedgerAsync(async db =>
        {
            var arrival = await db.Arrivals.SingleAsync(one => one.Id == arrived.Arrival, Stop);
            return await db.Samples.SingleAsync(one => one.Id == arrival.ArrivalSampleId, Stop);
        });
        var (buyer, cupper) = (await house.BrowserAsync(Role.Buyer), await house.BrowserAsync(Role.Cupper));

        var shown = (await buyer.ReadAsync($"/Samples/Sample/{sample.Id}")).QuerySelector(".sample-way li:last-child")!;
        var others = (await cupper.ReadAsync($"/Samples/Sample/{sample.Id}")).QuerySelector(".sample-way li:last-child")!;
        var way = await (await house.ScriptAsync(Role.Buyer)).GetFromJsonAsync<JsonElement>($"/api/samples/{sample.LabelCode}/way", Stop);
        var row = await (await house.ScriptAsync(Role.Buyer)).GetFromJsonAsync<JsonElement>($"/api/samples/{sample.LabelCode}", Stop);

        Assert.Equal($"/Arrivals/Arrival/{arrived.Arrival}", shown.QuerySelector("a")!.GetAttribute("href"));
        Assert.Equal((true, null), (others.ClassList.Contains("reached"), others.QuerySelector("a")));
        Assert.Equal(("comparison", arrived.Arrival.Value), (way.GetProperty("decided").GetProperty("by").GetString(), way.GetProperty("decided").GetProperty("record").GetGuid()));
        Assert.Equal("decided", row.GetProperty("standsAt").GetString());
    }

    [Fact]
    public async Task A_pre_shipment_sample_that_nobody_judged_leads_to_the_contract_that_shipped()
    {
        var arrived = await ArrivedLot.FillAsync(house);
        var sample = await house.FromLedgerAsync(async db =>
        {
            var arrival = await db.Arrivals.SingleAsync(one => one.Id == arrived.Arrival, Stop);
            return await db.Samples.SingleAsync(one => one.Id == arrival.ApprovedSampleId, Stop);
        });

        var page = await (await house.BrowserAsync(Role.Buyer)).ReadAsync($"/Samples/Sample/{sample.Id}");
        var others = await (await house.BrowserAsync(Role.Cupper)).ReadAsync($"/Samples/Sample/{sample.Id}");
        var way = await (await house.ScriptAsync(Role.Buyer)).GetFromJsonAsync<JsonElement>($"/api/samples/{sample.LabelCode}/way", Stop);

        // The contract of ArrivedLot shipped on 28 September 2026.
        var shown = page.QuerySelector(".sample-way li:last-child")!;
        Assert.EndsWith("on 28 Sept 2026", Words(shown.TextContent).Replace("Sep ", "Sept ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("not judged: shipped", Words(shown.TextContent), StringComparison.Ordinal);
        Assert.Equal($"/Contracts/Contract/{arrived.Contract}", shown.QuerySelector("a")!.GetAttribute("href"));
        Assert.Null(others.QuerySelector(".sample-way li:last-child a"));
        Assert.DoesNotContain("here", Words(page.QuerySelector(".sample-way")!.TextContent), StringComparison.Ordinal);
        Assert.Equal((arrived.Contract.Value, "2026-09-28"), (way.GetProperty("unjudged").GetProperty("contract").GetGuid(), way.GetProperty("unjudged").GetProperty("on").GetString()));
    }

    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}

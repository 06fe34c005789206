using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Shipments;

public sealed class ShipmentsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly Uri Shipments = new("/api/shipments", UriKind.Relative);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Two_parts_written_down_by_a_script_move_the_contract_from_part_shipped_to_shipped()
    {
        var contract = await SignedContract.StoreAsync(house);

        var first = await ReadAsync(await PostAsync(contract, 275, 18_975m, "2026-09-20"));
        var part = (await contract.FindAsync(house)).Goods;
        var page = (await (await house.BrowserAsync(Role.Viewer)).ReadAsync($"/Contracts/Contract/{contract.Id}")).QuerySelector("main")!.TextContent;
        var second = await ReadAsync(await PostAsync(contract, 275, 18_960m, "2026-10-03"));

        // Handbook, trade 8: 275 bags of 69 kg are 18,975 kg; the other half is left.
        Assert.Equal((275, 18_975m), (first.GetProperty("bagsLeft").GetInt32(), first.GetProperty("netWeightLeftKg").GetDecimal()));
        Assert.Equal(GoodsState.PartShipped, part);
        Assert.Contains("275 bags, 18,975", string.Join(' ', page.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        // Rule of handbook, trade 4.2: the period ends on 30 September, three days before 3 October.
        Assert.Equal((0, 3), (first.GetProperty("daysLate").GetInt32(), second.GetProperty("daysLate").GetInt32()));
        Assert.Equal((0, 0m), (second.GetProperty("bagsLeft").GetInt32(), second.GetProperty("netWeightLeftKg").GetDecimal()));
        Assert.Equal(GoodsState.Shipped, (await contract.FindAsync(house)).Goods);
    }

    [Fact]
    public async Task Shipping_without_an_approval_needs_a_reason_and_is_flagged_for_good()
    {
        var contract = await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        var before = await house.FromLedgerAsync(db => db.Shipments.CountAsync(Stop));

        var refused = await PostAsync(contract, 550, 37_950m, "2026-09-20");
        Assert.Equal(before, await house.FromLedgerAsync(db => db.Shipments.CountAsync(Stop)));
        var taken = await ReadAsync(await PostAsync(contract, 550, 37_950m, "2026-09-20", "The vessel was early."));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("say what happened", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.True(taken.GetProperty("lots")[0].GetProperty("isUnapproved").GetBoolean());
        var stored = await contract.FindAsync(house);
        Assert.True(stored.Moves[^1].IsBreach);
        Assert.Empty(stored.Approvals);
        var list = (await (await house.BrowserAsync(Role.Buyer)).ReadAsync("/Shipments")).QuerySelector("main")!.TextContent;
        Assert.Contains("without approval", list, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_asks_why_a_lot_shipped_unapproved_only_where_its_approval_lacks()
    {
        var (asked, free) = (await SignedContract.StoreAsync(house, ApprovalRule.Replace), await SignedContract.StoreAsync(house));
        var buyer = await house.BrowserAsync(Role.Buyer);

        var lacking = await buyer.ReadAsync($"/Shipments/Edit?contract={asked.Id}");
        var other = await buyer.ReadAsync($"/Shipments/Edit?contract={free.Id}");
        var refused = await TestBrowser.PageAsync(await buyer.SendFormAsync($"/Shipments/Edit?contract={asked.Id}", new Dictionary<string, string>
        {
            ["Input.PortOfLoading"] = "COBUN",
            ["Input.PortOfDestination"] = "DEHAM",
            ["Input.ShippedOn"] = "2026-09-20",
        }));

        Assert.NotNull(lacking.QuerySelector("#Input_Reason"));
        Assert.Contains("Not approved yet", lacking.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Null(other.QuerySelector("#Input_Reason"));
        Assert.Contains("say what happened", refused.QuerySelector("#Input_Reason_error")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_shipment_is_put_right_and_its_contract_follows()
    {
        var contract = await SignedContract.StoreAsync(house);
        var id = (await ReadAsync(await PostAsync(contract, 550, 37_950m, "2026-09-20"))).GetProperty("id").GetGuid();
        var script = await house.ScriptAsync(Role.Buyer);

        var taken = await script.PutAsJsonAsync(new Uri($"/api/shipments/{id}", UriKind.Relative), Body(contract, 300, 20_700m, "2026-09-21"), Stop);
        var emptied = await script.PutAsJsonAsync(new Uri($"/api/shipments/{id}", UriKind.Relative), Body(contract, 300, 20_700m, null), Stop);

        Assert.Equal(250, (await ReadAsync(taken)).GetProperty("bagsLeft").GetInt32()); // worked by hand: 550 - 300
        Assert.Equal(HttpStatusCode.UnprocessableEntity, emptied.StatusCode);
        Assert.Equal(GoodsState.PartShipped, (await contract.FindAsync(house)).Goods);
        Assert.Equal("2026-09-21", (await script.GetFromJsonAsync<JsonElement>(new Uri($"/api/shipments/{id}", UriKind.Relative), Stop)).GetProperty("shippedOn").GetString());
    }

    /// <summary>Handbook, trade 4.1: weighed within 15 days of availability; discharged on 3 March 2026 as in its check values 36 and 37.</summary>
    [Fact]
    public async Task The_days_for_weighing_run_from_the_day_on_which_the_goods_could_be_weighed()
    {
        var contract = await SignedContract.StoreAsync(house);
        var script = await house.ScriptAsync(Role.Buyer);
        var amended = await ReadAsync(await script.PostAsJsonAsync(new Uri($"/api/contracts/{contract.Id}/amendments", UriKind.Relative), new { reason = "North American terms", terms = new { weighWithinDays = 15, weighFrom = "availability" } }, Stop));
        var sailed = await ReadAsync(await script.PostAsJsonAsync(Shipments, Sailed(contract, null), Stop));
        var id = sailed.GetProperty("id").GetGuid();
        var early = await script.PutAsJsonAsync(new Uri($"/api/shipments/{id}", UriKind.Relative), Sailed(contract, "2026-02-02"), Stop);
        var known = await ReadAsync(await script.PutAsJsonAsync(new Uri($"/api/shipments/{id}", UriKind.Relative), Sailed(contract, "2026-03-09"), Stop));

        Assert.Equal("availability", amended.GetProperty("versions").EnumerateArray().Last().GetProperty("terms").GetProperty("weighFrom").GetString());
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "2026-03-09"), (early.StatusCode, known.GetProperty("availableOn").GetString()));
        Assert.Contains("before it was on board", await early.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Contains("9 Mar 2026", (await (await house.BrowserAsync(Role.Viewer)).ReadAsync($"/Shipments/Shipment/{id}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("2026-03-09", (await (await house.BrowserAsync(Role.Buyer)).ReadAsync($"/Shipments/Edit/{id}")).QuerySelector("#Input_AvailableOn")!.GetAttribute("value"));
    }

    private static object Sailed(SignedContract contract, string? availableOn) => new
    {
        portOfLoading = "COBUN",
        portOfDestination = "USNYC",
        lots = new[] { new { contractLotId = contract.LotId.Value, bags = 550, netWeightKg = 37_950m } },
        shippedOn = "2026-02-03",
        dischargedOn = "2026-03-03",
        availableOn,
    };

    [Fact]
    public async Task A_viewer_reads_and_a_cupper_does_not()
    {
        var contract = await SignedContract.StoreAsync(house);

        Assert.Equal(HttpStatusCode.OK, (await (await house.ScriptAsync(Role.Viewer)).GetAsync(Shipments, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Cupper)).GetAsync(Shipments, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Viewer)).PostAsJsonAsync(Shipments, Body(contract, 1, 69m, null), Stop)).StatusCode);
    }

    private async Task<HttpResponseMessage> PostAsync(SignedContract contract, int bags, decimal net, string? shippedOn, string? reason = null) =>
        await (await house.ScriptAsync(Role.Buyer)).PostAsJsonAsync(Shipments, Body(contract, bags, net, shippedOn, reason), Stop);

    private static object Body(SignedContract contract, int bags, decimal net, string? shippedOn, string? reason = null) => new
    {
        portOfLoading = "COBUN",
        portOfDestination = "DEHAM",
        lots = new[] { new { contractLotId = contract.LotId.Value, bags, netWeightKg = net } },
        containers = new[] { new { number = "CSQU3054383", seal = "SL1" } },
        shippedOn,
        reason,
    };

    private static async Task<JsonElement> ReadAsync(HttpResponseMessage answer)
    {
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}

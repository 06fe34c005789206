using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Contracts;

public sealed class ContractsApiTests(BoughtShop shop) : IClassFixture<BoughtShop>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact] // handbook, trade 2.3, example A and its section 12 no. 16, 18, 19, 24
    public async Task The_calculator_averages_by_lots_and_stores_nothing()
    {
        var script = await shop.House.ScriptAsync(Role.Viewer);

        var answer = await script.PostAsJsonAsync(new Uri("/api/contracts/calculate/fixing", UriKind.Relative), new
        {
            month = "KCH27",
            differential = 35.00,
            netWeightKg = 86_250,
            fixings = new[] { new { lots = 2, level = 285.40 }, new { lots = 1, level = 279.15 }, new { lots = 2, level = 291.65 } },
            on = "2026-11-25",
        }, Stop);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var reply = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal(5, reply.GetProperty("marketLots").GetInt32());
        Assert.Equal(5.0706m, Math.Round(reply.GetProperty("exactLots").GetDecimal(), 4));
        Assert.Equal(286.65m, reply.GetProperty("position").GetProperty("averageLevel").GetDecimal());
        Assert.Equal(321.65m, reply.GetProperty("position").GetProperty("finalPrice").GetDecimal());
        Assert.Equal(611_613.30m, reply.GetProperty("invoice").GetProperty("value").GetProperty("amount").GetDecimal());
        Assert.Equal(("2027-02-18", "2027-03-18"), (reply.GetProperty("firstNotice").GetString(), reply.GetProperty("lastTrading").GetString()));
    }

    [Fact] // handbook, trade 2.3, "before fixation 3", no. 20
    public async Task The_calculator_values_what_is_open_at_the_settlement_and_says_that_it_is_provisional()
    {
        var script = await shop.House.ScriptAsync(Role.Viewer);

        var reply = await (await CalculateAsync(script, settlement: 300.00m)).Content.ReadFromJsonAsync<JsonElement>(Stop);

        Assert.Equal(324.99m, reply.GetProperty("provisionalPrice").GetDecimal());
        Assert.True(reply.GetProperty("invoice").GetProperty("isProvisional").GetBoolean());
        Assert.Equal(2m, reply.GetProperty("position").GetProperty("openLots").GetDecimal());
        Assert.Equal(750.00m, reply.GetProperty("position").GetProperty("exposure").GetProperty("amount").GetDecimal()); // worked by hand: 2 lots x 37,500 lb x 0.01 USD
    }

    [Fact]
    public async Task The_calculator_refuses_more_lots_than_agreed_with_a_sentence()
    {
        var script = await shop.House.ScriptAsync(Role.Viewer);

        var refused = await CalculateAsync(script, lots: 4);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("only 5 lots of KC are agreed", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_may_not_be_done_is_refused_with_a_sentence_and_changes_nothing()
    {
        var id = await shop.DraftToBeFixedAsync("A");
        Assert.Equal(HttpStatusCode.OK, (await shop.PostAsync(id, "fixings", new { on = shop.Market.Today, lots = 4, level = 285.40 })).StatusCode);

        var over = await shop.PostAsync(id, "fixings", new { on = shop.Market.Today, lots = 2, level = 285.40 });
        var twice = await shop.PostAsync(id, "sign", new { signedOn = shop.Market.Today });
        var terms = await (await shop.House.ScriptAsync(Role.Buyer)).PutAsJsonAsync(new Uri($"/api/contracts/{id}/terms", UriKind.Relative), new { reason = "", terms = new { payment = "Later" } }, Stop);
        var closed = await shop.PostAsync(id, "goods", new { move = "close", on = shop.Market.Today });
        var sign = await shop.PostAsync(id, "goods", new { move = "sign", on = shop.Market.Today });

        foreach (var (answer, sentence) in new[] { (over, "Only 1 lot of KC is open"), (twice, "signed once, then amended"), (terms, "does not change: amend"), (closed, "cannot go on to"), (sign, "acts of their own") })
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            Assert.Contains(sentence, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }

        var contract = await shop.FindAsync(id);
        Assert.Equal((1, 1, GoodsState.ReadyToShip, PriceState.PartlyFixed), (contract.Fixings.Count, contract.Versions.Count, contract.Goods, contract.Price));
    }

    [Fact]
    public async Task Approving_twice_fixing_more_and_receiving_more_than_shipped_are_refused_and_change_nothing()
    {
        var id = await shop.DraftToBeFixedAsync("C", signed: false);
        using var script = await shop.House.ScriptAsync(Role.Buyer);
        Assert.Equal(HttpStatusCode.OK, (await script.PutAsJsonAsync(new Uri($"/api/contracts/{id}/terms", UriKind.Relative), new { reason = "", terms = new { approval = "replace", mostSamples = 3 } }, Stop)).StatusCode);
        await shop.PostAsync(id, "sign", new { signedOn = shop.Market.Today });
        var sample = await PreShipmentAsync("C", "PSC1");
        Assert.Equal(HttpStatusCode.OK, (await shop.PostAsync(id, "approvals", new { sampleId = sample, verdict = "approved", on = shop.Market.Today })).StatusCode);
        var shipped = await ShipAsync(script, id, 100);

        var twice = await shop.PostAsync(id, "approvals", new { sampleId = sample, verdict = "approved", on = shop.Market.Today });
        var over = await shop.PostAsync(id, "fixings", new { on = shop.Market.Today, lots = 6, level = 285.40 });
        var more = await script.PostAsJsonAsync(new Uri("/api/arrivals", UriKind.Relative), new { shipmentLotId = shipped, receipt = new { receivedOn = shop.Market.Today, bags = 101, landedKg = 6969 } }, Stop);

        await RefusedAsync(twice, "no sample waits for approval");
        await RefusedAsync(over, "Only 5 lots of KC are open");
        await RefusedAsync(more, "More came than the 100 bags and 6,900 kg that were shipped: say why in the note");
        var contract = await shop.FindAsync(id);
        Assert.Equal((1, 0, 0), (contract.Approvals.Count, contract.Fixings.Count, await shop.House.FromLedgerAsync(db => db.Arrivals.CountAsync(arrival => arrival.ShipmentLotId == new Id<ShipmentLot>(shipped), Stop))));
    }

    [Fact]
    public async Task An_amendment_that_was_not_signed_is_dropped_and_what_was_signed_cannot_be()
    {
        var id = await shop.DraftToBeFixedAsync("E");
        using var script = await shop.House.ScriptAsync(Role.Buyer);
        Assert.Equal(HttpStatusCode.OK, (await shop.PostAsync(id, "amendments", new { reason = "Other payment.", terms = new { payment = "Thirty days after arrival" } })).StatusCode);

        var dropped = await script.DeleteAsync(new Uri($"/api/contracts/{id}/amendment", UriKind.Relative), Stop);
        var again = await script.DeleteAsync(new Uri($"/api/contracts/{id}/amendment", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.OK, dropped.StatusCode);
        await RefusedAsync(again, "There is no amendment that could be dropped");
        Assert.Single((await shop.FindAsync(id)).Versions);
    }

    [Fact]
    public async Task Contracts_that_are_drafted_at_once_all_get_a_number()
    {
        var decisions = await Task.WhenAll(new[] { "A", "B", "C", "D", "E" }.Select(shop.BuyAsync));
        var script = await shop.House.ScriptAsync(Role.Buyer);

        var drafted = await Task.WhenAll(decisions.Select(decision => script.PostAsJsonAsync(new Uri("/api/contracts", UriKind.Relative), new { decisionId = decision }, Stop)));

        Assert.All(drafted, answer => Assert.Equal(HttpStatusCode.Created, answer.StatusCode));
        var numbers = await Task.WhenAll(drafted.Select(async answer => (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("ref").GetString()));
        Assert.Equal(5, numbers.Distinct().Count());
    }

    [Fact]
    public async Task Scripts_take_back_roll_ship_and_read_what_is_open()
    {
        var id = await shop.DraftToBeFixedAsync("B");
        await shop.PostAsync(id, "fixings", new { on = shop.Market.Today, lots = 5, level = 285.40 });

        var back = await shop.PostAsync(id, "fixings/1/take-back", new { reason = "Another contract's." });
        var rolled = await shop.PostAsync(id, "rolls", new { on = shop.Market.Today, to = $"KCN{(BoughtShop.May.Year % 100):00}", spread = -1.80 });
        var shipped = await shop.PostAsync(id, "goods", new { move = "ship", on = shop.Market.Today });

        Assert.All([back, rolled, shipped], answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
        var reply = await shipped.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal(("shipped", "unfixed"), (reply.GetProperty("goods").GetString(), reply.GetProperty("price").GetString()));
        Assert.Equal(36.80m, reply.GetProperty("position").GetProperty("differential").GetDecimal()); // worked by hand: 35.00 + 1.80
        var open = await (await shop.House.ScriptAsync(Role.Viewer)).GetFromJsonAsync<JsonElement>("/api/contracts/open", Stop);
        Assert.Contains(open.EnumerateArray(), month => month.GetProperty("month").GetString() == $"KCN{(BoughtShop.May.Year % 100):00}");
    }

    private static async Task RefusedAsync(HttpResponseMessage answer, string sentence)
    {
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.UnprocessableEntity, $"{(int)answer.StatusCode} {text}");
        Assert.Contains(sentence, JsonDocument.Parse(text).RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    /// <summary>A pre-shipment sample that came today.</summary>
    private Task<Guid> PreShipmentAsync(string lot, string label) => shop.House.FromLedgerAsync(async db =>
    {
        var sample = new Sample(shop.Market.LotOf(lot).Id, SampleKind.PreShipment, label, shop.Market.Today, Weight.FromGrams(500m));
        db.Add(sample);
        await db.SaveChangesAsync(Stop);
        return sample.Id.Value;
    });

    /// <summary>Puts bags of 69 kg of the contract's first lot on board today; the identity of the lot on the shipment.</summary>
    private async Task<Guid> ShipAsync(HttpClient script, Id<Contract> id, int bags)
    {
        var answer = await script.PostAsJsonAsync(new Uri("/api/shipments", UriKind.Relative), new
        {
            portOfLoading = "BRSSZ",
            portOfDestination = "BEANR",
            lots = new[] { new { contractLotId = (await shop.FindAsync(id)).Lots[0].Id.Value, bags, netWeightKg = bags * 69 } },
            shippedOn = shop.Market.Today,
        }, Stop);
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, text);
        return JsonDocument.Parse(text).RootElement.GetProperty("lots")[0].GetProperty("id").GetGuid();
    }

    private static Task<HttpResponseMessage> CalculateAsync(HttpClient script, int lots = 1, decimal? settlement = null) =>
        script.PostAsJsonAsync(new Uri("/api/contracts/calculate/fixing", UriKind.Relative), new
        {
            month = "KCK27",
            differential = 35.00,
            netWeightKg = 86_250,
            fixings = new[] { new { lots = 2, level = 285.40 }, new { lots, level = 279.15 } },
            settlement,
            on = "2026-11-25",
        }, Stop);
}

using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Contracts;

/// <summary>The running example in a ledger, with lots bought of it as a test asks.</summary>
public sealed class BoughtShop : IAsyncLifetime
{
    private OpenMarket? _market;

    public HouseFixture House { get; } = new();

    internal OpenMarket Market => _market!;

    /// <summary>May of next year, New York.</summary>
    internal static FuturesMonth May { get; } = FuturesMonth.Of(FuturesMarket.Arabica, DateTime.UtcNow.Year + 1, 5);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await House.OpenHouseAsync();
        _market = await House.FromLedgerAsync(db => OpenMarket.StoreAsync(db, Currency.Eur, DateTimeOffset.UtcNow, CancellationToken.None));
    }

    public ValueTask DisposeAsync() => House.DisposeAsync();

    /// <summary>Decides to buy 600 kg of the lot; the decision's identity.</summary>
    internal async Task<Guid> BuyAsync(string lot)
    {
        var script = await House.ScriptAsync(Role.Buyer);
        var answer = await script.PostAsJsonAsync(
            new Uri("/api/choosing/decisions", UriKind.Relative),
            new { offerId = Market.OfferOf(lot).Id.Value, outcome = "buy", quantityKg = 600, rules = "House", reason = "For the tests." }, Stop);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();
    }

    /// <summary>A contract drafted by a script: example A of the handbook (trade 2.3), 1,250 bags of 69 kg at +35.00, five lots.</summary>
    internal async Task<Id<Contract>> DraftToBeFixedAsync(string lot, bool signed = true)
    {
        var decision = await BuyAsync(lot);
        var script = await House.ScriptAsync(Role.Buyer);
        var answer = await script.PostAsJsonAsync(new Uri("/api/contracts", UriKind.Relative), new
        {
            decisionId = decision,
            terms = new
            {
                lots = new[] { new { lotId = Market.LotOf(lot).Id.Value, bags = 1250, bagWeightKg = 69 } },
                month = May.ToString(),
                differential = 35.00,
                marketLots = 5,
                approval = "none",
            },
        }, Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Stop));
        var id = new Id<Contract>((await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid());
        if (signed)
        {
            Assert.Equal(HttpStatusCode.OK, (await PostAsync(id, "sign", new { signedOn = Market.Today })).StatusCode);
        }

        return id;
    }

    internal async Task<HttpResponseMessage> PostAsync(Id<Contract> id, string act, object body) =>
        await (await House.ScriptAsync(Role.Buyer)).PostAsJsonAsync(new Uri($"/api/contracts/{id}/{act}", UriKind.Relative), body, Stop);

    internal Task<Contract> FindAsync(Id<Contract> id) =>
        House.FromLedgerAsync(db => db.Contracts.AsNoTracking().Whole().SingleAsync(contract => contract.Id == id, Stop));
}

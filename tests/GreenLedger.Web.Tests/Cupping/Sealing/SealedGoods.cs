using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Data;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Summaries;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>
/// What the later rooms hold of the coffees under a table's codes: the first was decided on and bought at a price to be fixed,
/// the second was bought outright, sailed, and half of it came in short: claimed, taken into stock for a purpose, billed, some of it reserved.
/// </summary>
internal static class SealedGoods
{
    private static readonly DateTimeOffset Noon = DateTimeOffset.UtcNow.AddDays(-1);
    private static readonly DateOnly OnBoard = DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-40);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task AddAsync(HouseFixture house, SealedTable table)
    {
        await house.FromLedgerAsync(db => OpenMarket.StoreAsync(db, Currency.Eur, DateTimeOffset.UtcNow, Stop));
        await BuyAsync(house, new Id<Lot>(Guid.Parse(table.Cups[0].Lot)));
        var second = new Id<Lot>(Guid.Parse(table.Cups[1].Lot));
        var arrival = await house.FromLedgerAsync(db => SailAsync(db, second, new Id<Sample>(Guid.Parse(table.Cups[1].Sample))));
        await StoreAsync(house, second, arrival);
    }

    /// <summary>As a script of the buyer: decided, drafted, signed, and one lot of five fixed.</summary>
    private static async Task BuyAsync(HouseFixture house, Id<Lot> lot)
    {
        var script = await house.ScriptAsync(Role.Buyer);
        var offer = await house.FromLedgerAsync(db => db.Offers.Where(one => one.LotId == lot).Select(one => one.Id).SingleAsync(Stop));
        var decision = await PostAsync(script, "choosing/decisions", new { offerId = offer.Value, outcome = "buy", quantityKg = 600, rules = "House", reason = "For the tests." });
        var contract = await PostAsync(script, "contracts", new
        {
            decisionId = decision,
            terms = new
            {
                lots = new[] { new { lotId = lot.Value, bags = 1250, bagWeightKg = 69 } },
                month = FuturesMonth.Of(FuturesMarket.Arabica, DateTime.UtcNow.Year + 1, 5).ToString(),
                differential = 35.00,
                marketLots = 5,
                approval = "none",
            },
        });
        var today = DateOnly.FromDateTime(DateTime.UtcNow);
        await PostAsync(script, $"contracts/{contract}/sign", new { signedOn = today });
        await PostAsync(script, $"contracts/{contract}/fixings", new { on = today, lots = 1, level = 290.00 });
    }

    private static async Task<Guid> PostAsync(HttpClient script, string act, object body)
    {
        var answer = await script.PostAsJsonAsync(new Uri($"/api/{act}", UriKind.Relative), body, Stop);
        Assert.True(answer.IsSuccessStatusCode, $"{act}: {await answer.Content.ReadAsStringAsync(Stop)}");
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();
    }

    /// <summary>What comes after the landing.</summary>
    private static async Task StoreAsync(HouseFixture house, Id<Lot> lot, Arrival arrival)
    {
        var warehouse = new Warehouse("Quay store");
        var purpose = new Purpose(new PurposeTerms("Winter espresso", null, null, null, Weight.FromKilograms(60m)));
        purpose.Serve(lot);
        await house.InLedgerAsync(async db =>
        {
            db.AddRange(warehouse, purpose);
            db.Add(new Message(MessagePurpose.Due, new MessageText("a-buyer@sorrel-roasters.example", "Due", "1@sorrel-roasters.example", [1]), null, null, Noon));
            await db.SaveChangesAsync(Stop);
        });
        var script = await house.ScriptAsync(Role.Buyer);
        var on = OnBoard.AddDays(32);
        await PostAsync(script, $"arrivals/{arrival.Id}/claims", new { on, grounds = new[] { "weight" } });
        await PostAsync(script, $"shipments/{arrival.ShipmentId}/documents", new { name = "Weight certificate" });
        await PostAsync(script, "stock/receipts", new { arrivalId = arrival.Id.Value, warehouseId = warehouse.Id.Value, on });
        await house.InLedgerAsync(async db =>
        {
            db.AddRange(new StockCount(warehouse.Id, on, await db.Holdings.ToListAsync(Stop), null, (await db.People.FirstAsync(person => person.Roles == Role.Buyer, Stop)).Id, Noon));
            await db.SaveChangesAsync(Stop);
        });
        await PostAsync(script, "stock/reservations", new { lotId = lot.Value, warehouseId = warehouse.Id.Value, weightKg = 600, use = "winter espresso" });
        await PostAsync(script, "trace/recalls", new { from = "Lot", id = lot.Value, reason = "Yearly exercise" });
        await PostAsync(script, "certificates", new { scheme = "organic", holder = "House", number = "O-77", from = OnBoard.AddYears(-1), until = OnBoard.AddYears(1) });
        await TellAsync(house, lot);
        await PostAsync(script, "costs/postings", new { amount = 1879, currency = "EUR", on, document = "F-9", lotId = lot.Value });
    }

    /// <summary>What suppliers were told: of the coffee in the cups, and of another one.</summary>
    private static Task TellAsync(HouseFixture house, Id<Lot> lot) => house.InLedgerAsync(async db =>
    {
        var other = new Lot("OTHER-1", "Told of before", await db.Lots.Where(one => one.Id == lot).Select(one => one.SupplierId).SingleAsync(Stop));
        var by = (await db.People.FirstAsync(person => person.Roles == Role.Buyer, Stop)).Id;
        using var pdf = new MemoryStream();
        FeedbackPdf.Write(new FeedbackReport("Sorrel Roasters", "The seller", "en", OnBoard, "A buyer", null, []), pdf);
        db.Add(other);
        foreach (var told in new[] { lot, other.Id })
        {
            var file = new StoredFile("feedback.pdf", "application/pdf", pdf.ToArray(), by, Noon);
            db.AddRange(file, new FeedbackCopy(other.SupplierId!.Value, "en", [told], file, isMailed: false, by, Noon));
        }

        await db.SaveChangesAsync(Stop);
    });

    private static async Task<Arrival> SailAsync(LedgerContext db, Id<Lot> id, Id<Sample> approved)
    {
        var by = await db.People.FirstAsync(person => person.Roles == Role.Buyer, Stop);
        var lot = await db.Lots.SingleAsync(one => one.Id == id, Stop);
        var arrived = new Sample(id, SampleKind.Arrival, "QXARRIVED", OnBoard.AddDays(33), Weight.FromGrams(500m));
        var contract = Contract.Draft("PT-1", lot.SupplierId!.Value, Terms(lot), new Dictionary<Id<Lot>, Id<Decision>>(), by.Id, Noon);
        contract.Sign(OnBoard.AddDays(-60), null, by.Id, Noon);
        var (first, second) = (Loaded(contract, "FIRST"), Loaded(contract, "SECOND"));
        contract.Ship(OnBoard, null, by.Id, Noon);
        var receipt = new Receipt(OnBoard.AddDays(31), 274, Weight.FromKilograms(18_790m), new ReceiptCondition(2, 0, 0, false, null, true), null);
        var arrival = new Arrival(first, first.Lots[0].Id, receipt, by.Id, Noon);
        arrival.Compare(await db.Samples.SingleAsync(one => one.Id == approved, Stop), arrived);
        db.AddRange(arrived, contract, first, second, arrival);
        await db.SaveChangesAsync(Stop);
        return arrival;
    }

    private static Shipment Loaded(Contract contract, string @ref)
    {
        var shipment = new Shipment(@ref, new Passage("BL-77", "Linnet", "012E", "PECLL", "DEHAM", null, null, OnBoard, OnBoard.AddDays(28), null));
        shipment.Carry(contract, contract.Lots[0].Id, 275, Weight.FromKilograms(18_975m));
        shipment.Load([("CSQU3054383", "SL1")]);
        return shipment;
    }

    private static ContractTerms Terms(Lot lot) => new(
        "Sorrel Roasters",
        "The seller",
        [new ContractedLot(lot.Id, lot.Ref, lot.Name, "2026/27", 550, Weight.FromKilograms(69m))],
        new QualityTerms("Washed arabica", Score.Of(84m)),
        PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m)),
        new DeliveryTerms(Incoterm.Fob, "Callao", OnBoard.AddDays(-10), OnBoard.AddDays(20)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        new ApprovalTerms(ApprovalRule.None, null, null),
        "Net cash against documents on first presentation",
        [],
        new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
        null);
}

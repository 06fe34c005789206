using System.Globalization;
using System.Text.Json.Nodes;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Documents.Trace;

/// <summary>
/// Events of EPCIS 2.0. Where the ledger knows the day and not the hour, an event is told at the day's beginning by the house's
/// clocks; when it was written down is its record time.
/// </summary>
internal sealed class EpcisEvents(TraceFacts facts, ExchangeNames names, ClockZone zone, Percent? roastLoss)
{
    public static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);

    /// <summary>A lot of a contract, on the day that it was signed.</summary>
    public (DateTimeOffset At, JsonObject Event) Agreed(Contract contract, ContractLot line)
    {
        var at = zone.Begins(contract.Versions.Min(version => version.SignedOn)!.Value);
        var told = Event("TransactionEvent", "contracted-lot", line.Id.Value, at);
        told["bizTransactionList"] = new JsonArray(new JsonObject { ["type"] = "po", ["bizTransaction"] = names.Derived("contract", contract.Id.Value) });
        told["quantityList"] = new JsonArray(Quantity(line.LotId, line.Net));
        told["action"] = "ADD";
        return (at, told);
    }

    /// <summary>A lot of a shipment: it is known from now on, loaded where all of it is in one container, and shipped.</summary>
    public IEnumerable<(DateTimeOffset At, JsonObject Event)> Shipped(Shipment shipment, ShipmentLot line)
    {
        var at = zone.Begins(shipment.ShippedOn!.Value);
        yield return (at, Known("shipped-lot", line.Id.Value, line.LotId, at, line.Net));
        if (Container(shipment) is { } container)
        {
            yield return (at, Aggregated("ADD", "loading", line.Id.Value, container, at, line.LotId, line.Net));
        }

        var shipped = Observed("shipping", line.Id.Value, at, "shipping", "in_transit", line.LotId, line.Net);
        Show(shipped, shipment);
        At(shipped, "readPoint", Port(shipment.PortOfLoading));
        yield return (at, shipped);
    }

    /// <summary>An arrival: received as weighed, out of its container, and what of the shipped weight did not come, or came on top.</summary>
    public IEnumerable<(DateTimeOffset At, JsonObject Event)> Landed(Arrival arrival)
    {
        var at = zone.Begins(arrival.ReceivedOn);
        var shipment = facts.Shipments.First(one => one.Id == arrival.ShipmentId);
        var received = Observed("receiving", arrival.Id.Value, at, "receiving", "in_progress", arrival.LotId, arrival.Landed);
        received["recordTime"] = Moment(arrival.At.ToUniversalTime());
        Show(received, shipment);
        At(received, "readPoint", Port(shipment.PortOfDestination));
        yield return (at, received);
        if (Container(shipment) is { } container)
        {
            yield return (at, Aggregated("DELETE", "unloading", arrival.Id.Value, container, at, arrival.LotId, arrival.Landed));
        }

        if (Differed(arrival, at) is { } differed)
        {
            Show(differed, shipment);
            yield return (at, differed);
        }
    }

    /// <summary>Landed less or more than shipped: without it the kilograms of the events would not add up. Null where both are one.</summary>
    private JsonObject? Differed(Arrival arrival, DateTimeOffset at)
    {
        var isLess = arrival.Landed < arrival.Shipped;
        return arrival.Landed == arrival.Shipped
            ? null
            : Object("weight-difference", arrival.Id.Value, isLess ? "DELETE" : "ADD", at, "inspecting", "mismatch_quantity", arrival.LotId, isLess ? arrival.Shipped - arrival.Landed : arrival.Landed - arrival.Shipped);
    }

    /// <summary>A movement; of one that was taken back also that it did not happen. What takes back says nothing of its own.</summary>
    public IEnumerable<(DateTimeOffset At, JsonObject Event)> Moved(Movement movement)
    {
        var at = zone.Day(movement.At) == movement.On ? TimeOf(movement.At) : zone.Begins(movement.On);
        if (Of(movement, at) is not { } told)
        {
            yield break;
        }

        told["recordTime"] = Moment(movement.At.ToUniversalTime());
        At(told, "bizLocation", names.Of("warehouse", movement.WarehouseId.Value));
        yield return (at, told);
        if (facts.Movements.FirstOrDefault(back => back.ReversesId == movement.Id) is { } reversal)
        {
            var declared = told.DeepClone().AsObject();
            declared["recordTime"] = Moment(reversal.At.ToUniversalTime());
            declared["errorDeclaration"] = new JsonObject { ["declarationTime"] = Moment(reversal.At.ToUniversalTime()), ["reason"] = "did_not_occur" };
            yield return (at, declared);
        }
    }

    private JsonObject? Of(Movement movement, DateTimeOffset at)
    {
        var (id, lot, weight) = (movement.Id.Value, movement.LotId, movement.Weighed < Weight.Zero ? Weight.Zero - movement.Weighed : movement.Weighed);
        return movement.Kind switch
        {
            MovementKind.Opening => Known("movement", id, lot, at, weight),
            MovementKind.Receipt => Observed("movement", id, at, "storing", "in_progress", lot, weight),
            MovementKind.TransferOut => Observed("movement", id, at, "departing", "in_transit", lot, weight),
            MovementKind.TransferIn => Observed("movement", id, at, "storing", "in_progress", lot, weight),
            MovementKind.Release => Released(movement, at, weight),
            MovementKind.SampleDrawn => Observed("movement", id, at, "sampling", null, lot, weight),
            MovementKind.Sale => Observed("movement", id, at, "shipping", "in_transit", lot, weight),
            MovementKind.Return => Observed("movement", id, at, "receiving", "returned", lot, weight),
            MovementKind.Loss => Object("movement", id, "DELETE", at, "cycle_counting", null, lot, weight),
            MovementKind.Gain => Object("movement", id, "ADD", at, "cycle_counting", null, lot, weight),
            _ => null,
        };
    }

    /// <summary>
    /// Green coffee goes in and a batch comes out; a transformation has no action. The ledger weighs no batch: where the house has stated its
    /// roast loss the batch is told by that, and says so; else it has no weight.
    /// </summary>
    private JsonObject Released(Movement movement, DateTimeOffset at, Weight weight)
    {
        var told = Event("TransformationEvent", "movement", movement.Id.Value, at);
        told["inputQuantityList"] = new JsonArray(Quantity(movement.LotId, weight));
        var batch = new JsonObject { ["epcClass"] = names.Derived("batch", movement.Id.Value) };
        told["outputQuantityList"] = new JsonArray(batch);
        told["bizStep"] = "commissioning";
        if (roastLoss is { } loss)
        {
            // To a gram: the loss is a habit, not a scale.
            (batch["quantity"], batch["uom"]) = (Math.Round(weight.Kilograms * (100m - loss.Points) / 100m, 3, MidpointRounding.AwayFromZero), "KGM");
            told["ilmd"] = new JsonObject { ["rdfs:comment"] = string.Create(CultureInfo.InvariantCulture, $"Weight reckoned by the roast loss of the house, {loss.Points:0.##} %; not weighed.") };
        }

        return told;
    }

    private JsonObject Known(string kind, Guid id, Id<Lot> lotId, DateTimeOffset at, Weight weight)
    {
        var told = Object(kind, id, "ADD", at, "commissioning", "active", lotId, weight);
        var lot = LotOf(lotId);
        told["ilmd"] = new JsonObject { ["cbvmda:lotNumber"] = lot.Ref };
        if (lot.CountryCode is { } country)
        {
            told["ilmd"]!["cbvmda:countryOfOrigin"] = country;
        }

        var plots = facts.Plots.Where(plot => facts.GrownOn.Contains((lotId, plot.Id))).Select(plot => $"{plot.Name} ({plot.CountryCode})").ToList();
        if (plots.Count > 0)
        {
            told["ilmd"]!["rdfs:comment"] = $"Grown on {string.Join(", ", plots)}.";
        }

        return told;
    }

    private JsonObject Aggregated(string action, string step, Guid id, string container, DateTimeOffset at, Id<Lot> lot, Weight weight)
    {
        var told = Event("AggregationEvent", step, id, at);
        told["parentID"] = container;
        told["childQuantityList"] = new JsonArray(Quantity(lot, weight));
        told["action"] = action;
        told["bizStep"] = step;
        return told;
    }

    private JsonObject Observed(string kind, Guid id, DateTimeOffset at, string step, string? disposition, Id<Lot> lot, Weight weight) => Object(kind, id, "OBSERVE", at, step, disposition, lot, weight);

    private JsonObject Object(string kind, Guid id, string action, DateTimeOffset at, string step, string? disposition, Id<Lot> lot, Weight weight)
    {
        var told = Event("ObjectEvent", kind, id, at);
        told["quantityList"] = new JsonArray(Quantity(lot, weight));
        told["action"] = action;
        told["bizStep"] = step;
        if (disposition is not null)
        {
            told["disposition"] = disposition;
        }

        return told;
    }

    private static JsonObject Event(string type, string kind, Guid id, DateTimeOffset at) => new()
    {
        ["type"] = type,
        ["eventID"] = ExchangeNames.EventId(kind, id),
        ["eventTime"] = Moment(at),
        ["eventTimeZoneOffset"] = at.ToString("zzz", CultureInfo.InvariantCulture),
    };

    private JsonObject Quantity(Id<Lot> lot, Weight weight) => new() { ["epcClass"] = names.LotClass(LotOf(lot)), ["quantity"] = weight.Kilograms, ["uom"] = "KGM" };

    /// <summary>By its bill of lading; nothing where that has no number yet.</summary>
    private void Show(JsonObject told, Shipment shipment)
    {
        if (shipment.BillOfLading is { } number)
        {
            told["bizTransactionList"] = new JsonArray(new JsonObject { ["type"] = "bol", ["bizTransaction"] = names.BillOfLading(number) });
        }
    }

    private string? Container(Shipment shipment) => shipment.Containers.Count == 1 ? names.Of("container", shipment.Containers[0].Id.Value) : null;

    /// <summary>Ports have no identity in the ledger: only an address of the house's own can name one.</summary>
    private string? Port(string locode) => names.WebAddress is { } address ? $"{address}/port/{locode}" : null;

    private static void At(JsonObject told, string where, string? place)
    {
        if (place is not null)
        {
            told[where] = new JsonObject { ["id"] = place };
        }
    }

    private DateTimeOffset TimeOf(DateTimeOffset moment) => zone.At(DateTime.SpecifyKind(zone.Local(moment), DateTimeKind.Unspecified), nameof(moment));

    private Lot LotOf(Id<Lot> id) => facts.Lots.First(lot => lot.Id == id);
}

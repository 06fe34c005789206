using System.Globalization;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Trace;

/// <summary>Everything that the ledger holds of the way of some lots.</summary>
/// <param name="GrownOn">Which lot is said to have grown on which plot.</param>
/// <param name="Contracts">That name one of the lots, none that were cancelled.</param>
/// <param name="Movements">All of them, those that were taken back too.</param>
public sealed record TraceFacts(
    IReadOnlyList<Lot> Lots,
    IReadOnlyList<(Id<Lot> Lot, Id<Plot> Plot)> GrownOn,
    IReadOnlyList<Plot> Plots,
    IReadOnlyList<Producer> Producers,
    IReadOnlyList<Supplier> Suppliers,
    IReadOnlyList<Contract> Contracts,
    IReadOnlyList<Shipment> Shipments,
    IReadOnlyList<Arrival> Arrivals,
    IReadOnlyList<Movement> Movements,
    IReadOnlyList<Holding> Holdings,
    IReadOnlyList<Warehouse> Warehouses,
    IReadOnlyList<Purpose> Purposes)
{
    private static readonly CultureInfo Reader = CultureInfo.InvariantCulture;

    /// <summary>Movements that nothing takes back and that take nothing back.</summary>
    public IReadOnlyList<Movement> Standing()
    {
        var takenBack = Movements.Select(movement => movement.ReversesId).OfType<Id<Movement>>().ToHashSet();
        return [.. Movements.Where(movement => movement.ReversesId is null && !takenBack.Contains(movement.Id))];
    }

    /// <summary>As stops and ways.</summary>
    public TraceGraph Graph() => new(
        [.. Grown(), .. Lots.Select(lot => new TraceNode(Key(TraceKind.Lot, lot.Id), lot.Id.Value, lot.Ref, lot.Name, LotId: lot.Id)), .. Travelled(), .. Stored()],
        [.. GrownWays(), .. TravelledWays(), .. StoredWays()]);

    /// <summary>The contract's lots of these lots.</summary>
    public IEnumerable<(Contract Contract, ContractLot Line)> ContractLines() => Of(Contracts, contract => contract.Lots, line => line.LotId);

    /// <summary>The shipments' lots of these lots.</summary>
    public IEnumerable<(Shipment Shipment, ShipmentLot Line)> ShipmentLines() => Of(Shipments, shipment => shipment.Lots, line => line.LotId);

    /// <summary>What a release was for; null where it names nothing.</summary>
    public string? PurposeOf(Movement movement) => Purposes.FirstOrDefault(purpose => purpose.Id == movement.PurposeId)?.Name;

    public string WarehouseOf(Id<Warehouse> id) => Warehouses.First(warehouse => warehouse.Id == id).Name;

    internal static TraceKey Key<T>(TraceKind kind, Id<T> id) => new(kind, id.Value);

    private IEnumerable<(TWhole, TPart)> Of<TWhole, TPart>(IEnumerable<TWhole> wholes, Func<TWhole, IEnumerable<TPart>> parts, Func<TPart, Id<Lot>> lotOf)
    {
        var lots = Lots.Select(lot => lot.Id).ToHashSet();
        return wholes.SelectMany(whole => parts(whole).Where(part => lots.Contains(lotOf(part))).Select(part => (whole, part)));
    }

    private IEnumerable<TraceNode> Grown() =>
    [
        .. Plots.Select(plot => new TraceNode(
            Key(TraceKind.Plot, plot.Id), plot.ProducerId.Value, plot.Name, string.Create(Reader, $"{Producers.FirstOrDefault(one => one.Id == plot.ProducerId)?.Name}, {plot.CountryCode}, {plot.Hectares:#,0.##} ha"))),
        .. Producers.Select(producer => new TraceNode(Key(TraceKind.Producer, producer.Id), producer.Id.Value, producer.Name, Joined(producer.Place, producer.Region, producer.CountryCode))),
        .. Suppliers.Select(supplier => new TraceNode(Key(TraceKind.Supplier, supplier.Id), supplier.Id.Value, supplier.Name)),
    ];

    private IEnumerable<TraceEdge> GrownWays() =>
    [
        .. GrownOn.Select(one => new TraceEdge(Key(TraceKind.Plot, one.Plot), Key(TraceKind.Lot, one.Lot))),
        .. Lots.Where(lot => lot.ProducerId is not null).Select(lot => new TraceEdge(Key(TraceKind.Producer, lot.ProducerId!.Value), Key(TraceKind.Lot, lot.Id))),
        .. Lots.Where(lot => lot.SupplierId is not null).Select(lot => new TraceEdge(Key(TraceKind.Supplier, lot.SupplierId!.Value), Key(TraceKind.Lot, lot.Id))),
        .. ContractLines().Select(one => new TraceEdge(Key(TraceKind.Supplier, one.Contract.SupplierId), Key(TraceKind.Contract, one.Line.Id))),
    ];

    private IEnumerable<TraceNode> Travelled() =>
    [
        .. ContractLines().Select(one => new TraceNode(
            Key(TraceKind.Contract, one.Line.Id), one.Contract.Id.Value, one.Contract.Ref, Joined(one.Contract.Terms.Seller, one.Contract.Goods.Word()),
            one.Contract.Versions.Select(version => version.SignedOn).FirstOrDefault(day => day is not null), one.Line.Net, one.Line.LotId)),
        .. ShipmentLines().Select(one => new TraceNode(Key(TraceKind.Shipment, one.Line.Id), one.Shipment.Id.Value, one.Shipment.Ref, PapersOf(one.Shipment), one.Shipment.ShippedOn, one.Line.Net, one.Line.LotId)),
        .. Arrivals.Select(arrival => new TraceNode(
            Key(TraceKind.Arrival, arrival.Id), arrival.Id.Value, $"Received {arrival.ReceivedOn.ToString("d MMM yyyy", Reader)}", Bags(arrival.Bags), arrival.ReceivedOn, arrival.Landed, arrival.LotId)),
    ];

    private IEnumerable<TraceEdge> TravelledWays()
    {
        var lines = ContractLines().Select(one => one.Line.Id).ToHashSet();
        return
        [
            .. ContractLines().Select(one => new TraceEdge(Key(TraceKind.Lot, one.Line.LotId), Key(TraceKind.Contract, one.Line.Id), null, one.Line.Net)),
            .. ShipmentLines().Select(one => new TraceEdge(
                lines.Contains(one.Line.ContractLotId) ? Key(TraceKind.Contract, one.Line.ContractLotId) : Key(TraceKind.Lot, one.Line.LotId), Key(TraceKind.Shipment, one.Line.Id), null, one.Line.Net)),
            .. Arrivals.Select(arrival => new TraceEdge(Key(TraceKind.Shipment, arrival.ShipmentLotId), Key(TraceKind.Arrival, arrival.Id), null, arrival.Landed)),
        ];
    }

    private IEnumerable<TraceNode> Stored() =>
    [
        .. Holdings.Select(holding => new TraceNode(
            Key(TraceKind.Warehouse, holding.Id), holding.LotId.Value, WarehouseOf(holding.WarehouseId), Bags(holding.Bags) + " left", null, holding.Weighed, holding.LotId)),
        .. Standing().Where(movement => KindOf(movement.Kind) is not null).Select(movement => new TraceNode(
            Key(KindOf(movement.Kind)!.Value, movement.Id), movement.LotId.Value, movement.Kind.Word(), Joined(PurposeOf(movement), movement.Document, movement.Reason), movement.On,
            movement.Weighed < Weight.Zero ? Weight.Zero - movement.Weighed : movement.Weighed, movement.LotId, PurposeOf(movement))),
    ];

    private IEnumerable<TraceEdge> StoredWays()
    {
        var standing = Standing();
        var holdings = standing.ToDictionary(movement => movement.Id, movement => movement.HoldingId);
        return standing.SelectMany(movement => WaysOf(movement, holdings));
    }

    private static IEnumerable<TraceEdge> WaysOf(Movement movement, Dictionary<Id<Movement>, Id<Holding>> holdings)
    {
        var (holding, lot) = (Key(TraceKind.Warehouse, movement.HoldingId), Key(TraceKind.Lot, movement.LotId));
        switch (movement.Kind, KindOf(movement.Kind))
        {
            case (MovementKind.Receipt, _):
                yield return new TraceEdge(Key(TraceKind.Arrival, movement.ArrivalId!.Value), holding, movement.On, movement.Weighed);
                break;
            case (MovementKind.TransferOut, _) when movement.TransferId is { } other && holdings.TryGetValue(other, out var to):
                yield return new TraceEdge(holding, Key(TraceKind.Warehouse, to), movement.On, Weight.Zero - movement.Weighed);
                break;
            case (_, TraceKind.Added):
                yield return new TraceEdge(lot, Key(TraceKind.Added, movement.Id), null, movement.Weighed);
                yield return new TraceEdge(Key(TraceKind.Added, movement.Id), holding, movement.On, movement.Weighed);
                break;
            case (_, { } gone):
                yield return new TraceEdge(holding, Key(gone, movement.Id), movement.On, Weight.Zero - movement.Weighed);
                break;
            default:
                break;
        }
    }

    /// <summary>The stop that a movement makes; null for one that joins two that are there.</summary>
    internal static TraceKind? KindOf(MovementKind kind) => kind switch
    {
        MovementKind.Opening or MovementKind.Return or MovementKind.Gain => TraceKind.Added,
        MovementKind.Release => TraceKind.Release,
        MovementKind.Sale => TraceKind.Sale,
        MovementKind.SampleDrawn => TraceKind.Sample,
        MovementKind.Loss => TraceKind.Loss,
        _ => null,
    };

    private static string Bags(int bags) => string.Create(Reader, $"{bags:#,0} {(bags == 1 ? "bag" : "bags")}");

    private static string? PapersOf(Shipment shipment) => Joined(
    [
        shipment.BillOfLading is { } bill ? $"bill of lading {bill}" : null,
        shipment.Vessel,
        .. shipment.Containers.Select(container => container.SealNumber is { } seal ? $"container {container.Number}, seal {seal}" : $"container {container.Number}"),
    ]);

    private static string? Joined(params IEnumerable<string?> parts) => string.Join("; ", parts.Where(part => !string.IsNullOrEmpty(part))) is { Length: > 0 } text ? text : null;
}

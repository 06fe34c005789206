using GreenLedger.Data.Cupping;
using GreenLedger.Data.Summaries;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Web.Summaries;

/// <summary>A table of the ledger that can leave as it stands: its name in addresses, its columns, and its rows one by one.</summary>
internal abstract record ExtractTable(string Name, string Title, string What)
{
    public abstract IReadOnlyList<string> Heads { get; }

    /// <summary>As a workbook, written while the rows are read.</summary>
    public abstract Task WriteWorkbookAsync(Stream stream, ExtractQuery query, ExtractFilter filter, Seal seal, CancellationToken cancellationToken);

    /// <summary>As CSV, written while the rows are read.</summary>
    public abstract Task WriteTextAsync(Stream stream, ExtractQuery query, ExtractFilter filter, Seal seal, CancellationToken cancellationToken);
}

internal sealed record ExtractTable<T>(
    string Name, string Title, string What, IReadOnlyList<TableColumn<T>> Columns, Func<ExtractQuery, ExtractFilter, Seal, IAsyncEnumerable<T>> Rows)
    : ExtractTable(Name, Title, What)
{
    public override IReadOnlyList<string> Heads => [.. Columns.Select(column => column.Head)];

    public override Task WriteWorkbookAsync(Stream stream, ExtractQuery query, ExtractFilter filter, Seal seal, CancellationToken cancellationToken) =>
        TableWorkbook.WriteAsync(stream, Title, Columns, Rows(query, filter, seal), cancellationToken);

    public override Task WriteTextAsync(Stream stream, ExtractQuery query, ExtractFilter filter, Seal seal, CancellationToken cancellationToken) =>
        TableText.WriteAsync(stream, Columns, Rows(query, filter, seal), cancellationToken);
}

/// <summary>The tables that leave; units stand in the heads.</summary>
internal static class ExtractTables
{
    public static IReadOnlyList<ExtractTable> All { get; } =
    [
        new ExtractTable<LotExtract>("lots", "Lots", "Every lot that was ever offered. Days do not apply.", ExtractColumns.OfLots, (query, filter, seal) => query.Lots(filter, seal)),
        new ExtractTable<SampleExtract>("samples", "Samples", "By the day received.", ExtractColumns.OfSamples, (query, filter, seal) => query.Samples(filter, seal)),
        new ExtractTable<CuppingExtract>("cuppings", "Cuppings", "What closed sessions found of each sample, by their day.", ExtractColumns.OfCuppings, (query, filter, seal) => query.Cuppings(filter, seal)),
        new ExtractTable<ContractExtract>("contracts", "Contracts", "A row for each lot, by the end of the shipment period.", ExtractColumns.OfContracts, (query, filter, seal) => query.Contracts(filter, seal)),
        new ExtractTable<ShipmentExtract>("shipments", "Shipments", "A row for each lot, by the day on board.", ExtractColumns.OfShipments, (query, filter, seal) => query.Shipments(filter, seal)),
        new ExtractTable<ArrivalExtract>("arrivals", "Arrivals", "By the day received.", ExtractColumns.OfArrivals, (query, filter, seal) => query.Arrivals(filter, seal)),
        new ExtractTable<DecisionExtract>("decisions", "Decisions", "With the figures as they stood, the withdrawn too, by their day.", ExtractColumns.OfDecisions, (query, filter, seal) => query.Decisions(filter, seal)),
    ];

    /// <exception cref="RuleBrokenException">There is no such table.</exception>
    public static ExtractTable Named(string? name)
    {
        var found = All.FirstOrDefault(table => string.Equals(table.Name, name, StringComparison.OrdinalIgnoreCase));
        Rule.Require(found is not null, $"Choose one of these tables: {string.Join(", ", All.Select(table => table.Name))}.", "Table");
        return found;
    }
}

/// <summary>The columns of each table.</summary>
internal static class ExtractColumns
{
    public static IReadOnlyList<TableColumn<LotExtract>> OfLots { get; } =
    [
        TableColumn<LotExtract>.Text("Ref", row => row.Lot.Ref, 16),
        TableColumn<LotExtract>.Text("Lot", row => row.Lot.Name, 32),
        TableColumn<LotExtract>.Text("Supplier", row => row.Supplier),
        TableColumn<LotExtract>.Text("Producer", row => row.Producer),
        TableColumn<LotExtract>.Text("Origin, ISO 3166-1", row => row.Lot.CountryCode, 8),
        TableColumn<LotExtract>.Text("Region", row => row.Lot.Region),
        TableColumn<LotExtract>.Text("Varieties", row => row.Lot.Varieties),
        TableColumn<LotExtract>.Text("Process", row => row.Process ?? row.Lot.ProcessAsWritten, 18),
        TableColumn<LotExtract>.Text("Crop year", row => row.Lot.CropYear, 10),
        TableColumn<LotExtract>.Text("Grade", row => row.Lot.Grade, 14),
        TableColumn<LotExtract>.Text("Screen", row => row.Lot.Screen, 10),
        TableColumn<LotExtract>.Count("Altitude from, m", row => row.Lot.AltitudeFrom),
        TableColumn<LotExtract>.Count("Altitude to, m", row => row.Lot.AltitudeTo),
        TableColumn<LotExtract>.Count("Bags", row => row.Lot.Bags),
        TableColumn<LotExtract>.Number("Bag, kg", row => row.Lot.BagWeight?.Kilograms, 3),
        TableColumn<LotExtract>.Number("Net, kg", row => row.Lot.NetWeight?.Kilograms, 3),
        TableColumn<LotExtract>.Text("Certificates", row => string.Join(", ", row.Lot.Certificates)),
        TableColumn<LotExtract>.Text("Programme", row => row.Lot.Programme),
        TableColumn<LotExtract>.Text("ICO mark", row => row.Lot.IcoMark, 16),
        TableColumn<LotExtract>.Number("Moisture stated, %", row => row.Lot.StatedMoisture?.Points),
        TableColumn<LotExtract>.Text("From the list", row => row.Lot.Notes, 40),
    ];

    public static IReadOnlyList<TableColumn<SampleExtract>> OfSamples { get; } =
    [
        TableColumn<SampleExtract>.Text("Label", row => row.Sample.LabelCode, 12),
        TableColumn<SampleExtract>.Text("Kind", row => Pages.Samples.SampleKinds.Word(row.Sample.Kind), 14),
        TableColumn<SampleExtract>.Text("Ref", row => row.Lot.Ref, 16),
        TableColumn<SampleExtract>.Text("Lot", row => row.Lot.Name, 32),
        TableColumn<SampleExtract>.Text("Supplier", row => row.Supplier),
        TableColumn<SampleExtract>.Day("Asked for", row => row.Sample.AskedOn),
        TableColumn<SampleExtract>.Number("Asked for, g", row => row.Sample.AskedWeight?.Grams, 0),
        TableColumn<SampleExtract>.Day("Sent", row => row.Sample.SentOn),
        TableColumn<SampleExtract>.Text("Courier", row => row.Sample.Courier, 18),
        TableColumn<SampleExtract>.Text("Tracking number", row => row.Sample.TrackingNumber, 20),
        TableColumn<SampleExtract>.Day("Received", row => row.Sample.ReceivedOn),
        TableColumn<SampleExtract>.Number("Received, g", row => row.Sample.Weight?.Grams, 0),
        TableColumn<SampleExtract>.Text("Bag", row => row.Sample.BagCondition),
        TableColumn<SampleExtract>.Text("Note", row => row.Sample.Note, 40),
    ];

    public static IReadOnlyList<TableColumn<CuppingExtract>> OfCuppings { get; } =
    [
        TableColumn<CuppingExtract>.Day("Cupped", row => row.Result.HeldOn),
        TableColumn<CuppingExtract>.Text("Session", row => row.Session, 28),
        TableColumn<CuppingExtract>.Text("Form", row => row.Form),
        TableColumn<CuppingExtract>.Text("Label", row => row.Sample, 12),
        TableColumn<CuppingExtract>.Text("Ref", row => row.Lot.Ref, 16),
        TableColumn<CuppingExtract>.Text("Lot", row => row.Lot.Name, 32),
        TableColumn<CuppingExtract>.Text("Supplier", row => row.Supplier),
        TableColumn<CuppingExtract>.Number("Score, points", row => row.Result.Fitted.Points, 4),
        TableColumn<CuppingExtract>.Number("Low, points (95 %)", row => row.Result.Low.Points, 4),
        TableColumn<CuppingExtract>.Number("High, points (95 %)", row => row.Result.High.Points, 4),
        TableColumn<CuppingExtract>.Text("Interval holds for", row => row.Result.HoldsFor.Word(), 16),
        TableColumn<CuppingExtract>.Number("Plain mean, points", row => row.Result.PlainMean.Points, 4),
        TableColumn<CuppingExtract>.Count("Cuppers", row => row.Result.Cuppers),
        TableColumn<CuppingExtract>.Count("Sheets", row => row.Result.Sheets),
    ];

    public static IReadOnlyList<TableColumn<ContractExtract>> OfContracts { get; } =
    [
        TableColumn<ContractExtract>.Text("Contract", row => row.Contract.Ref, 12),
        TableColumn<ContractExtract>.Text("Supplier", row => row.Supplier),
        TableColumn<ContractExtract>.Text("Goods", row => row.Contract.Goods.Word(), 18),
        TableColumn<ContractExtract>.Text("Price", row => row.Contract.Price.Word(), 18),
        TableColumn<ContractExtract>.Text("Ref", row => row.Lot.Ref, 16),
        TableColumn<ContractExtract>.Text("Lot", row => row.Lot.Name, 32),
        TableColumn<ContractExtract>.Count("Bags", row => row.Line.Bags),
        TableColumn<ContractExtract>.Number("Net, kg", row => row.Line.Net.Kilograms, 3),
        TableColumn<ContractExtract>.Day("Ship from", row => row.Contract.ShipFrom),
        TableColumn<ContractExtract>.Day("Ship until", row => row.Contract.ShipUntil),
        TableColumn<ContractExtract>.Text("Futures month to fix", row => row.Contract.OpenMonth?.ToString(), 14),
        TableColumn<ContractExtract>.Number("Contract not fixed, kg", row => row.Contract.OpenWeight.Kilograms, 3),
    ];

    public static IReadOnlyList<TableColumn<ShipmentExtract>> OfShipments { get; } =
    [
        TableColumn<ShipmentExtract>.Text("Shipment", row => row.Shipment.Ref, 12),
        TableColumn<ShipmentExtract>.Text("Contract", row => row.Contract, 12),
        TableColumn<ShipmentExtract>.Text("Ref", row => row.Lot.Ref, 16),
        TableColumn<ShipmentExtract>.Text("Lot", row => row.Lot.Name, 32),
        TableColumn<ShipmentExtract>.Count("Bags", row => row.Line.Bags),
        TableColumn<ShipmentExtract>.Number("Net shipped, kg", row => row.Line.Net.Kilograms, 3),
        TableColumn<ShipmentExtract>.YesNo("Shipped without approval", row => row.Line.IsUnapproved),
        TableColumn<ShipmentExtract>.Text("Bill of lading", row => row.Shipment.BillOfLading, 18),
        TableColumn<ShipmentExtract>.Text("Vessel", row => row.Shipment.Vessel, 18),
        TableColumn<ShipmentExtract>.Text("Voyage", row => row.Shipment.Voyage, 12),
        TableColumn<ShipmentExtract>.Text("Port of loading", row => row.Shipment.PortOfLoading, 12),
        TableColumn<ShipmentExtract>.Text("Port of destination", row => row.Shipment.PortOfDestination, 12),
        TableColumn<ShipmentExtract>.Day("Planned departure", row => row.Shipment.PlannedDeparture),
        TableColumn<ShipmentExtract>.Day("Planned arrival", row => row.Shipment.PlannedArrival),
        TableColumn<ShipmentExtract>.Day("On board", row => row.Shipment.ShippedOn),
        TableColumn<ShipmentExtract>.Day("Discharged", row => row.Shipment.DischargedOn),
        TableColumn<ShipmentExtract>.Day("Cleared", row => row.Shipment.ClearedOn),
        TableColumn<ShipmentExtract>.Day("Available", row => row.Shipment.AvailableOn),
    ];

    public static IReadOnlyList<TableColumn<ArrivalExtract>> OfArrivals { get; } =
    [
        TableColumn<ArrivalExtract>.Day("Received", row => row.Arrival.ReceivedOn),
        TableColumn<ArrivalExtract>.Text("Shipment", row => row.Shipment, 12),
        TableColumn<ArrivalExtract>.Text("Ref", row => row.Lot.Ref, 16),
        TableColumn<ArrivalExtract>.Text("Lot", row => row.Lot.Name, 32),
        TableColumn<ArrivalExtract>.Text("Supplier", row => row.Supplier),
        TableColumn<ArrivalExtract>.Count("Bags shipped", row => row.Arrival.ShippedBags),
        TableColumn<ArrivalExtract>.Number("Shipped, kg", row => row.Arrival.Shipped.Kilograms, 3),
        TableColumn<ArrivalExtract>.Count("Bags", row => row.Arrival.Bags),
        TableColumn<ArrivalExtract>.Number("Landed, kg", row => row.Arrival.Landed.Kilograms, 3),
        TableColumn<ArrivalExtract>.Number("Difference, kg", row => (row.Arrival.Landed - row.Arrival.Shipped).Kilograms, 3),
        TableColumn<ArrivalExtract>.Count("Wet bags", row => row.Arrival.WetBags),
        TableColumn<ArrivalExtract>.Count("Torn bags", row => row.Arrival.TornBags),
        TableColumn<ArrivalExtract>.Count("Stained bags", row => row.Arrival.StainedBags),
        TableColumn<ArrivalExtract>.YesNo("Infested", row => row.Arrival.IsInfested),
        TableColumn<ArrivalExtract>.Text("Odour", row => row.Arrival.Odour),
        TableColumn<ArrivalExtract>.YesNo("Seal intact", row => row.Arrival.SealIntact),
        TableColumn<ArrivalExtract>.Count("Corrections", row => row.Arrival.Corrections),
        TableColumn<ArrivalExtract>.Text("Note", row => row.Arrival.Note, 40),
    ];

    public static IReadOnlyList<TableColumn<DecisionExtract>> OfDecisions { get; } =
    [
        TableColumn<DecisionExtract>.Day("Decided", row => row.On),
        TableColumn<DecisionExtract>.Text("Ref", row => row.Lot.Ref, 16),
        TableColumn<DecisionExtract>.Text("Lot", row => row.Lot.Name, 32),
        TableColumn<DecisionExtract>.Text("Decision", row => row.Decision.Outcome.Word(), 10),
        TableColumn<DecisionExtract>.Number("kg", row => row.Decision.Quantity?.Kilograms, 3),
        TableColumn<DecisionExtract>.Text("Advised", row => row.Decision.Advised.Word(), 10),
        TableColumn<DecisionExtract>.Number("Score, points", row => row.Figures.Score?.Points, 4),
        TableColumn<DecisionExtract>.Number("Landed cost per kg", row => row.Figures.CostPerKilogram, 4),
        TableColumn<DecisionExtract>.Text("Currency", row => row.Figures.Currency.Code, 10),
        TableColumn<DecisionExtract>.Text("By", row => row.By, 20),
        TableColumn<DecisionExtract>.Text("Reason", row => row.Decision.Reason, 40),
        TableColumn<DecisionExtract>.Text("Note", row => row.Decision.Note, 40),
        TableColumn<DecisionExtract>.Day("Withdrawn", row => row.WithdrawnOn),
        TableColumn<DecisionExtract>.Text("Withdrawn because", row => row.Decision.WithdrawnBecause, 40),
    ];
}

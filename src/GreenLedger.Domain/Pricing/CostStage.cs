namespace GreenLedger.Domain.Pricing;

/// <summary>
/// The stages between the mill and the buyer's warehouse at which money is spent, in the order of the way
/// (handbook, trade 3.1 and 3.2). A route answers every one of them.
/// </summary>
public enum CostStage
{
    Packing = 0,
    OriginLoading = 1,
    InlandCarriage = 2,
    ExportClearance = 3,
    OriginTerminal = 4,
    OnBoard = 5,
    Freight = 6,
    Insurance = 7,
    DestinationTerminal = 8,
    CarrierDocuments = 9,
    ImportClearance = 10,
    Inspection = 11,
    Duty = 12,
    HandlingOut = 13,
    Haulage = 14,
    Unloading = 15,
    WeighingAndSampling = 16,
    Finance = 17,
    Storage = 18,
}

public static class CostStages
{
    public static IReadOnlyList<CostStage> All { get; } = Enum.GetValues<CostStage>();

    /// <summary>As the screens write it.</summary>
    public static string Word(this CostStage stage) => stage switch
    {
        CostStage.Packing => "Packing",
        CostStage.OriginLoading => "Loading at the mill",
        CostStage.InlandCarriage => "Inland carriage to the port",
        CostStage.ExportClearance => "Export clearance",
        CostStage.OriginTerminal => "Terminal at origin",
        CostStage.OnBoard => "Loading on board",
        CostStage.Freight => "Main freight",
        CostStage.Insurance => "Insurance",
        CostStage.DestinationTerminal => "Terminal at destination",
        CostStage.CarrierDocuments => "Carrier's document fees",
        CostStage.ImportClearance => "Import clearance",
        CostStage.Inspection => "Inspections at import",
        CostStage.Duty => "Duty and import taxes",
        CostStage.HandlingOut => "Handling out of the seller's warehouse",
        CostStage.Haulage => "Haulage to the warehouse",
        CostStage.Unloading => "Unloading at the warehouse",
        CostStage.WeighingAndSampling => "Weighing and sampling",
        CostStage.Finance => "Finance",
        CostStage.Storage => "Storage",
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };

    /// <summary>What belongs to the stage, for whoever fills in a route.</summary>
    public static string Hint(this CostStage stage) => stage switch
    {
        CostStage.Packing => "Bags and liners, bagging at the mill.",
        CostStage.OriginLoading => "Loading the truck at the mill.",
        CostStage.InlandCarriage => "Truck or rail from the mill to the port of loading.",
        CostStage.ExportClearance => "Export declaration, permits, ICO and plant-health papers.",
        CostStage.OriginTerminal => "Terminal handling at the port of loading, stuffing.",
        CostStage.OnBoard => "Loading on board the ship.",
        CostStage.Freight => "Ocean freight with its surcharges.",
        CostStage.Insurance => "Cargo insurance, usually a rate on the insured share of CIF.",
        CostStage.DestinationTerminal => "Terminal handling at the port of destination.",
        CostStage.CarrierDocuments => "Bill of lading, delivery order and agency fees.",
        CostStage.ImportClearance => "Import declaration by the broker.",
        CostStage.Inspection => "Plant-health, food-safety and customs inspections.",
        CostStage.Duty => "Duty by tariff; recoverable VAT is no cost.",
        CostStage.HandlingOut => "Only for coffee bought ex warehouse (spot).",
        CostStage.Haulage => "From the port, or the seller's warehouse, to yours.",
        CostStage.Unloading => "Taking the bags off the truck.",
        CostStage.WeighingAndSampling => "Weighing on arrival and drawing samples.",
        CostStage.Finance => "Interest from payment to use or sale.",
        CostStage.Storage => "Storage until use; started months count in full.",
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };
}

using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Data.Summaries;

/// <summary>Which rows of a table leave; null or empty asks nothing.</summary>
/// <param name="Text">Part of a lot's reference, name, origin or process.</param>
/// <param name="From">The first day, by the table's own day.</param>
/// <param name="Until">The last day.</param>
public sealed record ExtractFilter(string? Text = null, DateOnly? From = null, DateOnly? Until = null)
{
    /// <summary>Whose days those are.</summary>
    public ClockZone Zone { get; init; } = ClockZone.Utc;
}

public sealed record LotExtract(Lot Lot, string? Supplier, string? Producer, string? Process);

public sealed record SampleExtract(Sample Sample, Lot Lot, string? Supplier);

/// <summary>What a closed session found of a sample.</summary>
public sealed record CuppingExtract(SampleResult Result, string Session, string Form, string Sample, Lot Lot, string? Supplier);

/// <summary>A lot on a contract.</summary>
public sealed record ContractExtract(Contract Contract, ContractLot Line, Lot Lot, string Supplier);

/// <summary>A lot on a shipment.</summary>
public sealed record ShipmentExtract(Shipment Shipment, ShipmentLot Line, Lot Lot, string Contract);

public sealed record ArrivalExtract(Arrival Arrival, Lot Lot, string Shipment, string? Supplier);

public sealed record DecisionExtract(Decision Decision, Lot Lot, string By)
{
    /// <summary>By the days of the house.</summary>
    public DateOnly On { get; init; }

    /// <summary>Null while it stands.</summary>
    public DateOnly? WithdrawnOn { get; init; }

    /// <summary>As they stood when it was decided.</summary>
    public FiguresSnapshot Figures => FrozenJson.Read<FiguresSnapshot>(Decision.Figures);
}

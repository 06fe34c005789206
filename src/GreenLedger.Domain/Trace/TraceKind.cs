namespace GreenLedger.Domain.Trace;

/// <summary>What a stop of a trace stands for, in the order in which coffee passes them.</summary>
public enum TraceKind
{
    Plot = 0,
    Producer = 1,
    Supplier = 2,
    Lot = 3,

    /// <summary>A lot on a contract.</summary>
    Contract = 4,

    /// <summary>A lot on a shipment.</summary>
    Shipment = 5,
    Arrival = 6,

    /// <summary>What came into stock without an arrival: opening stock, a return, a gain.</summary>
    Added = 7,

    /// <summary>A lot in a warehouse.</summary>
    Warehouse = 8,
    Release = 9,
    Sale = 10,
    Sample = 11,
    Loss = 12,
}

/// <summary>Where a trace starts.</summary>
public enum TraceFrom
{
    Lot = 0,
    Plot = 1,
    Producer = 2,
    Contract = 3,
    Shipment = 4,

    /// <summary>Coffee that left a warehouse: a release, a sale, a sample drawn, a loss.</summary>
    Release = 5,
}

public static class TraceKinds
{
    /// <summary>As the screens write it.</summary>
    public static string Word(this TraceKind kind) => kind switch
    {
        TraceKind.Plot => "plot",
        TraceKind.Producer => "producer",
        TraceKind.Supplier => "supplier",
        TraceKind.Lot => "lot",
        TraceKind.Contract => "contract",
        TraceKind.Shipment => "shipment",
        TraceKind.Arrival => "arrival",
        TraceKind.Added => "came without an arrival",
        TraceKind.Warehouse => "warehouse",
        TraceKind.Release => "release to roasting",
        TraceKind.Sale => "sale",
        TraceKind.Sample => "sample drawn",
        TraceKind.Loss => "loss",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>As the screens write it.</summary>
    public static string Word(this TraceFrom from) => from switch
    {
        TraceFrom.Lot => "lot",
        TraceFrom.Plot => "plot",
        TraceFrom.Producer => "producer",
        TraceFrom.Contract => "contract",
        TraceFrom.Shipment => "shipment",
        TraceFrom.Release => "what left the stock",
        _ => throw new ArgumentOutOfRangeException(nameof(from)),
    };

    /// <summary>Whether coffee is gone from stock there.</summary>
    public static bool IsGone(this TraceKind kind) => kind >= TraceKind.Release;
}

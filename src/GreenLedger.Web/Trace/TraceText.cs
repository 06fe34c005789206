using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Web.Trace;

/// <summary>A trace in words and figures.</summary>
public static class TraceText
{
    /// <summary>To the gram, in kilograms whatever the person reads: a balance closes in one unit.</summary>
    public static string Kilograms(Weight weight) => weight.Kilograms.ToString("#,0.###;−#,0.###", CultureInfo.InvariantCulture) + " kg";

    /// <summary>Several of what a trace may start from.</summary>
    public static string Many(TraceFrom from) => from switch
    {
        TraceFrom.Lot => "Lots in stock",
        TraceFrom.Plot => "Plots",
        TraceFrom.Producer => "Producers",
        TraceFrom.Contract => "Contracts",
        TraceFrom.Shipment => "Shipments",
        TraceFrom.Release => "Released and sold",
        _ => throw new ArgumentOutOfRangeException(nameof(from)),
    };

    /// <summary>The page that tells more of a stop; null where there is none.</summary>
    public static string? PageOf(TraceKind kind) => kind switch
    {
        TraceKind.Plot => "/Origins/Plots",
        TraceKind.Producer => "/Origins/Producer",
        TraceKind.Supplier => "/Offers/Supplier",
        TraceKind.Lot => "/Offers/Lot",
        TraceKind.Contract => "/Contracts/Contract",
        TraceKind.Shipment => "/Shipments/Shipment",
        TraceKind.Arrival => "/Arrivals/Arrival",
        _ => "/Stock/Lot",
    };

    /// <summary>As a line begins.</summary>
    public static string Capital(string words)
    {
        ArgumentException.ThrowIfNullOrEmpty(words);
        return char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>One sentence that says what the picture shows.</summary>
    public static string Told(TraceWay way)
    {
        ArgumentNullException.ThrowIfNull(way);
        var parts = way.Nodes.GroupBy(node => node.Key.Kind).OrderBy(kind => kind.Key).Select(kind => $"{kind.Key.Word()} {kind.Count().ToString("#,0", CultureInfo.InvariantCulture)}");
        return $"Stops of coffee from left to right, joined by lines: {string.Join(", ", parts)}. The tables below say the same in figures.";
    }
}

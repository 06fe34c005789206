using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Roasting;

/// <summary>What a protocol asks of a sample roast, as the house states it.</summary>
/// <param name="Name">The protocol with its edition.</param>
/// <param name="ColourScale">The scale that both targets are on; other scales are not held against them.</param>
public sealed record RoastWindows(
    string Name,
    decimal LeastMinutes,
    decimal MostMinutes,
    decimal LeastRestHours,
    decimal MostRestHours,
    string? ColourScale,
    ColourReading? WholeBean,
    ColourReading? Ground,
    decimal ColourTolerance)
{
    /// <summary>Cupping protocol as revised 2009: handbook quality.md section 1.3.</summary>
    public static RoastWindows Usual { get; } = new(
        "Cupping protocol, 2009 revision", 8m, 12m, 8m, 24m, "Gourmet", ColourReading.Of(58m), ColourReading.Of(63m), 1m);
}

/// <summary>
/// One statement of the windows: editions differ, so they are data. A change is a new row, the newest holds, and a roast
/// keeps the one it was held against.
/// </summary>
public sealed class RoastProtocol
{
    private RoastProtocol()
    {
        Name = "";
    }

    /// <exception cref="RuleBrokenException">A window ends before it begins or lies outside what can be.</exception>
    public RoastProtocol(RoastWindows windows, DateTimeOffset from)
    {
        ArgumentNullException.ThrowIfNull(windows);
        Rule.Require(windows.LeastMinutes > 0m && windows.LeastMinutes < windows.MostMinutes && windows.MostMinutes <= 60m, "The roast's window runs from above 0 to at most 60 minutes.", nameof(RoastWindows.MostMinutes));
        Rule.Require(windows.LeastRestHours >= 0m && windows.LeastRestHours < windows.MostRestHours && windows.MostRestHours <= 240m, "The rest's window runs from 0 to at most 240 hours.", nameof(RoastWindows.MostRestHours));
        Rule.Require(windows.ColourTolerance is >= 0m and <= 20m, "The colour may differ by 0 to 20.", nameof(RoastWindows.ColourTolerance));
        Rule.Require((windows.WholeBean is null && windows.Ground is null) || !string.IsNullOrWhiteSpace(windows.ColourScale), "Name the scale of the colour.", nameof(RoastWindows.ColourScale));
        Id = Id<RoastProtocol>.New();
        From = from;
        Name = Rule.Text(windows.Name, "The name of the protocol", field: nameof(Name));
        (LeastSeconds, MostSeconds) = (Whole(windows.LeastMinutes * 60m), Whole(windows.MostMinutes * 60m));
        (LeastRestMinutes, MostRestMinutes) = (Whole(windows.LeastRestHours * 60m), Whole(windows.MostRestHours * 60m));
        ColourScale = Rule.OptionalText(windows.ColourScale, "The scale", 60, nameof(ColourScale));
        (WholeBean, Ground) = (windows.WholeBean, windows.Ground);
        ToleranceTenths = Whole(windows.ColourTolerance * 10m);
    }

    public Id<RoastProtocol> Id { get; private set; }

    public string Name { get; private set; }

    /// <summary>Since when the house goes by it.</summary>
    public DateTimeOffset From { get; private set; }

    public int LeastSeconds { get; private set; }

    public int MostSeconds { get; private set; }

    public int LeastRestMinutes { get; private set; }

    public int MostRestMinutes { get; private set; }

    public string? ColourScale { get; private set; }

    public ColourReading? WholeBean { get; private set; }

    public ColourReading? Ground { get; private set; }

    public int ToleranceTenths { get; private set; }

    public RoastWindows Windows => new(
        Name, LeastSeconds / 60m, MostSeconds / 60m, LeastRestMinutes / 60m, MostRestMinutes / 60m, ColourScale, WholeBean, Ground, ToleranceTenths / 10m);

    private static int Whole(decimal value) => decimal.ToInt32(Math.Round(value, 0, MidpointRounding.AwayFromZero));
}

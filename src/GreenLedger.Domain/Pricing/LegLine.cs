using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>Every way in which a stage can be answered, as a form or a script states it.</summary>
public enum LegWay
{
    Included = 0,
    None = 1,
    PerKilogram = 2,
    PerBag = 3,
    PerContainer = 4,
    PerShipment = 5,
    PercentOfValue = 6,
    PercentOfCif = 7,
    Interest = 8,
    Interest360 = 9,
    Interest365 = 10,
    PerTonneMonth = 11,
}

public static class LegWays
{
    /// <summary>As the screens write it; what follows the amount where there is one.</summary>
    public static string Word(this LegWay way) => way switch
    {
        LegWay.Included => "included in another leg",
        LegWay.None => "none",
        LegWay.PerKilogram => "amount per kg",
        LegWay.PerBag => "amount per bag",
        LegWay.PerContainer => "amount per container",
        LegWay.PerShipment => "amount per shipment",
        LegWay.PercentOfValue => "% of the value",
        LegWay.PercentOfCif => "% of CIF",
        LegWay.Interest => "% interest a year, days by currency",
        LegWay.Interest360 => "% interest a year, ACT/360",
        LegWay.Interest365 => "% interest a year, ACT/365",
        LegWay.PerTonneMonth => "amount per tonne and started month",
        _ => throw new ArgumentOutOfRangeException(nameof(way)),
    };

    public static bool HasFigure(this LegWay way) => way > LegWay.None;

    public static bool IsRate(this LegWay way) => way is >= LegWay.PercentOfValue and <= LegWay.Interest365;
}

/// <summary>
/// One leg as a form or a script states it: the figure is the amount or the rate in per cent, the time is days of
/// interest or started months of storage.
/// </summary>
public sealed record LegLine(CostStage Stage, LegWay Way, decimal? Figure = null, Currency? Currency = null, int? Time = null, string? Name = null);

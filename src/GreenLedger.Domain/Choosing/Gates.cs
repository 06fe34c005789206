using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// What a lot must meet to be ranked at all; null or empty asks nothing. Every gate tests the unrounded value:
/// 79.9167 does not meet 80.
/// </summary>
public sealed record Gates
{
    public Score? LeastScore { get; init; }

    /// <summary>The lower end of the 95 % interval must reach this.</summary>
    public Score? LeastLowerBound { get; init; }

    /// <summary>Per kilogram, in the currency of the rules.</summary>
    public decimal? HighestCostPerKilogram { get; init; }

    public Percent? LeastMoisture { get; init; }

    public Percent? HighestMoisture { get; init; }

    public WaterActivity? HighestWaterActivity { get; init; }

    public FullDefects? HighestCategory1 { get; init; }

    public FullDefects? HighestCategory2 { get; init; }

    public int? HighestQuakers { get; init; }

    /// <summary>The screen of <see cref="LeastRetained"/>, in sixty-fourths of an inch.</summary>
    public int? Screen { get; init; }

    /// <summary>Share of the mass that the screen and all larger ones must keep.</summary>
    public Percent? LeastRetained { get; init; }

    public Weight? LeastQuantity { get; init; }

    /// <summary>Labels of crop years sort in order of time.</summary>
    public string? EarliestCropYear { get; init; }

    /// <summary>A lot must hold every one of them.</summary>
    public IReadOnlyList<string> Certificates { get; init; } = [];

    /// <exception cref="RuleBrokenException">The figures contradict each other.</exception>
    public void Check()
    {
        Rule.Require(HighestCostPerKilogram is null or > 0m, "The highest landed cost is above 0.", nameof(HighestCostPerKilogram));
        Rule.Require(LeastMoisture is null || HighestMoisture is null || LeastMoisture <= HighestMoisture, "The least moisture cannot exceed the highest.", nameof(LeastMoisture));
        Rule.Require(HighestQuakers is null or >= 0, "The number of quakers cannot be negative.", nameof(HighestQuakers));
        Rule.Require(Screen is null == LeastRetained is null, "A screen gate needs the screen and the share that it keeps.", nameof(Screen));
        Rule.Require(LeastQuantity is null || LeastQuantity >= Weight.Zero, "The least quantity cannot be negative.", nameof(LeastQuantity));
    }
}

/// <summary>A gate, or a fact without which a lot cannot be ranked.</summary>
[Flags]
public enum Gate
{
    None = 0,
    NoScore = 1,
    NoCost = 2,
    LeastScore = 4,
    LeastLowerBound = 8,
    HighestCost = 16,
    Process = 32,
    Moisture = 64,
    WaterActivity = 128,
    Category1 = 256,
    Category2 = 512,
    Quakers = 1024,
    Screen = 2048,
    Quantity = 4096,
    CropYear = 8192,
    Certificates = 16384,
}

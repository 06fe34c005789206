using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// How much each term weighs. Any figures from 0 up: they are divided by their sum, so 60 and 40 say the same as
/// 0.6 and 0.4.
/// </summary>
public sealed record Weights
{
    public decimal Score { get; init; } = 60m;

    public decimal Cost { get; init; } = 40m;

    public decimal CostPerPoint { get; init; }

    public decimal Process { get; init; }

    public decimal Sum => Score + Cost + CostPerPoint + Process;

    /// <exception cref="RuleBrokenException">A weight is negative or too large, or all are zero.</exception>
    public void Check()
    {
        Rule.Require(new[] { Score, Cost, CostPerPoint, Process }.All(weight => weight is >= 0m and <= 1_000_000m), "A weight is 0 or more.", nameof(Weights));
        Rule.Require(Sum > 0m, "At least one weight must be above 0.", nameof(Weights));
    }
}

/// <summary>
/// The fixed figures at which a term counts 0 and 1. With the least and the best of the day instead, one offer more or
/// less could turn the order of two others (handbook quality.md section 5). Score and cost go on in a straight line
/// beyond their anchors; cost per point has a pole and is cut at 0 and 1.
/// </summary>
public sealed record Anchors
{
    /// <summary>The score that counts 0.</summary>
    public required Score LowScore { get; init; }

    /// <summary>The score that counts 1.</summary>
    public required Score HighScore { get; init; }

    /// <summary>The landed cost of a kilogram that counts 1.</summary>
    public required decimal LowCost { get; init; }

    /// <summary>The landed cost of a kilogram that counts 0.</summary>
    public required decimal HighCost { get; init; }

    /// <summary>The cost per point that counts 1.</summary>
    public decimal LowCostPerPoint { get; init; }

    /// <summary>The cost per point that counts 0.</summary>
    public decimal HighCostPerPoint { get; init; }

    /// <exception cref="RuleBrokenException">Two anchors of one term do not lie apart in the right order.</exception>
    public void Check(Weights weights)
    {
        Rule.Require(LowScore < HighScore, "The score that counts 0 must lie below the one that counts 1.", nameof(LowScore));
        Rule.Require(LowCost >= 0m && LowCost < HighCost, "The cost that counts 1 must lie below the one that counts 0.", nameof(LowCost));
        Rule.Require(weights.CostPerPoint == 0m || (LowCostPerPoint >= 0m && LowCostPerPoint < HighCostPerPoint), "The cost per point that counts 1 must lie below the one that counts 0.", nameof(LowCostPerPoint));
    }
}

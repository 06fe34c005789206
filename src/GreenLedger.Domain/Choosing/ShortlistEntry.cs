using System.Numerics;

namespace GreenLedger.Domain.Choosing;

/// <summary>Where a lot stands in a shortlist.</summary>
public enum Standing
{
    Ranked = 0,

    /// <summary>It misses a gate, or a fact without which it cannot be ranked.</summary>
    Failed = 1,

    /// <summary>It was scored, but on another form than the rules': the two cannot be compared.</summary>
    OtherForm = 2,
}

/// <summary>The part of the weighted score that each term gives: weight times what the term counts.</summary>
public readonly record struct WeightedTerms(double Score, double Cost, double CostPerPoint, double Process)
{
    public double Total => Score + Cost + CostPerPoint + Process;
}

/// <summary>One lot's place in a shortlist with everything that put it there.</summary>
public sealed class ShortlistEntry
{
    internal ShortlistEntry(Candidate candidate, LotScore? score, Gate failed, Standing standing)
    {
        Candidate = candidate;
        Score = score;
        FailedGates = failed;
        Standing = standing;
    }

    public Candidate Candidate { get; }

    /// <summary>Null when no session used the rules' form and no stated score may stand in.</summary>
    public LotScore? Score { get; }

    public Standing Standing { get; }

    public Gate FailedGates { get; }

    public int FailedCount => BitOperations.PopCount((uint)FailedGates);

    /// <summary>From 1; 0 for a lot that is not ranked.</summary>
    public int Rank { get; internal set; }

    public WeightedTerms Terms { get; internal set; }

    /// <summary>In house currency by the rules' definition; null where it has none, such as at or below the base score.</summary>
    public double? CostPerPoint { get; internal set; }

    /// <summary>No other ranked lot scores at least as much for at most as much money and is better in one of them.</summary>
    public bool IsOnFront { get; internal set; }

    /// <summary>Null until chances are drawn, and for lots that are not ranked.</summary>
    public Chance? Chance { get; internal set; }

    /// <summary>Null until prices are compared, and where there is no score or no cost.</summary>
    public PriceCheck? PriceCheck { get; internal set; }
}

/// <summary>How likely a lot has the highest weighted score, and one of the three highest: from 0 to 1.</summary>
public readonly record struct Chance(double Best, double FirstThree);

using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Choosing;

/// <summary>What one set of buying rules says: what a lot must meet, and what weighs how much among those that do.</summary>
public sealed record RuleTerms
{
    /// <summary>Only results on this form are ranked; others stand apart.</summary>
    public required Id<CuppingForm> FormId { get; init; }

    /// <summary>The currency of every amount in these rules: the house currency when they were written.</summary>
    public required Currency Currency { get; init; }

    public Gates Gates { get; init; } = new();

    public Weights Weights { get; init; } = new();

    public required Anchors Anchors { get; init; }

    public IReadOnlyList<ProcessChoice> Processes { get; init; } = [];

    /// <summary>Whether a process that the list above does not name is allowed.</summary>
    public bool OtherProcessesAllowed { get; init; } = true;

    public CostPerPointRule CostPerPoint { get; init; } = CostPerPointRule.PricePerPoint;

    /// <summary>The score from which <see cref="CostPerPointRule.PricePerPointAbove"/> counts. Common practice, no source.</summary>
    public Score BaseScore { get; init; } = Score.Of(80m);

    public SessionRule Sessions { get; init; } = SessionRule.Latest;

    /// <summary>Whether lots with nothing but a seller's stated score are ranked, by that score.</summary>
    public bool RanksStatedScores { get; init; }

    /// <summary>One standard deviation between what sellers state and what we find, in points. Common practice, no source.</summary>
    public Score StatedDoubt { get; init; } = Score.Of(1.5m);

    /// <summary>Whether a lot whose moisture, defects and so on were not measured fails the gate on them.</summary>
    public bool MeasurementsRequired { get; init; }

    /// <summary>A process or origin needs this many past offers before a price is predicted for it. House habit, no source.</summary>
    public int LeastOffersPerGroup { get; init; } = 3;

    /// <exception cref="RuleBrokenException">The figures contradict each other.</exception>
    public void Check()
    {
        Rule.Require(FormId != default, "Choose the form that these rules rank by.", nameof(FormId));
        Rule.Require(Currency != default, "Choose the currency of these rules.", nameof(Currency));
        Rule.Require(StatedDoubt.Points is > 0m and <= 20m, "The doubt about a stated score lies above 0 and at most 20 points.", nameof(StatedDoubt));
        Rule.Require(BaseScore.Points is >= 0m and < 100m, "The base score lies from 0 to below 100 points.", nameof(BaseScore));
        Rule.Require(LeastOffersPerGroup is >= 1 and <= 100, "Ask for 1 to 100 past offers.", nameof(LeastOffersPerGroup));
        Rule.Require(Processes.All(choice => choice.Preference is >= 0m and <= 1m), "A preference for a process lies from 0 to 1.", nameof(Processes));
        Gates.Check();
        Weights.Check();
        Anchors.Check(Weights);
    }
}

/// <summary>What a rule set says about one process method. A method without a word here counts 0.</summary>
/// <param name="Name">The word at the time, so that old decisions can be read.</param>
/// <param name="Preference">From 0 to 1.</param>
public sealed record ProcessChoice(Id<ProcessMethod> MethodId, string Name, bool IsAllowed, decimal Preference);

/// <summary>How the results of several sessions of one lot become one score.</summary>
public enum SessionRule
{
    /// <summary>The session held last; of two on one day the one with the smaller error.</summary>
    Latest = 0,

    /// <summary>The mean of the sessions, each counting alike.</summary>
    Mean = 1,

    /// <summary>Each counting by one over its error squared.</summary>
    InverseVariance = 2,
}

/// <summary>
/// What a point costs. Common practice, no source: the definitions disagree, so a rule set names the one it uses
/// (handbook quality.md section 5).
/// </summary>
public enum CostPerPointRule
{
    /// <summary>Cost of a kilogram divided by the score.</summary>
    PricePerPoint = 0,

    /// <summary>Cost of a kilogram divided by the points above the base score; none at or below it.</summary>
    PricePerPointAbove = 1,

    /// <summary>Extra cost for each extra point over the cheapest lot that passes; none where no point is gained.</summary>
    StepUp = 2,
}

using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// The rules' weighted score made ready for many lots: the weights divided by their sum, the anchors as straight lines.
/// A term counts (value − anchor for 0) ÷ (anchor for 1 − anchor for 0).
/// </summary>
internal sealed class WeightedScore
{
    private readonly RuleTerms _terms;
    private readonly Dictionary<Id<ProcessMethod>, double> _preferences;
    private readonly double _score;
    private readonly double _cost;
    private readonly double _costPerPoint;
    private readonly double _process;
    private readonly double _lowScore;
    private readonly double _highScore;
    private readonly double _lowCost;
    private readonly double _highCost;
    private readonly double _lowPoint;
    private readonly double _highPoint;
    private readonly double _base;

    public WeightedScore(RuleTerms terms)
    {
        _terms = terms;
        _preferences = terms.Processes.ToDictionary(choice => choice.MethodId, choice => (double)choice.Preference);
        var (weights, sum) = (terms.Weights, (double)terms.Weights.Sum);
        _score = (double)weights.Score / sum;
        _cost = (double)weights.Cost / sum;
        _costPerPoint = (double)weights.CostPerPoint / sum;
        _process = (double)weights.Process / sum;
        _lowScore = (double)terms.Anchors.LowScore.Points;
        _highScore = (double)terms.Anchors.HighScore.Points;
        _lowCost = (double)terms.Anchors.LowCost;
        _highCost = (double)terms.Anchors.HighCost;
        _lowPoint = (double)terms.Anchors.LowCostPerPoint;
        _highPoint = (double)terms.Anchors.HighCostPerPoint;
        _base = (double)terms.BaseScore.Points;
    }

    /// <summary>Whether the weighted score follows the score in a straight line, the reference playing no part.</summary>
    public bool IsLinear => _costPerPoint == 0;

    /// <summary>What one point of score adds, while <see cref="IsLinear"/>.</summary>
    public double PerPoint => _score / (_highScore - _lowScore);

    /// <param name="score">In points.</param>
    /// <param name="cost">Of a kilogram, in house currency.</param>
    /// <param name="process">What the process counts, from <see cref="Preference"/>.</param>
    /// <param name="reference">Score and cost of the lot that steps up are counted from; itself for that lot.</param>
    public WeightedTerms Of(double score, double cost, double process, (double Score, double Cost) reference) => new(
        _score * (score - _lowScore) / (_highScore - _lowScore),
        _cost * (_highCost - cost) / (_highCost - _lowCost),
        _costPerPoint == 0 ? 0 : _costPerPoint * PointTerm(score, cost, reference),
        _process * process);

    /// <summary>From 0 to 1; 0 for a method that the rules do not name.</summary>
    public double Preference(Candidate candidate) =>
        _process > 0 && candidate.ProcessMethodId is { } method ? _preferences.GetValueOrDefault(method) : 0;

    /// <summary>Null where the definition gives none.</summary>
    public double? CostPerPoint(double score, double cost, (double Score, double Cost) reference) => _terms.CostPerPoint switch
    {
        CostPerPointRule.PricePerPoint => score > 0 ? cost / score : null,
        CostPerPointRule.PricePerPointAbove => score > _base ? cost / (score - _base) : null,
        CostPerPointRule.StepUp => score > reference.Score ? (cost - reference.Cost) / (score - reference.Score) : null,
        _ => throw new InvalidOperationException($"There is no definition {_terms.CostPerPoint} of cost per point."),
    };

    /// <summary>The reference of a step up asks for no step and counts in full; a cost per point that has no value counts 0.</summary>
    private double PointTerm(double score, double cost, (double Score, double Cost) reference)
    {
        if (_terms.CostPerPoint == CostPerPointRule.StepUp && (score, cost) == reference)
        {
            return 1;
        }

        return CostPerPoint(score, cost, reference) is { } value
            ? Math.Clamp((_highPoint - value) / (_highPoint - _lowPoint), 0, 1)
            : 0;
    }
}

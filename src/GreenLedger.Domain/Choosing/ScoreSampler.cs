using GreenLedger.Domain.Cupping;
using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// Draws scores of many lots at once from what the panels' fits know: results of one session share errors, results of
/// one part share the panel's level, and two offers of one lot share its results. Where a session's error was estimated,
/// one chi-squared draw for the session makes its errors Student's t instead of normal.
/// </summary>
internal sealed class ScoreSampler
{
    private readonly Random _random;
    private readonly List<Session> _sessions = [];
    private readonly List<double> _levels = [];
    private readonly List<Result> _results = [];
    private readonly List<Lot> _lots = [];
    private readonly double[] _scales;
    private readonly double[] _drawn;
    private readonly double[] _normals;

    public ScoreSampler(
        IReadOnlyList<ShortlistEntry> entries, RuleTerms terms, IReadOnlyDictionary<Id<SampleResult>, SharedErrors> errors, Random random)
    {
        _random = random;
        var building = new Building(this, errors);
        foreach (var entry in entries)
        {
            building.Add(entry, terms);
        }

        _scales = new double[_sessions.Count];
        _drawn = new double[_results.Count];
        _normals = new double[building.Factors + _levels.Count + _results.Count + _lots.Count];
    }

    /// <summary>One draw: a score in points for each entry, in their order.</summary>
    public void Draw(Span<double> scores)
    {
        Normal.Samples(_random, _normals, 0, 1);
        for (var i = 0; i < _scales.Length; i++)
        {
            _scales[i] = _sessions[i].Freedom is { } freedom ? Math.Sqrt(freedom / ChiSquared(freedom)) : 1;
        }

        var next = _lots.Count;
        for (var i = 0; i < _drawn.Length; i++)
        {
            _drawn[i] = Drawn(_results[i], _normals[next++], _normals.AsSpan(_lots.Count + _results.Count));
        }

        for (var i = 0; i < scores.Length; i++)
        {
            scores[i] = ScoreOf(_lots[i], _normals[i]);
        }
    }

    /// <summary>As a gamma with half the freedom: one draw, where the sum of squares would take one for each degree.</summary>
    private double ChiSquared(double freedom) => Gamma.Sample(_random, freedom / 2, 0.5);

    private double Drawn(in Result result, double own, ReadOnlySpan<double> shared)
    {
        var error = result.OwnError * own;
        var factors = shared[(_levels.Count + _sessions[result.Session].FirstFactor)..];
        for (var k = 0; k < result.Loadings.Length; k++)
        {
            error += result.Loadings[k] * factors[k];
        }

        return result.Mean + _scales[result.Session] * error + _levels[result.Level] * shared[result.Level];
    }

    private double ScoreOf(in Lot lot, double own)
    {
        var score = lot.Stated + lot.Doubt * own;
        foreach (var (result, weight) in lot.Parts)
        {
            score += weight * _drawn[result];
        }

        return score;
    }

    private readonly record struct Session(double? Freedom, int FirstFactor);

    private readonly record struct Result(double Mean, double OwnError, double[] Loadings, int Session, int Level);

    /// <summary>A cupped lot is the weighted sum of its results, a stated score one normal draw.</summary>
    private readonly record struct Lot(double Stated, double Doubt, (int Result, double Weight)[] Parts);

    private sealed class Building(ScoreSampler sampler, IReadOnlyDictionary<Id<SampleResult>, SharedErrors> errors)
    {
        private readonly Dictionary<Id<CuppingSession>, int> _sessionAt = [];
        private readonly Dictionary<(Id<CuppingSession>, int), int> _levelAt = [];
        private readonly Dictionary<Id<SampleResult>, int> _resultAt = [];

        public int Factors { get; private set; }

        public void Add(ShortlistEntry entry, RuleTerms terms)
        {
            var score = entry.Score!.Value;
            if (score.Origin == ScoreOrigin.Stated)
            {
                sampler._lots.Add(new Lot((double)score.Score.Points, score.StandardError, []));
                return;
            }

            var results = entry.Candidate.Results;
            var weights = LotScore.WeightsOf(results, terms);
            var parts = Enumerable.Range(0, results.Length).Where(i => weights[i] > 0).Select(i => (Place(results[i]), weights[i]));
            sampler._lots.Add(new Lot(0, 0, [.. parts]));
        }

        private int Place(in CupScore result)
        {
            if (_resultAt.TryGetValue(result.ResultId, out var place))
            {
                return place;
            }

            var mean = (double)result.Score.Points;
            sampler._results.Add(errors.TryGetValue(result.ResultId, out var shared)
                ? new Result(mean, Math.Sqrt(shared.OwnVariance), [.. shared.Loadings], SessionOf(result, shared), LevelOf(result, shared))
                : new Result(mean, result.AnyCupperError, [], NewSession(result, 0), NewLevel(0)));
            return _resultAt[result.ResultId] = sampler._results.Count - 1;
        }

        private int SessionOf(in CupScore result, SharedErrors shared) =>
            _sessionAt.TryGetValue(result.SessionId, out var place)
                ? place
                : _sessionAt[result.SessionId] = NewSession(result, shared.Loadings.Count);

        private int LevelOf(in CupScore result, SharedErrors shared) =>
            _levelAt.TryGetValue((result.SessionId, result.Part), out var place)
                ? place
                : _levelAt[(result.SessionId, result.Part)] = NewLevel(Math.Sqrt(shared.LevelVariance));

        private int NewSession(in CupScore result, int factors)
        {
            sampler._sessions.Add(new Session(result.DegreesOfFreedom, Factors));
            Factors += factors;
            return sampler._sessions.Count - 1;
        }

        private int NewLevel(double error)
        {
            sampler._levels.Add(error);
            return sampler._levels.Count - 1;
        }
    }
}

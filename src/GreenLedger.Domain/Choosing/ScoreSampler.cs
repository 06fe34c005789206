using GreenLedger.Domain.Cupping;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

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

        building.Finish();
        _scales = new double[_sessions.Count];
        _drawn = new double[_results.Count];
        _normals = new double[_results.Count + _levels.Count + building.Stated];
    }

    /// <summary>One draw: a score in points for each entry, in their order.</summary>
    public void Draw(Span<double> scores)
    {
        Normal.Samples(_random, _normals, 0, 1);
        for (var i = 0; i < _scales.Length; i++)
        {
            _scales[i] = _sessions[i].Freedom is { } freedom ? Math.Sqrt(freedom / ChiSquared(freedom)) : 1;
        }

        var levels = _normals.AsSpan(_results.Count, _levels.Count);
        for (var i = 0; i < _drawn.Length; i++)
        {
            _drawn[i] = Drawn(_results[i], levels);
        }

        var own = _normals.AsSpan(_results.Count + _levels.Count);
        for (var i = 0; i < scores.Length; i++)
        {
            scores[i] = ScoreOf(_lots[i], own);
        }
    }

    /// <summary>As a gamma with half the freedom: one draw, where the sum of squares would take one for each degree.</summary>
    private double ChiSquared(double freedom) => Gamma.Sample(_random, freedom / 2, 0.5);

    private double Drawn(in Result result, ReadOnlySpan<double> levels)
    {
        var error = 0.0;
        var factors = _normals.AsSpan(_sessions[result.Session].FirstFactor, result.Factors.Length);
        for (var k = 0; k < factors.Length; k++)
        {
            error += result.Factors[k] * factors[k];
        }

        return result.Mean + _scales[result.Session] * error + _levels[result.Level] * levels[result.Level];
    }

    private double ScoreOf(in Lot lot, ReadOnlySpan<double> own)
    {
        var score = lot.Parts.Length == 0 ? lot.Stated + lot.Doubt * own[lot.Own] : 0;
        foreach (var (result, weight) in lot.Parts)
        {
            score += weight * _drawn[result];
        }

        return score;
    }

    private readonly record struct Session(double? Freedom, int FirstFactor);

    /// <param name="Factors">A row of the square root of its session's covariance: as many factors as the session has results here.</param>
    private readonly record struct Result(double Mean, double[] Factors, int Session, int Level);

    /// <summary>A cupped lot is the weighted sum of its results, a stated score one normal draw.</summary>
    /// <param name="Own">The place of a stated score's own draw.</param>
    private readonly record struct Lot(double Stated, double Doubt, int Own, (int Result, double Weight)[] Parts);

    private sealed class Building(ScoreSampler sampler, IReadOnlyDictionary<Id<SampleResult>, SharedErrors> errors)
    {
        private readonly Dictionary<Id<CuppingSession>, int> _sessionAt = [];
        private readonly Dictionary<(Id<CuppingSession>, int), int> _levelAt = [];
        private readonly Dictionary<Id<SampleResult>, int> _resultAt = [];
        private readonly List<List<(int Result, double OwnVariance, IReadOnlyList<double> Loadings)>> _held = [];

        /// <summary>How many lots are ranked by a stated score.</summary>
        public int Stated { get; private set; }

        public void Add(ShortlistEntry entry, RuleTerms terms)
        {
            var score = entry.Score!.Value;
            if (score.Origin == ScoreOrigin.Stated)
            {
                sampler._lots.Add(new Lot((double)score.Score.Points, score.StandardError, Stated++, []));
                return;
            }

            var results = entry.Candidate.Results;
            var weights = LotScore.WeightsOf(results, terms);
            var parts = Enumerable.Range(0, results.Length).Where(i => weights[i] > 0).Select(i => (Place(results[i]), weights[i]));
            sampler._lots.Add(new Lot(0, 0, 0, [.. parts]));
        }

        private int Place(in CupScore result)
        {
            if (_resultAt.TryGetValue(result.ResultId, out var place))
            {
                return place;
            }

            var isShared = errors.TryGetValue(result.ResultId, out var shared);
            var (session, level) = isShared ? (SessionOf(result), LevelOf(result, shared!)) : (NewSession(result), NewLevel(0));
            place = sampler._results.Count;
            _held[session].Add(isShared
                ? (place, shared!.OwnVariance, shared.Loadings)
                : (place, result.AnyCupperError * result.AnyCupperError, []));
            sampler._results.Add(new Result((double)result.Score.Points, [], session, level));
            return _resultAt[result.ResultId] = place;
        }

        /// <summary>
        /// A session shares more errors than it has results among the lots that are drawn: the square root of the results'
        /// own covariance draws the same with fewer.
        /// </summary>
        public void Finish()
        {
            var next = 0;
            for (var session = 0; session < _held.Count; session++)
            {
                var held = _held[session];
                sampler._sessions[session] = sampler._sessions[session] with { FirstFactor = next };
                next += held.Count;
                var root = Root(held.ConvertAll(one => (one.OwnVariance, one.Loadings)));
                for (var i = 0; i < held.Count; i++)
                {
                    sampler._results[held[i].Result] = sampler._results[held[i].Result] with { Factors = root.Row(i).ToArray() };
                }
            }
        }

        /// <summary>By eigenvalues, since results that leave no error of their own make the covariance singular.</summary>
        private static Matrix<double> Root(List<(double OwnVariance, IReadOnlyList<double> Loadings)> results)
        {
            var covariance = Matrix<double>.Build.Dense(results.Count, results.Count, (i, j) =>
                results[i].Loadings.Zip(results[j].Loadings, (one, other) => one * other).Sum() + (i == j ? results[i].OwnVariance : 0));
            var parts = covariance.Evd(Symmetricity.Symmetric);
            var roots = parts.EigenValues.Select(value => Math.Sqrt(Math.Max(0, value.Real)));
            return parts.EigenVectors * Matrix<double>.Build.DenseOfDiagonalArray([.. roots]);
        }

        private int SessionOf(in CupScore result) =>
            _sessionAt.TryGetValue(result.SessionId, out var place)
                ? place
                : _sessionAt[result.SessionId] = NewSession(result);

        private int LevelOf(in CupScore result, SharedErrors shared) =>
            _levelAt.TryGetValue((result.SessionId, result.Part), out var place)
                ? place
                : _levelAt[(result.SessionId, result.Part)] = NewLevel(Math.Sqrt(shared.LevelVariance));

        private int NewSession(in CupScore result)
        {
            sampler._sessions.Add(new Session(result.DegreesOfFreedom, 0));
            _held.Add([]);
            return sampler._sessions.Count - 1;
        }

        private int NewLevel(double error)
        {
            sampler._levels.Add(error);
            return sampler._levels.Count - 1;
        }
    }
}

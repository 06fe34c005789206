using MathNet.Numerics.LinearAlgebra;

namespace GreenLedger.Domain.Cupping;

/// <summary>One score in a panel's table: which sample, which cupper (both counted from 0), how many points.</summary>
public readonly record struct PanelScore(int Sample, int Cupper, double Points);

/// <summary>
/// The additive fit score = sample + cupper + error by ordinary least squares, for tables in which not everyone cupped
/// everything (handbook quality.md section 4.6). Cupper effects sum to zero within each connected part of the table;
/// a sample's adjusted mean is what these cuppers together would have given it. Where cuppers count less than 1, squares and
/// sums count by their weights: in a complete table a sample's adjusted mean is then the weighted mean of its sheets.
/// </summary>
/// <remarks>
/// Samples are eliminated first, which leaves one small system in the cuppers; its generalised inverse gives effects
/// and covariances that equal those of a QR fit. Samples of two unconnected parts cannot be compared: each part has
/// its own level, and covariances between parts are zero.
/// </remarks>
public sealed class AdditiveFit
{
    /// <summary>Far beyond any table: the work grows with the cube of the cuppers, the memory with samples times cuppers.</summary>
    private const int MostPlaces = 5_000_000, MostCuppers = 300;

    private readonly IReadOnlyList<PanelScore> _scores;
    private readonly IReadOnlyList<double> _weights;
    private readonly int[] _sheetsOfSample;
    private readonly double[] _weightOfSample;
    private readonly int[] _partOfSample;
    private readonly int[] _partOfCupper;

    private AdditiveFit(IReadOnlyList<PanelScore> scores, int samples, int cuppers, IReadOnlyList<double> weights)
    {
        _scores = scores;
        _weights = weights;
        _sheetsOfSample = new int[samples];
        _weightOfSample = new double[samples];
        foreach (var score in scores)
        {
            _sheetsOfSample[score.Sample]++;
            _weightOfSample[score.Sample] += weights[score.Cupper];
        }

        (_partOfSample, _partOfCupper, Parts) = Connect(scores, samples, cuppers);
        Adjusted = new double[samples];
        CupperEffects = new double[cuppers];
        Loadings = new double[samples][];
    }

    /// <summary>The adjusted mean of each sample, in points.</summary>
    public double[] Adjusted { get; }

    /// <summary>How far above (+) or below (−) the panel each cupper scores, in points; zero-sum in each part, by weight.</summary>
    public double[] CupperEffects { get; }

    /// <summary>
    /// Per sample the loadings of its adjusted mean on the errors that it shares with others, for an error variance
    /// of 1: covariance of i and j = (i = j ? 1 ÷ weight of i : 0) + Σ loadings i × loadings j.
    /// </summary>
    public double[][] Loadings { get; }

    /// <summary>Pieces into which the table falls; 1 when every sample can be compared with every other.</summary>
    public int Parts { get; }

    public double ResidualSumOfSquares { get; private set; }

    public int DegreesOfFreedom { get; private set; }

    /// <summary>Residual standard deviation of a sheet that counts 1, in points; NaN without degrees of freedom.</summary>
    public double ResidualDeviation => DegreesOfFreedom > 0 ? Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom) : double.NaN;

    /// <summary>Sum of squares of the cuppers' effects around the plain mean of their part.</summary>
    public double EffectSquares { get; private set; }

    /// <summary>What error alone would add to <see cref="EffectSquares"/>, for an error variance of 1.</summary>
    public double EffectTrace { get; private set; }

    public int PartOf(int sample) => _partOfSample[sample];

    public int PartOfCupper(int cupper) => _partOfCupper[cupper];

    /// <summary>
    /// How many cuppers of equal weight would fix the level of a part as well: (Σ w)² ÷ Σ w², the number of its cuppers where
    /// all count alike.
    /// </summary>
    public double CuppersInPart(int part)
    {
        var weights = _weights.Where((_, cupper) => _partOfCupper[cupper] == part).ToList();
        return Math.Pow(weights.Sum(), 2) / weights.Sum(weight => weight * weight);
    }

    public int SheetsOf(int sample) => _sheetsOfSample[sample];

    /// <summary>The sum of the weights of a sample's sheets: their number where all cuppers count 1.</summary>
    public double WeightOf(int sample) => _weightOfSample[sample];

    public double Fitted(PanelScore score) => Adjusted[score.Sample] + CupperEffects[score.Cupper];

    /// <summary>Variance of a sample's adjusted mean for an error variance of 1.</summary>
    public double UnitVariance(int sample) => 1.0 / _weightOfSample[sample] + Loadings[sample].Sum(loading => loading * loading);

    /// <summary>Covariance of two samples' adjusted means for an error variance of 1.</summary>
    public double UnitCovariance(int one, int other) => one == other
        ? UnitVariance(one)
        : Loadings[one].Zip(Loadings[other], (a, b) => a * b).Sum();

    /// <summary>Variance of the difference between two samples of one part, for an error variance of 1.</summary>
    public double UnitDifferenceVariance(int one, int other) => UnitVariance(one) + UnitVariance(other) - 2 * UnitCovariance(one, other);

    /// <summary>
    /// Standard error of the difference between two samples; refused across unconnected parts.
    /// </summary>
    /// <exception cref="RuleBrokenException">No chain of cuppers connects the two samples.</exception>
    public double DifferenceError(int one, int other)
    {
        Rule.Require(_partOfSample[one] == _partOfSample[other], "These two samples cannot be compared: no cupper, nor any chain of cuppers, tasted both sides. Cup one sample of each side together.");
        return ResidualDeviation * Math.Sqrt(UnitDifferenceVariance(one, other));
    }

    /// <summary>
    /// F for samples after cuppers: drop in residual sum of squares when samples are added to the cuppers alone.
    /// Meaningful for a connected table; NaN without residual degrees of freedom or with one sample.
    /// </summary>
    public double SampleF()
    {
        var cuppersAlone = _scores.GroupBy(score => score.Cupper).Sum(group =>
        {
            var mean = group.Average(score => score.Points);
            return _weights[group.Key] * group.Sum(score => (score.Points - mean) * (score.Points - mean));
        });
        var samples = Adjusted.Length - Parts;
        return samples == 0 || DegreesOfFreedom == 0
            ? double.NaN
            : (cuppersAlone - ResidualSumOfSquares) / samples / (ResidualSumOfSquares / DegreesOfFreedom);
    }

    /// <param name="scores">At least one for every sample and every cupper; replicates are allowed.</param>
    /// <param name="weights">What each cupper's sheets count, above 0; all count 1 where none are given.</param>
    /// <exception cref="RuleBrokenException">More samples and cuppers than a computation answers in time.</exception>
    /// <exception cref="ArgumentException">
    /// A sample or cupper has no score: the caller counts only those that have. Or a weight is missing or not above 0.
    /// </exception>
    public static AdditiveFit Of(IReadOnlyList<PanelScore> scores, int samples, int cuppers, IReadOnlyList<double>? weights = null)
    {
        ArgumentNullException.ThrowIfNull(scores);
        Rule.Require(
            cuppers <= MostCuppers && (long)samples * cuppers <= MostPlaces,
            "One fit takes at most 300 cuppers, and samples times cuppers at most 5 million: leave out what does not belong together.", "Sheets");
        if (scores.Select(score => score.Sample).Distinct().Count() != samples
            || scores.Select(score => score.Cupper).Distinct().Count() != cuppers)
        {
            throw new ArgumentException("Every sample and every cupper needs a score.", nameof(scores));
        }

        weights ??= [.. Enumerable.Repeat(1.0, cuppers)];
        if (weights.Count != cuppers || weights.Any(weight => !(weight > 0) || double.IsInfinity(weight)))
        {
            throw new ArgumentException("Every cupper needs a weight above 0.", nameof(weights));
        }

        var fit = new AdditiveFit(scores, samples, cuppers, weights);
        fit.Solve();
        return fit;
    }

    private void Solve()
    {
        int samples = Adjusted.Length, cuppers = CupperEffects.Length;
        // Scores lie near 80; centred first, so that sums of squares keep all their digits.
        var centre = _scores.Average(score => score.Points);
        var cells = Matrix<double>.Build.Dense(samples, cuppers);
        var sums = new double[samples];
        var right = Vector<double>.Build.Dense(cuppers);
        foreach (var (sample, cupper, points) in _scores)
        {
            cells[sample, cupper] += _weights[cupper] / _weightOfSample[sample];
            sums[sample] += _weights[cupper] * (points - centre) / _weightOfSample[sample];
            right[cupper] += _weights[cupper] * (points - centre);
        }

        var reduced = Reduce(cells, sums, right);
        var plain = Invert(reduced);
        var root = Level(plain);
        var solved = plain.Transpose() * right;
        var effects = root * solved;
        var weights = cells * root;
        for (var sample = 0; sample < samples; sample++)
        {
            Adjusted[sample] = centre + sums[sample] - cells.Row(sample).DotProduct(effects);
            Loadings[sample] = weights.Row(sample).ToArray();
        }

        effects.ToArray().CopyTo(CupperEffects, 0);
        EffectSquares = (plain * solved).Sum(effect => effect * effect);
        EffectTrace = plain.Enumerate().Sum(value => value * value);
        DegreesOfFreedom = _scores.Count - samples - cuppers + Parts;
        ResidualSumOfSquares = _scores.Sum(score => _weights[score.Cupper] * Math.Pow(score.Points - Fitted(score), 2));
    }

    /// <summary>Takes the samples out of the normal equations: what is left holds for the cuppers alone.</summary>
    private Matrix<double> Reduce(Matrix<double> cells, double[] sums, Vector<double> right)
    {
        var cuppers = right.Count;
        var reduced = Matrix<double>.Build.Dense(cuppers, cuppers);
        foreach (var score in _scores)
        {
            reduced[score.Cupper, score.Cupper] += _weights[score.Cupper];
        }

        for (var sample = 0; sample < sums.Length; sample++)
        {
            for (var one = 0; one < cuppers; one++)
            {
                var weight = cells[sample, one] * _weightOfSample[sample];
                if (weight == 0)
                {
                    continue;
                }

                right[one] -= weight * sums[sample];
                for (var other = 0; other < cuppers; other++)
                {
                    reduced[one, other] -= weight * cells[sample, other];
                }
            }
        }

        return reduced;
    }

    /// <summary>
    /// Generalised inverse with plainly zero-sum effects in every part, as a root R with R Rᵀ = inverse.
    /// The number of zero eigenvalues is known (one a part), so no tolerance decides the rank.
    /// </summary>
    private Matrix<double> Invert(Matrix<double> reduced)
    {
        var cuppers = reduced.RowCount;
        var rank = cuppers - Parts;
        if (rank == 0)
        {
            return Matrix<double>.Build.Dense(cuppers, 1);
        }

        var evd = reduced.Evd(Symmetricity.Symmetric);
        var order = Enumerable.Range(0, cuppers).OrderByDescending(index => evd.EigenValues[index].Real).Take(rank);
        return Matrix<double>.Build.DenseOfColumnVectors(order
            .Select(index => evd.EigenVectors.Column(index) / Math.Sqrt(evd.EigenValues[index].Real)));
    }

    /// <summary>The root for effects that sum to zero by weight in every part.</summary>
    private Matrix<double> Level(Matrix<double> plain)
    {
        var root = plain.Clone();
        foreach (var part in Enumerable.Range(0, _partOfCupper.Length).GroupBy(PartOfCupper))
        {
            var mean = part.Select(cupper => _weights[cupper] * plain.Row(cupper)).Aggregate((one, other) => one + other) / part.Sum(cupper => _weights[cupper]);
            foreach (var cupper in part)
            {
                root.SetRow(cupper, plain.Row(cupper) - mean);
            }
        }

        return root;
    }

    /// <summary>Numbers the connected parts of the table by union of samples and cuppers that share a score.</summary>
    private static (int[] OfSample, int[] OfCupper, int Parts) Connect(IReadOnlyList<PanelScore> scores, int samples, int cuppers)
    {
        var parent = Enumerable.Range(0, samples + cuppers).ToArray();
        foreach (var score in scores)
        {
            parent[Root(score.Sample)] = Root(samples + score.Cupper);
        }

        var numbers = new Dictionary<int, int>();
        var part = Enumerable.Range(0, samples + cuppers).Select(node => Number(Root(node))).ToArray();
        return (part[..samples], part[samples..], numbers.Count);

        int Root(int node)
        {
            while (parent[node] != node)
            {
                node = parent[node] = parent[parent[node]];
            }

            return node;
        }

        int Number(int root)
        {
            numbers.TryAdd(root, numbers.Count);
            return numbers[root];
        }
    }
}

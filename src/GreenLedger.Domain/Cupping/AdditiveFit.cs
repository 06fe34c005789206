using MathNet.Numerics.LinearAlgebra;

namespace GreenLedger.Domain.Cupping;

/// <summary>One score in a panel's table: which sample, which cupper (both counted from 0), how many points.</summary>
public readonly record struct PanelScore(int Sample, int Cupper, double Points);

/// <summary>
/// The additive fit score = sample + cupper + error by ordinary least squares, for tables in which not everyone cupped
/// everything (handbook quality.md section 4.6). Cupper effects sum to zero within each connected part of the table;
/// a sample's adjusted mean is what these cuppers together would have given it.
/// </summary>
/// <remarks>
/// Samples are eliminated first, which leaves one small system in the cuppers; its generalised inverse gives effects
/// and covariances that equal those of a QR fit. Samples of two unconnected parts cannot be compared: each part has
/// its own level, and covariances between parts are zero.
/// </remarks>
public sealed class AdditiveFit
{
    private readonly IReadOnlyList<PanelScore> _scores;
    private readonly int[] _sheetsOfSample;
    private readonly int[] _partOfSample;
    private readonly int[] _partOfCupper;

    private AdditiveFit(IReadOnlyList<PanelScore> scores, int samples, int cuppers)
    {
        _scores = scores;
        _sheetsOfSample = new int[samples];
        foreach (var score in scores)
        {
            _sheetsOfSample[score.Sample]++;
        }

        (_partOfSample, _partOfCupper, Parts) = Connect(scores, samples, cuppers);
        Adjusted = new double[samples];
        CupperEffects = new double[cuppers];
        Loadings = new double[samples][];
    }

    /// <summary>The adjusted mean of each sample, in points.</summary>
    public double[] Adjusted { get; }

    /// <summary>How far above (+) or below (−) the panel each cupper scores, in points; zero-sum in each part.</summary>
    public double[] CupperEffects { get; }

    /// <summary>
    /// Per sample the loadings of its adjusted mean on the errors that it shares with others, for an error variance
    /// of 1: covariance of i and j = (i = j ? 1 ÷ sheets of i : 0) + Σ loadings i × loadings j.
    /// </summary>
    public double[][] Loadings { get; }

    /// <summary>Pieces into which the table falls; 1 when every sample can be compared with every other.</summary>
    public int Parts { get; }

    public double ResidualSumOfSquares { get; private set; }

    public int DegreesOfFreedom { get; private set; }

    /// <summary>Residual standard deviation in points; NaN without degrees of freedom.</summary>
    public double ResidualDeviation => DegreesOfFreedom > 0 ? Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom) : double.NaN;

    /// <summary>Sum over cuppers of the variance of their effects, for an error variance of 1.</summary>
    public double EffectTrace { get; private set; }

    public int PartOf(int sample) => _partOfSample[sample];

    public int PartOfCupper(int cupper) => _partOfCupper[cupper];

    public int CuppersInPart(int part) => _partOfCupper.Count(other => other == part);

    public int SheetsOf(int sample) => _sheetsOfSample[sample];

    public double Fitted(PanelScore score) => Adjusted[score.Sample] + CupperEffects[score.Cupper];

    /// <summary>Variance of a sample's adjusted mean for an error variance of 1.</summary>
    public double UnitVariance(int sample) => 1.0 / _sheetsOfSample[sample] + Loadings[sample].Sum(loading => loading * loading);

    /// <summary>Covariance of two samples' adjusted means for an error variance of 1.</summary>
    public double UnitCovariance(int one, int other) => one == other
        ? UnitVariance(one)
        : Loadings[one].Zip(Loadings[other], (a, b) => a * b).Sum();

    /// <summary>
    /// Standard error of the difference between two samples; refused across unconnected parts.
    /// </summary>
    /// <exception cref="RuleBrokenException">No chain of cuppers connects the two samples.</exception>
    public double DifferenceError(int one, int other)
    {
        Rule.Require(_partOfSample[one] == _partOfSample[other], "These two samples cannot be compared: no cupper, nor any chain of cuppers, tasted both sides. Cup one sample of each side together.");
        return ResidualDeviation * Math.Sqrt(UnitVariance(one) + UnitVariance(other) - 2 * UnitCovariance(one, other));
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
            return group.Sum(score => (score.Points - mean) * (score.Points - mean));
        });
        var samples = Adjusted.Length - Parts;
        return samples == 0 || DegreesOfFreedom == 0
            ? double.NaN
            : (cuppersAlone - ResidualSumOfSquares) / samples / (ResidualSumOfSquares / DegreesOfFreedom);
    }

    /// <param name="scores">At least one for every sample and every cupper; replicates are allowed.</param>
    /// <exception cref="ArgumentException">A sample or cupper has no score: the caller counts only those that have.</exception>
    public static AdditiveFit Of(IReadOnlyList<PanelScore> scores, int samples, int cuppers)
    {
        ArgumentNullException.ThrowIfNull(scores);
        if (scores.Select(score => score.Sample).Distinct().Count() != samples
            || scores.Select(score => score.Cupper).Distinct().Count() != cuppers)
        {
            throw new ArgumentException("Every sample and every cupper needs a score.", nameof(scores));
        }

        var fit = new AdditiveFit(scores, samples, cuppers);
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
            cells[sample, cupper] += 1.0 / _sheetsOfSample[sample];
            sums[sample] += (points - centre) / _sheetsOfSample[sample];
            right[cupper] += points - centre;
        }

        var reduced = Reduce(cells, sums, right);
        var (effects, root) = Invert(reduced, right);
        var weights = cells * root;
        for (var sample = 0; sample < samples; sample++)
        {
            Adjusted[sample] = centre + sums[sample] - cells.Row(sample).DotProduct(effects);
            Loadings[sample] = weights.Row(sample).ToArray();
        }

        effects.ToArray().CopyTo(CupperEffects, 0);
        EffectTrace = root.Enumerate().Sum(value => value * value);
        DegreesOfFreedom = _scores.Count - samples - cuppers + Parts;
        ResidualSumOfSquares = _scores.Sum(score => Math.Pow(score.Points - Fitted(score), 2));
    }

    /// <summary>Takes the samples out of the normal equations: what is left holds for the cuppers alone.</summary>
    private Matrix<double> Reduce(Matrix<double> cells, double[] sums, Vector<double> right)
    {
        var cuppers = right.Count;
        var reduced = Matrix<double>.Build.Dense(cuppers, cuppers);
        foreach (var score in _scores)
        {
            reduced[score.Cupper, score.Cupper] += 1;
        }

        for (var sample = 0; sample < sums.Length; sample++)
        {
            for (var one = 0; one < cuppers; one++)
            {
                var count = cells[sample, one] * _sheetsOfSample[sample];
                if (count == 0)
                {
                    continue;
                }

                right[one] -= count * sums[sample];
                for (var other = 0; other < cuppers; other++)
                {
                    reduced[one, other] -= count * cells[sample, other];
                }
            }
        }

        return reduced;
    }

    /// <summary>
    /// Generalised inverse with zero-sum effects in every part, as effects and as a root R with R Rᵀ = inverse.
    /// The number of zero eigenvalues is known (one a part), so no tolerance decides the rank.
    /// </summary>
    private (Vector<double> Effects, Matrix<double> Root) Invert(Matrix<double> reduced, Vector<double> right)
    {
        var cuppers = right.Count;
        var rank = cuppers - Parts;
        if (rank == 0)
        {
            return (Vector<double>.Build.Dense(cuppers), Matrix<double>.Build.Dense(cuppers, 1));
        }

        var evd = reduced.Evd(Symmetricity.Symmetric);
        var order = Enumerable.Range(0, cuppers).OrderByDescending(index => evd.EigenValues[index].Real).Take(rank);
        var root = Matrix<double>.Build.DenseOfColumnVectors(order
            .Select(index => evd.EigenVectors.Column(index) / Math.Sqrt(evd.EigenValues[index].Real)));
        return (root * (root.Transpose() * right), root);
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

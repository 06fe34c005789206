using MathNet.Numerics.LinearAlgebra;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// The table behind a price model: a column of ones, the score less its mean, and one column for each process and each
/// origin but the first (by name) of both. It is never written out: each row has four figures that are not zero.
/// </summary>
internal sealed class PriceDesign
{
    private readonly double[] _scales;

    private PriceDesign(List<PastOffer> offers)
    {
        Offers = offers;
        Centre = offers.Count == 0 ? 0 : offers.Average(offer => offer.Score);
        Columns = 2;
        Processes = ColumnsOf(offers.Select(offer => offer.Process ?? ""));
        Origins = ColumnsOf(offers.Select(offer => offer.Origin ?? ""));
        _scales = new double[Columns];
    }

    public List<PastOffer> Offers { get; }

    /// <summary>The mean score.</summary>
    public double Centre { get; }

    public int Columns { get; private set; }

    /// <summary>Column of each process; 0 for the one that the others are measured against.</summary>
    public Dictionary<string, int> Processes { get; }

    public Dictionary<string, int> Origins { get; }

    public bool HasOneScore => Offers.All(offer => Math.Abs(offer.Score - Offers[0].Score) < 1e-9);

    /// <summary>Leaves out processes and origins with too few offers, again and again until none is left.</summary>
    public static PriceDesign Of(IEnumerable<PastOffer> offers, int leastPerGroup)
    {
        var kept = offers.Where(offer => offer.CostPerKilogram > 0).ToList();
        while (true)
        {
            var processes = kept.CountBy(offer => offer.Process ?? "").ToDictionary();
            var origins = kept.CountBy(offer => offer.Origin ?? "").ToDictionary();
            var left = kept.RemoveAll(offer => processes[offer.Process ?? ""] < leastPerGroup || origins[offer.Origin ?? ""] < leastPerGroup);
            if (left == 0)
            {
                return new PriceDesign(kept);
            }
        }
    }

    /// <summary>The normal equations with every column scaled to length 1, so that their eigenvalues can be judged.</summary>
    public (Matrix<double> Gram, Vector<double> Right) Normal()
    {
        var gram = new double[Columns, Columns];
        var right = new double[Columns];
        Span<(int Column, double Value)> row = stackalloc (int, double)[4];
        foreach (var offer in Offers)
        {
            Fill(row, offer);
            var log = Math.Log(offer.CostPerKilogram);
            foreach (var (column, value) in row)
            {
                right[column] += value * log;
                foreach (var (other, factor) in row)
                {
                    gram[column, other] += value * factor;
                }
            }
        }

        for (var i = 0; i < Columns; i++)
        {
            _scales[i] = Math.Sqrt(gram[i, i]);
        }

        return (
            Matrix<double>.Build.Dense(Columns, Columns, (i, j) => gram[i, j] / _scales[i] / _scales[j]),
            Vector<double>.Build.Dense(Columns, i => right[i] / _scales[i]));
    }

    public double[] Unscaled(Vector<double> solution) => [.. solution.Select((value, i) => value / _scales[i])];

    /// <summary>1 − residual ÷ total sum of squares of ln(cost); 0 when all costs are equal.</summary>
    public double RSquared(double[] coefficients)
    {
        var logs = Offers.Select(offer => Math.Log(offer.CostPerKilogram)).ToList();
        var mean = logs.Average();
        var total = logs.Sum(log => (log - mean) * (log - mean));
        var residual = 0.0;
        Span<(int Column, double Value)> row = stackalloc (int, double)[4];
        for (var i = 0; i < logs.Count; i++)
        {
            Fill(row, Offers[i]);
            var fitted = 0.0;
            foreach (var (column, value) in row)
            {
                fitted += coefficients[column] * value;
            }

            residual += (logs[i] - fitted) * (logs[i] - fitted);
        }

        return total < 1e-12 ? 0 : 1 - residual / total;
    }

    /// <summary>A process or origin that others are measured against has no column: its figure is zero.</summary>
    private void Fill(Span<(int Column, double Value)> row, PastOffer offer)
    {
        var process = Processes[offer.Process ?? ""];
        var origin = Origins[offer.Origin ?? ""];
        row[0] = (0, 1);
        row[1] = (1, offer.Score - Centre);
        row[2] = (process, process == 0 ? 0 : 1);
        row[3] = (origin, origin == 0 ? 0 : 1);
    }

    private Dictionary<string, int> ColumnsOf(IEnumerable<string> names)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var name in names.Distinct().Order(StringComparer.Ordinal))
        {
            places[name] = places.Count == 0 ? 0 : Columns++;
        }

        return places;
    }
}

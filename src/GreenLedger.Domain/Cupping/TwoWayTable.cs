using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Cupping;

/// <summary>Sums of squares of a table of samples by cuppers with the same number of replicates in every cell.</summary>
/// <param name="InteractionF">NaN with one replicate, where interaction and error are one term.</param>
public sealed record TwoWayTable(
    double SampleSquares,
    double CupperSquares,
    double InteractionSquares,
    double ErrorSquares,
    double SampleF,
    double SampleP,
    double InteractionF,
    double InteractionP,
    double ErrorVariance,
    double InteractionVariance,
    double CupperVariance)
{
    /// <summary>
    /// Samples fixed, cuppers random: samples are tested against the interaction, not against the error (handbook
    /// quality.md section 4.3). With one replicate the interaction is the error. A negative variance estimate is 0.
    /// </summary>
    /// <param name="table">Samples, then cuppers, then replicates; at least two samples and two cuppers.</param>
    public static TwoWayTable Of(IReadOnlyList<IReadOnlyList<IReadOnlyList<double>>> table)
    {
        ArgumentNullException.ThrowIfNull(table);
        int t = table.Count, b = table[0].Count, r = table[0][0].Count;
        var means = table.Select(row => (IReadOnlyList<double>)[.. row.Select(cell => cell.Average())]).ToList();
        var (rows, columns, interaction, _) = MeanSquares(means);
        var error = table.SelectMany(row => row).Sum(cell => Squares(cell));
        double sampleDf = t - 1, interactionDf = (t - 1) * (b - 1), errorDf = t * b * (r - 1);
        double ms = r * rows, mc = r * columns, msc = r * interaction, me = errorDf > 0 ? error / errorDf : msc;
        var sampleF = ms / msc;
        var interactionF = errorDf > 0 ? msc / me : double.NaN;
        return new TwoWayTable(
            ms * sampleDf,
            mc * (b - 1),
            msc * interactionDf,
            error,
            sampleF,
            Upper(sampleDf, interactionDf, sampleF),
            interactionF,
            errorDf > 0 ? Upper(interactionDf, errorDf, interactionF) : double.NaN,
            me,
            errorDf > 0 ? Math.Max(0, (msc - me) / r) : 0,
            Math.Max(0, (mc - msc) / (t * r)));
    }

    /// <summary>Mean squares of a complete table: between rows, between columns, residual, and within rows.</summary>
    internal static (double Rows, double Columns, double Residual, double Within) MeanSquares(IReadOnlyList<IReadOnlyList<double>> table)
    {
        ArgumentNullException.ThrowIfNull(table);
        int n = table.Count, k = n == 0 ? 0 : table[0].Count;
        if (n < 2 || k < 2 || table.Any(row => row.Count != k))
        {
            throw new ArgumentException("A complete table of at least two samples and two cuppers is needed.", nameof(table));
        }

        var grand = table.Average(row => row.Average());
        var rowMeans = table.Select(row => row.Average()).ToList();
        var columnMeans = Enumerable.Range(0, k).Select(column => table.Average(row => row[column])).ToList();
        var rows = k * rowMeans.Sum(mean => (mean - grand) * (mean - grand));
        var columns = n * columnMeans.Sum(mean => (mean - grand) * (mean - grand));
        var residual = table.Select((row, i) => row.Select((value, j) => Math.Pow(value - rowMeans[i] - columnMeans[j] + grand, 2)).Sum()).Sum();
        return (rows / (n - 1), columns / (k - 1), residual / ((n - 1) * (k - 1)), (columns + residual) / (n * (k - 1)));
    }

    private static double Squares(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean));
    }

    private static double Upper(double df1, double df2, double f) =>
        double.IsFinite(f) ? 1 - FisherSnedecor.CDF(df1, df2, f) : double.NaN;
}

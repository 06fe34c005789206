namespace GreenLedger.Domain.Cupping;

/// <summary>
/// The six intraclass correlations of Shrout and Fleiss (1979, table 2) for a complete table of samples by cuppers.
/// (2,1) asks whether another cupper would give this number; (3,1) whether cuppers rank alike, their level taken out;
/// the k forms speak of the panel's mean. They depend on the spread of the samples, may be negative, and are never
/// comparable between tables. NaN where the table has no spread at all.
/// </summary>
public sealed record IntraclassCorrelation(
    double OneRandom, double TwoRandom, double Fixed, double OneRandomMean, double TwoRandomMean, double FixedMean)
{
    /// <param name="table">Rows are samples, columns cuppers; at least two of each.</param>
    public static IntraclassCorrelation Of(IReadOnlyList<IReadOnlyList<double>> table)
    {
        var (rows, columns, residual, within) = TwoWayTable.MeanSquares(table);
        double n = table.Count, k = table[0].Count;
        return new IntraclassCorrelation(
            (rows - within) / (rows + (k - 1) * within),
            (rows - residual) / (rows + (k - 1) * residual + k * (columns - residual) / n),
            (rows - residual) / (rows + (k - 1) * residual),
            (rows - within) / rows,
            (rows - residual) / (rows + (columns - residual) / n),
            (rows - residual) / rows);
    }
}

namespace GreenLedger.Domain.Cupping;

/// <summary>One form of the intraclass correlation: its name by Shrout and Fleiss, its value and what it asks.</summary>
public sealed record CorrelationForm(string Name, double Value, string Asks);

/// <summary>
/// The six intraclass correlations of Shrout and Fleiss (1979, table 2) for a complete table of samples by cuppers.
/// (2,1) asks whether another cupper would give this number; (3,1) whether cuppers rank alike, their level taken out;
/// the k forms speak of the panel's mean. They depend on the spread of the samples, may be negative, and are never
/// comparable between tables. NaN where the table has no spread at all.
/// </summary>
public sealed record IntraclassCorrelation(
    double OneRandom, double TwoRandom, double Fixed, double OneRandomMean, double TwoRandomMean, double FixedMean)
{
    /// <summary>All six by the names of Shrout and Fleiss, each with what it asks.</summary>
    public IReadOnlyList<CorrelationForm> Forms =>
    [
        new("ICC(1,1)", OneRandom, "Would one score by any cupper be alike, if each sample had cuppers of its own?"),
        new("ICC(2,1)", TwoRandom, "Would another cupper give this number? Cuppers' levels count."),
        new("ICC(3,1)", Fixed, "Do these cuppers rank alike? Their levels are taken out."),
        new("ICC(1,k)", OneRandomMean, "As ICC(1,1), for the mean of as many cuppers as here."),
        new("ICC(2,k)", TwoRandomMean, "Would another panel of this size give this mean? Levels count."),
        new("ICC(3,k)", FixedMean, "Would these cuppers rank by their mean alike again? Levels are taken out."),
    ];

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

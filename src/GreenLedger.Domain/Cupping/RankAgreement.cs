namespace GreenLedger.Domain.Cupping;

/// <summary>
/// Whether cuppers rank the samples alike: Kendall's W with the correction for ties, from 0 (no agreement) to 1 (the
/// same order). Friedman's tie-corrected chi-squared is the same number (handbook quality.md section 4.2).
/// NaN where every cupper ties everything.
/// </summary>
public sealed record RankAgreement(IReadOnlyList<double> RankSums, double W, double WithoutTies, double ChiSquared, int DegreesOfFreedom, double P)
{
    /// <param name="table">Rows are samples, columns cuppers; at least two samples and one cupper.</param>
    public static RankAgreement Of(IReadOnlyList<IReadOnlyList<double>> table)
    {
        ArgumentNullException.ThrowIfNull(table);
        double n = table.Count, m = table[0].Count;
        var ranks = Enumerable.Range(0, table[0].Count)
            .Select(cupper => MidRanks([.. table.Select(row => row[cupper])])).ToList();
        var sums = Enumerable.Range(0, table.Count).Select(sample => ranks.Sum(column => column[sample])).ToList();
        var mean = sums.Average();
        var spread = sums.Sum(sum => (sum - mean) * (sum - mean));
        var ties = ranks.Sum(column => column.GroupBy(rank => rank).Sum(group => Math.Pow(group.Count(), 3) - group.Count()));
        var full = m * m * (n * n * n - n);
        var w = 12 * spread / (full - m * ties);
        var chi = m * (n - 1) * w;
        var p = double.IsFinite(chi) ? 1 - MathNet.Numerics.Distributions.ChiSquared.CDF(n - 1, chi) : double.NaN;
        return new RankAgreement(sums, w, 12 * spread / full, chi, table.Count - 1, p);
    }

    /// <summary>Rank from 1 for the lowest; equals share the middle of their ranks.</summary>
    internal static double[] MidRanks(IReadOnlyList<double> values) =>
        [.. values.Select(value => values.Count(other => other < value) + (values.Count(other => other == value) + 1) / 2.0)];
}

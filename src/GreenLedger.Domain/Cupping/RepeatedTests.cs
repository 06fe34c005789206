namespace GreenLedger.Domain.Cupping;

/// <summary>
/// Repeatability (one cupper or laboratory on the same coffee) and reproducibility (between them) from groups of
/// repeated results, by ISO 5725-2: s_R² = s_r² + s_L², where a negative s_L² is 0.
/// </summary>
public sealed record RepeatedTests(double Mean, double Repeatability, double Reproducibility)
{
    /// <param name="groups">Results of each cupper or laboratory; at least two groups, one of them with two results.</param>
    public static RepeatedTests Of(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        double p = groups.Count, all = groups.Sum(group => group.Count);
        if (p < 2 || all <= p)
        {
            throw new ArgumentException("At least two groups are needed, and one of them with two results.", nameof(groups));
        }

        var mean = groups.Sum(group => group.Sum()) / all;
        var within = groups.Sum(group => group.Sum(value => Math.Pow(value - group.Average(), 2))) / (all - p);
        var between = groups.Sum(group => group.Count * Math.Pow(group.Average() - mean, 2)) / (p - 1);
        var size = (all - groups.Sum(group => (double)group.Count * group.Count) / all) / (p - 1);
        var laboratories = Math.Max(0, (between - within) / size);
        return new RepeatedTests(mean, Math.Sqrt(within), Math.Sqrt(within + laboratories));
    }
}

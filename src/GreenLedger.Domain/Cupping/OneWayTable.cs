using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// Analysis of variance of groups of results: whether the groups differ by more than their own spread. Sums of squares
/// are taken around the means in a second pass, so that large constant digits do no harm. NaN without spread within.
/// </summary>
public sealed record OneWayTable(
    double F, double P, int BetweenFreedom, int WithinFreedom, double BetweenSquares, double WithinSquares)
{
    public double WithinVariance => WithinSquares / WithinFreedom;

    /// <param name="groups">At least two groups, and more results than groups.</param>
    public static OneWayTable Of(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        int all = groups.Sum(group => group.Count), between = groups.Count - 1, within = all - groups.Count;
        if (between < 1 || within < 1)
        {
            throw new ArgumentException("At least two groups are needed, and more results than groups.", nameof(groups));
        }

        var grand = groups.Sum(group => group.Sum()) / all;
        var means = groups.Select(group => group.Average()).ToList();
        return Of(
            between,
            within,
            groups.Zip(means, (group, mean) => group.Count * (mean - grand) * (mean - grand)).Sum(),
            groups.Zip(means, (group, mean) => group.Sum(value => (value - mean) * (value - mean))).Sum());
    }

    /// <summary>Several tables as one, each around its own level: squares and degrees of freedom add up.</summary>
    /// <param name="tables">At least one.</param>
    public static OneWayTable Pooled(IReadOnlyList<OneWayTable> tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return Of(
            tables.Sum(table => table.BetweenFreedom),
            tables.Sum(table => table.WithinFreedom),
            tables.Sum(table => table.BetweenSquares),
            tables.Sum(table => table.WithinSquares));
    }

    private static OneWayTable Of(int between, int within, double betweenSquares, double withinSquares)
    {
        var f = betweenSquares / between / (withinSquares / within);
        return new OneWayTable(f, double.IsFinite(f) ? 1 - FisherSnedecor.CDF(between, within, f) : double.NaN, between, within, betweenSquares, withinSquares);
    }
}

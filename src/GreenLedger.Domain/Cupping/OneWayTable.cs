using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// Analysis of variance of groups of results: whether the groups differ by more than their own spread. Sums of squares
/// are taken around the means in a second pass, so that large constant digits do no harm. NaN without spread within.
/// </summary>
public sealed record OneWayTable(double F, double P, int BetweenFreedom, int WithinFreedom, double WithinVariance)
{
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
        var betweenSquares = groups.Zip(means, (group, mean) => group.Count * (mean - grand) * (mean - grand)).Sum();
        var withinSquares = groups.Zip(means, (group, mean) => group.Sum(value => (value - mean) * (value - mean))).Sum();
        var variance = withinSquares / within;
        var f = betweenSquares / between / variance;
        return new OneWayTable(f, double.IsFinite(f) ? 1 - FisherSnedecor.CDF(between, within, f) : double.NaN, between, within, variance);
    }
}

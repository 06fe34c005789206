namespace GreenLedger.Domain.Cupping;

/// <summary>Two samples of one fit: how far apart, with an interval and a chance that hold for all pairs together.</summary>
/// <param name="Points">Fitted score of <paramref name="One"/> less that of <paramref name="Other"/>.</param>
/// <param name="P">Chance of a difference as large somewhere among the samples if all were alike.</param>
public sealed record PairwiseDifference(int One, int Other, double Points, double StandardError, double Low, double High, double P)
{
    /// <summary>Whether the panel can tell the two apart.</summary>
    public bool Differ => P < 1 - PairwiseDifferences.Confidence;
}

/// <summary>
/// Which samples a panel can tell apart: all pairwise differences of a fit with Tukey's correction for looking at every pair
/// (handbook quality.md section 4.7). Where cuppers miss samples each difference has its own standard error and the same
/// studentized range is used with it (Tukey and Kramer), which is exact for complete tables and otherwise careful.
/// </summary>
/// <param name="Fitted">Fitted scores of the samples, in points.</param>
/// <param name="Pairs">Every pair that a cupper or a chain of cuppers connects.</param>
/// <param name="Groups">
/// Samples, the highest first, of which no two can be told apart; each group as large as can be, so that a sample may stand
/// in several. Empty where there would be more groups than anybody can read.
/// </param>
/// <param name="DegreesOfFreedom">Of the error; infinite where the house's setting stands for it.</param>
/// <param name="Quantile">Of the studentized range; NaN for one sample.</param>
public sealed record PairwiseDifferences(
    IReadOnlyList<double> Fitted,
    IReadOnlyList<PairwiseDifference> Pairs,
    IReadOnlyList<IReadOnlyList<int>> Groups,
    ErrorSource ErrorFrom,
    double DegreesOfFreedom,
    double Quantile,
    int Parts)
{
    public const double Confidence = 0.95;

    /// <summary>More groups, which only a table with very uneven gaps has, are told by nobody: none are given then.</summary>
    private const int MostGroups = 200;

    public static PairwiseDifferences Of(AdditiveFit fit, PanelErrors errors)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(errors);
        var samples = fit.Adjusted.Length;
        var freedom = errors.From == ErrorSource.OwnResidual ? fit.DegreesOfFreedom : double.PositiveInfinity;
        var quantile = samples > 1 ? StudentizedRange.Quantile(1 - Confidence, samples, freedom) : double.NaN;
        var pairs = (from one in Enumerable.Range(0, samples)
                     from other in Enumerable.Range(one + 1, samples - one - 1)
                     where fit.PartOf(one) == fit.PartOf(other)
                     select Pair(fit, errors, one, other, quantile, freedom)).ToList();
        return new PairwiseDifferences(fit.Adjusted, pairs, GroupsOf(fit, pairs), errors.From, freedom, quantile, fit.Parts);
    }

    /// <summary>The pair, in whichever order it stands; null for a sample itself and where nothing connects the two.</summary>
    public PairwiseDifference? Between(int one, int other) =>
        Pairs.FirstOrDefault(pair => (pair.One == one && pair.Other == other) || (pair.One == other && pair.Other == one));

    /// <summary>How far two samples must lie apart to be told apart: the least and the most of all pairs; null without pairs.</summary>
    public (double Least, double Most)? Needed() => Pairs.Count == 0
        ? null
        : (Pairs.Min(pair => pair.High - pair.Points), Pairs.Max(pair => pair.High - pair.Points));

    private static PairwiseDifference Pair(AdditiveFit fit, PanelErrors errors, int one, int other, double quantile, double freedom)
    {
        var points = fit.Adjusted[one] - fit.Adjusted[other];
        var error = Math.Sqrt(errors.Variance * fit.UnitDifferenceVariance(one, other));
        var reach = quantile * error / Math.Sqrt(2);
        var p = StudentizedRange.UpperTail(Math.Abs(points) * Math.Sqrt(2) / error, fit.Adjusted.Length, freedom);
        return new PairwiseDifference(one, other, points, error, points - reach, points + reach, p);
    }

    /// <summary>
    /// From all samples of a part as one group: each pair that differs splits every group that holds both into one without
    /// the first and one without the second; groups within others are dropped (Piepho 2004).
    /// </summary>
    private static List<IReadOnlyList<int>> GroupsOf(AdditiveFit fit, List<PairwiseDifference> pairs)
    {
        var samples = Enumerable.Range(0, fit.Adjusted.Length);
        var groups = samples.GroupBy(fit.PartOf).Select(part => part.ToHashSet()).ToList();
        foreach (var pair in pairs.Where(pair => pair.Differ))
        {
            var split = groups.Where(group => group.Contains(pair.One) && group.Contains(pair.Other)).ToList();
            groups.RemoveAll(split.Contains);
            foreach (var half in split.SelectMany(group => new HashSet<int>[] { [.. group.Where(sample => sample != pair.One)], [.. group.Where(sample => sample != pair.Other)] }))
            {
                if (!groups.Exists(half.IsSubsetOf))
                {
                    groups.RemoveAll(group => group.IsSubsetOf(half));
                    groups.Add(half);
                }
            }

            if (groups.Count > MostGroups)
            {
                return [];
            }
        }

        return [.. groups.Select(group => (IReadOnlyList<int>)[.. group.OrderByDescending(sample => fit.Adjusted[sample])])
            .OrderBy(group => fit.PartOf(group[0])).ThenByDescending(group => fit.Adjusted[group[0]]).ThenByDescending(group => group.Average(sample => fit.Adjusted[sample]))];
    }
}

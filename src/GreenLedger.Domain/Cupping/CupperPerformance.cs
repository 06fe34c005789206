namespace GreenLedger.Domain.Cupping;

/// <summary>
/// How one cupper works beside the others, over the samples that every cupper tasted. The words are those of ISO 11132:2021;
/// the formulas are those of the handbook, quality.md section 4.4. It says something about a person only over several sessions.
/// </summary>
/// <param name="Cupper">The cupper's place among the scores.</param>
/// <param name="Bias">Own mean less the mean of the others on the same samples, in points.</param>
/// <param name="Scale">How own sample means go with the others' means.</param>
/// <param name="Repeatability">Standard deviation of the cupper on one sample, in points; null where nothing was tasted twice.</param>
/// <param name="Discrimination">Whether the cupper tells the samples apart; null where nothing was tasted twice.</param>
public sealed record CupperPerformance(int Cupper, double Bias, ScaleUse Scale, double? Repeatability, OneWayTable? Discrimination)
{
    public double Slope => Scale.Slope;

    public double Correlation => Scale.Correlation;

    /// <summary>Nobody where fewer than two cuppers tasted the same two samples. NaN where the others' means are all alike.</summary>
    public static IReadOnlyList<CupperPerformance> Of(IReadOnlyList<PanelScore> scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var cuppers = scores.Select(score => score.Cupper).Distinct().Order().ToList();
        var samples = scores.GroupBy(score => score.Sample)
            .Where(group => group.Select(score => score.Cupper).Distinct().Count() == cuppers.Count)
            .Select(group => group.ToLookup(score => score.Cupper, score => score.Points))
            .ToList();
        return cuppers.Count < 2 || samples.Count < 2 ? [] : [.. cuppers.Select(cupper => Of(cupper, cuppers, samples))];
    }

    private static CupperPerformance Of(int cupper, List<int> cuppers, List<ILookup<int, double>> samples)
    {
        var own = samples.Select(sample => sample[cupper].Average()).ToList();
        var others = samples.Select(sample => cuppers.Where(other => other != cupper).SelectMany(other => sample[other]).Average()).ToList();
        var groups = samples.Select(sample => (IReadOnlyList<double>)[.. sample[cupper]]).ToList();
        var twice = groups.Exists(group => group.Count > 1) ? OneWayTable.Of(groups) : null;
        return new CupperPerformance(
            cupper,
            own.Average() - others.Average(),
            ScaleUse.Of(own, others),
            twice is null ? null : Math.Sqrt(twice.WithinVariance),
            twice);
    }
}

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// How far the cuppers of a session agree, over the samples that every one of them cupped. Null figures mean that
/// fewer than two cuppers or two such samples are there; then nothing can be said.
/// </summary>
public sealed record Agreement(int Samples, int Cuppers, IntraclassCorrelation? Correlation, RankAgreement? Ranks, TwoWayTable? TwoWay)
{
    /// <summary>What the figures rest on, or why there are none.</summary>
    public string Sentence => (Cuppers, Samples) switch
    {
        ( < 2, _) => "One cupper: there is nobody to agree with.",
        (_, 0) => "No sample was cupped by everyone: agreement cannot be computed.",
        (_, 1) => "One sample was cupped by everyone, two are needed: agreement cannot be computed.",
        _ => $"Over the {Samples} samples that all {Cuppers} cuppers scored. Correlations depend on how far the samples differ: never compare them between sessions.",
    };

    /// <summary>
    /// Replicates are averaged for correlation and ranks, and kept for the two-way table where every cell has as many.
    /// </summary>
    public static Agreement Of(IReadOnlyList<PanelScore> scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var cuppers = scores.Select(score => score.Cupper).Distinct().Order().ToList();
        var complete = scores.GroupBy(score => score.Sample)
            .Where(group => group.Select(score => score.Cupper).Distinct().Count() == cuppers.Count)
            .OrderBy(group => group.Key)
            .Select(group => (IReadOnlyList<IReadOnlyList<double>>)[.. cuppers.Select(cupper =>
                (IReadOnlyList<double>)[.. group.Where(score => score.Cupper == cupper).Select(score => score.Points)])])
            .ToList();
        if (complete.Count < 2 || cuppers.Count < 2)
        {
            return new Agreement(complete.Count, cuppers.Count, null, null, null);
        }

        var means = complete.Select(row => (IReadOnlyList<double>)[.. row.Select(cell => cell.Average())]).ToList();
        var even = complete.SelectMany(row => row).Select(cell => cell.Count).Distinct().Count() == 1;
        return new Agreement(
            complete.Count, cuppers.Count, IntraclassCorrelation.Of(means), RankAgreement.Of(means), even ? TwoWayTable.Of(complete) : null);
    }
}

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// How the lots that were cupped for a choice differ in truth: the mean of their scores and the spread that is left when
/// the errors are taken out, in points.
/// </summary>
public readonly record struct LotSpread(double Mean, double Deviation, int Lots)
{
    /// <summary>With fewer lots their spread says too little. Our own choice, no source.</summary>
    public const int Fewest = 8;

    /// <summary>
    /// By moments: the variance of the scores less the mean square of their errors, at least 0. Lots that fail a gate
    /// count too, since leaving the low ones out would lift the mean; two offers of one lot count once. Null with too few.
    /// </summary>
    public static LotSpread? Of(IEnumerable<ShortlistEntry> entries)
    {
        var scores = entries.Where(entry => entry.Score is { Origin: ScoreOrigin.Cupped }).DistinctBy(entry => entry.Candidate.LotId)
            .Select(entry => (Points: (double)entry.Score!.Value.Score.Points, Error: entry.Score.Value.AnyCupperError)).ToList();
        if (scores.Count < Fewest)
        {
            return null;
        }

        var mean = scores.Average(score => score.Points);
        var variance = scores.Sum(score => Math.Pow(score.Points - mean, 2)) / (scores.Count - 1);
        return new LotSpread(mean, Math.Sqrt(Math.Max(0, variance - scores.Average(score => score.Error * score.Error))), scores.Count);
    }
}

/// <summary>
/// A score as it should be read when the best of many is picked: luck lifts whoever comes first, so it is drawn towards
/// the mean of all lots, the more the less sure it is. It ranks nothing; costs and weights stay with the score itself.
/// </summary>
public readonly record struct ShrunkenScore(double Points, double StandardError)
{
    /// <summary>Normal spread of lots, normal error: handbook quality.md section 4.12, winner's curse.</summary>
    public static ShrunkenScore Of(double points, double error, LotSpread lots)
    {
        var between = lots.Deviation * lots.Deviation;
        var weight = between + error * error > 0 ? between / (between + error * error) : 1;
        return new ShrunkenScore(lots.Mean + weight * (points - lots.Mean), Math.Sqrt(weight) * error);
    }
}

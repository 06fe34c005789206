using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>A session's sheets as a panel's fit counts them; those of a hidden duplicate are sheets of its sample.</summary>
/// <param name="Samples">Those with a sheet, in the order of the table; scores point here.</param>
/// <param name="Cuppers">The cuppers' keys, in the order of their first sheets; scores point here.</param>
public sealed record SessionScores(IReadOnlyList<Id<Sample>> Samples, IReadOnlyList<string> Cuppers, IReadOnlyList<PanelScore> Scores)
{
    /// <summary>
    /// The mean of each cupper for each sample, as the fit takes them: a cupper who meets a sample under two codes says the
    /// same opinion of it twice, so that samples are tested against how far cuppers disagree about them (handbook
    /// quality.md section 4.3) and not against how well each repeats.
    /// </summary>
    public IReadOnlyList<PanelScore> Cells => CellsOf(Scores);

    public static IReadOnlyList<PanelScore> CellsOf(IEnumerable<PanelScore> scores) => [.. scores
        .GroupBy(score => (score.Sample, score.Cupper))
        .Select(cell => new PanelScore(cell.Key.Sample, cell.Key.Cupper, cell.Average(score => score.Points)))];

    public static SessionScores Of(CuppingSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var tasted = session.Sheets.Select(sheet => sheet.SampleId).ToHashSet();
        var samples = session.Samples.Where(sample => !sample.IsDuplicate && tasted.Contains(sample.SampleId)).Select(sample => sample.SampleId).ToList();
        var cuppers = session.Sheets.Select(sheet => sheet.CupperKey).Distinct().ToList();
        var place = samples.Select((sample, index) => (sample, index)).ToDictionary(pair => pair.sample, pair => pair.index);
        var seat = cuppers.Select((key, index) => (key, index)).ToDictionary(pair => pair.key, pair => pair.index);
        return new SessionScores(samples, cuppers, [.. session.Sheets
            .Select(sheet => new PanelScore(place[sheet.SampleId], seat[sheet.CupperKey], (double)sheet.Unrounded.Points))]);
    }
}

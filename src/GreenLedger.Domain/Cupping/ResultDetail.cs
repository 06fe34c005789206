using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>One cupper's scores of a coffee that stood in the session under more than one code, in the order of the codes.</summary>
public sealed record RepeatedScores(Id<Sample> SampleId, string CupperKey, string CupperName, IReadOnlyList<decimal> Points)
{
    /// <summary>Highest less lowest, in points.</summary>
    public decimal Range => Points.Max() - Points.Min();
}

/// <summary>What a closed session's sheets show beside the fitted scores.</summary>
/// <param name="Work">How each cupper worked beside the others, by key; empty where too few cupped the same samples.</param>
/// <param name="Differences">Null with more samples than <see cref="MostCompared"/>.</param>
/// <param name="Repeated">Hidden duplicates, cupper by cupper.</param>
/// <param name="Repeatability">Of the panel in this session, from its hidden duplicates; null without.</param>
public sealed record ResultDetail(
    SessionScores Scores,
    Agreement Agreement,
    IReadOnlyDictionary<string, CupperPerformance> Work,
    PairwiseDifferences? Differences,
    IReadOnlyList<SampleProfile> Profiles,
    IReadOnlyList<RepeatedScores> Repeated,
    Repeatability? Repeatability,
    Blindness Blindness)
{
    /// <summary>More samples are not compared pair by pair: nobody reads so many pairs.</summary>
    public const int MostCompared = 60;

    /// <param name="session">Closed, with its sheets and result.</param>
    /// <param name="descriptive">The descriptive form beside its sheets, if it had one.</param>
    public static ResultDetail Of(CuppingSession session, DescriptiveRules? descriptive = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        var scores = SessionScores.Of(session);
        return new ResultDetail(
            scores,
            Agreement.Of(scores.Scores),
            CupperPerformance.Of(scores.Scores).ToDictionary(one => scores.Cuppers[one.Cupper]),
            scores.Samples.Count <= MostCompared ? session.Result!.Differences(scores) : null,
            SampleProfile.Of(session, descriptive),
            RepeatedOf(session),
            session.IsPast ? null : Repeatability.Of(scores.Scores),
            BlindnessOf(session));
    }

    private static List<RepeatedScores> RepeatedOf(CuppingSession session) =>
        [.. session.Sheets.GroupBy(sheet => (sheet.SampleId, sheet.CupperKey))
            .Where(group => group.Count() > 1)
            .Select(group => new RepeatedScores(
                group.Key.SampleId, group.Key.CupperKey, group.First().CupperName, [.. group.OrderBy(sheet => sheet.Repeat).Select(sheet => sheet.Unrounded.Points)]))
            .OrderBy(repeated => repeated.CupperName, StringComparer.OrdinalIgnoreCase)];

    private static Blindness BlindnessOf(CuppingSession session) => session.Blinding switch
    {
        Blinding.Open => Blindness.Open,
        _ when session.NotBlind().Count > 0 => Blindness.SomeNotBlind,
        Blinding.Undersides => Blindness.ShuffledAlone,
        _ => Blindness.Blind,
    };
}

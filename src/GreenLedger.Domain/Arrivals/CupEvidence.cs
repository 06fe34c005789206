using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Arrivals;

/// <summary>
/// Finds in closed sessions the best evidence on an arrival: both samples in one session, else the newest session of each. Past
/// results stand in where one of them was not cupped here: they tell a difference, which counts in the record of a supplier, and
/// not how sure it is, so that they decide nothing.
/// </summary>
/// <param name="Difference">Null where there is nothing to compare, and <paramref name="Missing"/> says what.</param>
/// <param name="Approved">The session that the approved sample's sheets are taken from.</param>
/// <param name="Arrival">The arrival's; the same one where both were cupped together.</param>
public sealed record CupEvidence(CupDifference? Difference, CuppingSession? Approved, CuppingSession? Arrival, string? Missing)
{
    private const string PastTellsNoError = "Past results tell a score, and not how far another cupper's would lie.";

    /// <param name="sessions">Closed ones with their sheets and results, past ones among them.</param>
    /// <param name="betweenSessions">The house's setting, in points; null where it has none.</param>
    public static CupEvidence Of(IReadOnlyList<CuppingSession> sessions, Id<Sample> approved, Id<Sample> arrival, double? betweenSessions)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        var read = sessions.Where(session => session.ClosedAt is not null && !session.IsPast)
            .OrderByDescending(session => session.HeldOn).ThenByDescending(session => session.ClosedAt)
            .Select(session => (Session: session, Scores: SessionScores.Of(session))).ToList();
        var before = read.Where(one => one.Scores.Samples.Contains(approved)).ToList();
        var after = read.Where(one => one.Scores.Samples.Contains(arrival)).ToList();
        if (before.Count == 0 || after.Count == 0)
        {
            return OfPast(sessions, approved, arrival) ?? new CupEvidence(null, null, null, (before.Count, after.Count) switch
            {
                (0, 0) => "Neither sample was cupped in a session that is closed.",
                (0, _) => "The approved sample was not cupped in a session that is closed.",
                _ => "The arrival's sample was not cupped in a session that is closed.",
            });
        }

        if (before.Find(one => one.Scores.Samples.Contains(arrival)) is { Session: { } together } both)
        {
            return new CupEvidence(CupComparison.OneSession(both.Scores.Scores, IndexOf(both.Scores, approved), IndexOf(both.Scores, arrival)), together, together, null);
        }

        var (first, second) = (before[0], after[0]);
        if (first.Session.FormId != second.Session.FormId)
        {
            return new CupEvidence(null, first.Session, second.Session, "The two were scored on different forms, whose points do not compare: cup both in one session.");
        }

        var reference = first.Session.Samples.Where(sample => sample.IsReference).Select(sample => sample.SampleId)
            .Where(sample => second.Session.Samples.Any(other => other.IsReference && other.SampleId == sample))
            .Where(sample => first.Scores.Samples.Contains(sample) && second.Scores.Samples.Contains(sample))
            .Cast<Id<Sample>?>().FirstOrDefault();
        return new CupEvidence(
            CupComparison.TwoSessions(Panel(first.Scores, approved, reference), Panel(second.Scores, arrival, reference), betweenSessions),
            first.Session,
            second.Session,
            null);
    }

    /// <summary>Null where one of the two has no result, or the two stand on different forms.</summary>
    private static CupEvidence? OfPast(IReadOnlyList<CuppingSession> sessions, Id<Sample> approved, Id<Sample> arrival)
    {
        var closed = sessions.Where(session => session.Result is not null).OrderByDescending(session => session.HeldOn).ThenByDescending(session => session.ClosedAt).ToList();
        var together = closed.Find(session => ResultOf(session, approved) is not null && ResultOf(session, arrival) is not null);
        var (first, second) = (together ?? closed.Find(session => ResultOf(session, approved) is not null), together ?? closed.Find(session => ResultOf(session, arrival) is not null));
        if (first is null || second is null || first.FormId != second.FormId)
        {
            return null;
        }

        var (before, after) = (ResultOf(first, approved)!, ResultOf(second, arrival)!);
        return new CupEvidence(
            new CupDifference(
                Meeting.PastResults, (double)before.Fitted.Points, (double)after.Fitted.Points, (double)(after.Fitted.Points - before.Fitted.Points), null, null, null, before.Cuppers, after.Cuppers, null, PastTellsNoError),
            first, second, null);
    }

    private static SampleResult? ResultOf(CuppingSession session, Id<Sample> sample) => session.Result!.Samples.FirstOrDefault(result => result.SampleId == sample);

    private static SessionPanel Panel(SessionScores scores, Id<Sample> coffee, Id<Sample>? reference) =>
        new(scores.Scores, IndexOf(scores, coffee), reference is { } known ? IndexOf(scores, known) : null);

    private static int IndexOf(SessionScores scores, Id<Sample> sample) => scores.Samples.ToList().IndexOf(sample);
}

using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Arrivals;

/// <summary>Finds in closed sessions the best evidence on an arrival: both samples in one session, else the newest session of each.</summary>
/// <param name="Difference">Null where there is nothing to compare, and <paramref name="Missing"/> says what.</param>
/// <param name="Approved">The session that the approved sample's sheets are taken from.</param>
/// <param name="Arrival">The arrival's; the same one where both were cupped together.</param>
public sealed record CupEvidence(CupDifference? Difference, CuppingSession? Approved, CuppingSession? Arrival, string? Missing)
{
    /// <param name="sessions">Closed ones with their sheets; past results have no cuppers of their own and are left out.</param>
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
            return new CupEvidence(null, null, null, (before.Count, after.Count) switch
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

    private static SessionPanel Panel(SessionScores scores, Id<Sample> coffee, Id<Sample>? reference) =>
        new(scores.Scores, IndexOf(scores, coffee), reference is { } known ? IndexOf(scores, known) : null);

    private static int IndexOf(SessionScores scores, Id<Sample> sample) => scores.Samples.ToList().IndexOf(sample);
}

using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>Named parts of the sessions' table.</summary>
public static class CuppingSessions
{
    /// <summary>The session with its form, table, sheets and result.</summary>
    public static IQueryable<CuppingSession> Whole(this IQueryable<CuppingSession> sessions) => sessions
        .Include(session => session.Form)
        .Include(session => session.Samples.OrderBy(sample => sample.Position))
        .Include(session => session.Sheets)
        .Include(session => session.KeyOpenings)
        .Include(session => session.Result!.Samples.OrderBy(result => result.Position))
        .Include(session => session.Result!.Cuppers)
        .AsSplitQuery();

    public static IQueryable<CuppingSession> Open(this IQueryable<CuppingSession> sessions) =>
        sessions.Where(session => session.ClosedAt == null);

    public static IQueryable<CuppingSession> Closed(this IQueryable<CuppingSession> sessions) =>
        sessions.Where(session => session.ClosedAt != null);
}

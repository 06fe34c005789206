using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace GreenLedger.Data.Cupping;

/// <summary>Named parts of the sessions' table.</summary>
public static class CuppingSessions
{
    /// <summary>The session with its form, table, sheets and result.</summary>
    public static IQueryable<CuppingSession> Whole(this IQueryable<CuppingSession> sessions) => sessions
        .Include(session => session.Form)
        .Include(session => session.Samples.OrderBy(sample => sample.Position))
        .Include(session => session.Sheets).ThenInclude(sheet => sheet.EarlierSheets.OrderBy(earlier => earlier.Number))
        .Include(session => session.Panel.OrderBy(member => member.Seat))
        .Include(session => session.Flights.OrderBy(flight => flight.Number))
        .Include(session => session.KeyOpenings)
        .Include(session => session.Result!.Samples.OrderBy(result => result.Position))
        .Include(session => session.Result!.Cuppers)
        .Include(session => session.Result!.Discussed.OrderBy(discussed => discussed.At))
        .AsSplitQuery();

    /// <summary>
    /// Takes the session's turn: whoever else hands in to it or closes it waits until this transaction ends, and then
    /// reads what it did. So no sheet is lost between the fit and the closing of a session, and none is refused because
    /// another cupper handed in at the same moment. Taken before the session is loaded.
    /// </summary>
    public static async Task<IDbContextTransaction> TakeTurnAsync(this LedgerContext db, Id<CuppingSession> id, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        var turn = await db.Database.BeginTransactionAsync(cancellationToken);
        await db.CuppingSessions.Where(session => session.Id == id)
            .ExecuteUpdateAsync(row => row.SetProperty(session => session.Version, session => session.Version + 1), cancellationToken);
        return turn;
    }

    public static IQueryable<CuppingSession> Open(this IQueryable<CuppingSession> sessions) =>
        sessions.Where(session => session.ClosedAt == null);

    public static IQueryable<CuppingSession> Closed(this IQueryable<CuppingSession> sessions) =>
        sessions.Where(session => session.ClosedAt != null);

    /// <summary>The protocol in its newest revision.</summary>
    public static Task<TastingProtocol> NewestProtocolAsync(this LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.TastingProtocols.OrderByDescending(protocol => protocol.Revision).FirstAsync(cancellationToken);
    }
}

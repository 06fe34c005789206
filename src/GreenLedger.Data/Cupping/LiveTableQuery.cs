using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>How far one cupper has come: codes handed in, begun and not begun, and where the last change was. No scores.</summary>
public sealed record LiveCupper(
    Id<Person> PersonId, string Name, bool IsLate, IReadOnlyList<string> In, IReadOnlyList<string> Begun, IReadOnlyList<string> NotBegun, string? At, DateTimeOffset? ChangedAt);

/// <summary>An open table as whoever leads it sees it.</summary>
public sealed record LiveTable(
    Id<CuppingSession> Id,
    string Title,
    bool IsClosed,
    bool HasPanel,
    int Codes,
    IReadOnlyList<LiveCupper> Cuppers,
    IReadOnlyList<int> Flights,
    IReadOnlyList<PouredFlight> Poured,
    TastingProtocol Protocol)
{
    public int Missing => Cuppers.Sum(cupper => cupper.Begun.Count + cupper.NotBegun.Count);
}

/// <summary>Reads who is where at a table, and what is missing.</summary>
public sealed class LiveTableQuery(LedgerContext db)
{
    /// <summary>Null when there is no such session.</summary>
    public async Task<LiveTable?> FindAsync(Id<CuppingSession> id, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.AsNoTracking()
            .Include(session => session.Samples)
            .Include(session => session.Sheets)
            .Include(session => session.Panel.OrderBy(member => member.Seat))
            .Include(session => session.Flights.OrderBy(flight => flight.Number))
            .AsSplitQuery()
            .SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        if (session is null)
        {
            return null;
        }

        var drafts = (await db.SheetDrafts.Where(draft => draft.SessionId == id)
            .Select(draft => new Written(draft.CupperId, draft.Code, draft.ChangedAt, draft.HandedInAt)).ToListAsync(cancellationToken)).ToLookup(draft => draft.CupperId);
        var cuppers = session.Panel.Count > 0
            ? session.Panel.Where(member => member.Cups).Select(member => member.PersonId).ToList()
            : [.. session.Sheets.Select(sheet => sheet.CupperId).OfType<Id<Person>>().Concat(drafts.Select(own => own.Key)).Distinct()];
        var names = await db.People.Where(person => cuppers.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        var protocol = session.ProtocolId ?? TastingProtocol.UsualId;
        return new LiveTable(
            session.Id, session.Title, session.IsClosed, session.Panel.Count > 0, session.Samples.Count,
            [.. cuppers.Select(cupper => Cupper(session, cupper, names[cupper], [.. drafts[cupper]]))],
            [.. session.Samples.Select(sample => sample.Flight).Distinct().Order()],
            session.Flights,
            await db.TastingProtocols.AsNoTracking().SingleAsync(one => one.Id == protocol, cancellationToken));
    }

    private static LiveCupper Cupper(CuppingSession session, Id<Person> cupper, string name, List<Written> drafts)
    {
        var served = session.ServedTo(cupper);
        var codes = session.IsByPlace ? session.Places : [.. served.Select(sample => sample.Code)];
        var isIn = session.IsByPlace
            ? [.. drafts.Where(draft => draft.HandedInAt is not null).Select(draft => draft.Code)]
            : served.Where(sample => session.SheetOf(sample, cupper) is { IsReopened: false }).Select(sample => sample.Code).ToList();
        var begun = codes.Where(code => !isIn.Contains(code) && drafts.Exists(draft => draft.Code == code)).ToList();
        var last = drafts.MaxBy(draft => draft.ChangedAt);
        return new LiveCupper(
            cupper, name, session.MemberOf(cupper)?.JoinedAt is not null, isIn, begun,
            [.. codes.Except(isIn).Except(begun)], last?.Code, last?.ChangedAt);
    }

    private sealed record Written(Id<Person> CupperId, string Code, DateTimeOffset ChangedAt, DateTimeOffset? HandedInAt);
}

using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>One code as a cupper is served it, with what this cupper has written and handed in.</summary>
public sealed record ServedCode(string Code, int Flight, int Version, IReadOnlyDictionary<string, string> Values, bool IsHandedIn, decimal? Total);

/// <summary>An open table for one cupper's phone: codes in this cupper's order, and nothing about what is in the cups.</summary>
public sealed record CupperTable(
    Id<CuppingSession> Id,
    string Title,
    CuppingForm Form,
    int Cups,
    bool IsClosed,
    bool MayCup,
    bool MayPour,
    bool IsByPlace,
    Blinding Blinding,
    TablePlan? Plan,
    TastingProtocol Protocol,
    DescriptiveForm? Descriptive,
    IReadOnlyList<ServedCode> Codes,
    IReadOnlyList<PouredFlight> Flights,
    IReadOnlyList<Descriptor> Words);

/// <summary>Reads the table that one cupper sits at.</summary>
public sealed class CupperTableQuery(LedgerContext db)
{
    /// <summary>Null when there is no such session.</summary>
    public async Task<CupperTable?> FindAsync(Id<CuppingSession> id, Id<Person> cupper, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.AsNoTracking()
            .Include(session => session.Form)
            .Include(session => session.Samples)
            .Include(session => session.Panel)
            .Include(session => session.Flights.OrderBy(flight => flight.Number))
            .Include(session => session.Sheets.Where(sheet => sheet.CupperId == cupper))
            .AsSplitQuery()
            .SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        if (session is null)
        {
            return null;
        }

        var drafts = await db.SheetDrafts.AsNoTracking().Where(draft => draft.SessionId == id && draft.CupperId == cupper)
            .ToDictionaryAsync(draft => draft.Code, cancellationToken);
        var protocol = session.ProtocolId ?? TastingProtocol.UsualId;
        return new CupperTable(
            session.Id, session.Title, session.Form, session.CupsPerSample, session.IsClosed,
            session.Panel.Count == 0 || session.MemberOf(cupper)?.Cups == true,
            session.MayOpenKey(cupper), session.IsByPlace, session.Blinding, session.Plan,
            await db.TastingProtocols.AsNoTracking().SingleAsync(one => one.Id == protocol, cancellationToken),
            session.DescriptiveFormId is { } descriptive ? await db.DescriptiveForms.AsNoTracking().SingleAsync(form => form.Id == descriptive, cancellationToken) : null,
            session.IsByPlace
                ? [.. session.Places.Select(place => AtPlace(place, drafts.GetValueOrDefault(place)))]
                : [.. session.ServedTo(cupper).Select(sample => Served(session, sample, cupper, drafts.GetValueOrDefault(sample.Code)))],
            session.Flights,
            await db.Descriptors.AsNoTracking().Where(word => !word.IsRetired).OrderBy(word => word.Family).ThenBy(word => word.Word).ToListAsync(cancellationToken));
    }

    private static ServedCode AtPlace(string place, SheetDraft? draft) =>
        new(place, 1, draft?.ChangeCount ?? 0, draft?.Values ?? DraftOutcome.Nothing, draft?.HandedInAt is not null, null);

    private static ServedCode Served(CuppingSession session, SessionSample sample, Id<Person> cupper, SheetDraft? draft)
    {
        var sheet = session.SheetOf(sample, cupper);
        var isIn = sheet is { IsReopened: false };
        var values = draft?.Values ?? (sheet is null ? DraftOutcome.Nothing : SheetFields.Of(sheet, session.Form.Rules, session.CupsPerSample));
        return new ServedCode(sample.Code, sample.Flight, draft?.ChangeCount ?? 0, values, isIn, sheet?.Total.Points);
    }
}

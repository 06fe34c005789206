using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>Reads what the papers of an open table say.</summary>
public sealed class TableOnPaperQuery(LedgerContext db)
{
    /// <summary>Null when there is no such session, or it is closed.</summary>
    public async Task<TableOnPaper?> FindAsync(Id<CuppingSession> id, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.AsNoTracking().Open()
            .Include(session => session.Form)
            .Include(session => session.Samples)
            .Include(session => session.Sheets)
            .Include(session => session.Panel.OrderBy(member => member.Seat))
            .AsSplitQuery()
            .SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        if (session is null)
        {
            return null;
        }

        List<Id<Person>> there = [.. session.Panel.Select(member => member.PersonId)];
        var names = await db.People.Where(person => there.Contains(person.Id) || person.Id == session.LaidOutBy)
            .ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        var protocol = session.ProtocolId ?? TastingProtocol.UsualId;
        return TableOnPaper.Of(
            await db.Houses.Select(house => house.Name).SingleAsync(cancellationToken),
            session,
            await db.TastingProtocols.AsNoTracking().SingleAsync(one => one.Id == protocol, cancellationToken),
            names,
            await db.DescriptiveForms.AsNoTracking().SingleOrDefaultAsync(form => form.Id == session.DescriptiveFormId, cancellationToken));
    }
}

using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>
/// Finds what is sealed for a person (docs/decisions/0006). Which sample stands under which code of an open session is
/// sealed for everybody who neither laid it out nor opened its key. The coffees themselves are sealed for those whose
/// roles are for cupping; for a buyer who cups too, in those sessions in which the buyer has handed in a sheet.
/// </summary>
public sealed class SealQuery(LedgerContext db)
{
    private const Role Cuppers = Role.Cupper | Role.LeadCupper;
    private const Role SeesOffers = Role.Viewer | Role.Buyer | Role.Administrator;

    public async Task<Seal> ForAsync(Id<Person> person, Role roles, CancellationToken cancellationToken)
    {
        var unopened = db.CuppingSessions.Open().Where(session =>
            session.LaidOutBy != person && !session.KeyOpenings.Any(opening => opening.By == person));
        var sessions = await unopened.Select(session => session.Id).ToListAsync(cancellationToken);
        if (sessions.Count == 0)
        {
            return Seal.None;
        }

        if ((roles & (Cuppers | Role.Buyer)) == Role.None)
        {
            return new Seal(sessions, [], [], []);
        }

        var cupsOnly = (roles & SeesOffers) == Role.None;
        var samples = await unopened
            .Where(session => cupsOnly || session.Sheets.Any(sheet => sheet.CupperId == person))
            .SelectMany(session => session.Samples, (session, sample) => new { sample.SampleId, sample.LotId })
            .ToListAsync(cancellationToken);
        var lots = samples.Select(sample => sample.LotId).Distinct().ToList();
        var offers = await db.Offers.Where(offer => lots.Contains(offer.LotId)).Select(offer => offer.Id).ToListAsync(cancellationToken);
        return new Seal(sessions, [.. samples.Select(sample => sample.SampleId).Distinct()], lots, offers);
    }
}

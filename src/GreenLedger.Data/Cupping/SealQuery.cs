using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>
/// Finds what is sealed for a person (docs/decisions/0006): every open session that the person neither laid out nor
/// opened the key of, if cupping is what the person's roles are for; for a buyer who cups too, those of them in which
/// the buyer has handed in a sheet.
/// </summary>
public sealed class SealQuery(LedgerContext db)
{
    private const Role Cuppers = Role.Cupper | Role.LeadCupper;
    private const Role SeesOffers = Role.Viewer | Role.Buyer | Role.Administrator;

    public async Task<Seal> ForAsync(Id<Person> person, Role roles, CancellationToken cancellationToken)
    {
        if ((roles & (Cuppers | Role.Buyer)) == Role.None)
        {
            return Seal.None;
        }

        var cupsOnly = (roles & SeesOffers) == Role.None;
        var sealedSessions = db.CuppingSessions.Open().Where(session =>
            session.LaidOutBy != person
            && !session.KeyOpenings.Any(opening => opening.By == person)
            && (cupsOnly || session.Sheets.Any(sheet => sheet.CupperId == person)));
        var samples = await sealedSessions
            .SelectMany(session => session.Samples, (session, sample) => new { sample.SampleId, sample.LotId })
            .ToListAsync(cancellationToken);
        var sessions = await sealedSessions.Select(session => session.Id).ToListAsync(cancellationToken);
        var lots = samples.Select(sample => sample.LotId).Distinct().ToList();
        var offers = await db.Offers.Where(offer => lots.Contains(offer.LotId)).Select(offer => offer.Id).ToListAsync(cancellationToken);
        return new Seal(sessions, [.. samples.Select(sample => sample.SampleId).Distinct()], lots, offers);
    }
}

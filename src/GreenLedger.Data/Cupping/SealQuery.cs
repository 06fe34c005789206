using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>
/// Finds what is sealed for a person (docs/decisions/0006). Which sample stands under which code of an open session is
/// sealed for everybody who neither laid it out nor opened its key, and for whoever cups in it, laid out or not. The
/// coffees themselves are sealed for those on its panel whatever else they may do (who laid it out has chosen them), for
/// those whose roles are for cupping only, and for a buyer who has handed in a sheet. Open to a test that takes the seal
/// off, to see that it would notice.
/// </summary>
public class SealQuery(LedgerContext db)
{
    private const Role SeesOffers = Role.Viewer | Role.Buyer | Role.Administrator;

    public virtual async Task<Seal> ForAsync(Id<Person> person, Role roles, CancellationToken cancellationToken)
    {
        // A member who cups has a serving order; one who only pours has none.
        var open = await db.CuppingSessions.Open().Select(session => new
        {
            session.Id,
            IsLaidOutBy = session.LaidOutBy == person,
            HasOpened = session.KeyOpenings.Any(opening => opening.By == person),
            Order = session.Panel.Where(member => member.PersonId == person).OrderBy(member => member.Seat).Select(member => member.ServingOrder).FirstOrDefault(),
            HasSheet = session.Sheets.Any(sheet => sheet.CupperId == person),
        }).ToListAsync(cancellationToken);
        var sealedFor = open.Where(session => session.Order is { Count: > 0 } || (!session.IsLaidOutBy && !session.HasOpened)).ToList();
        if (sealedFor.Count == 0)
        {
            return Seal.None;
        }

        var cupsOnly = (roles & (Role.Cupper | Role.LeadCupper)) != Role.None && (roles & SeesOffers) == Role.None;
        var covering = sealedFor.Where(session => !session.IsLaidOutBy && (cupsOnly || session.HasSheet || session.Order is { Count: > 0 }))
            .Select(session => session.Id).ToList();
        var samples = covering.Count == 0 ? [] : await db.CuppingSessions.Where(session => covering.Contains(session.Id))
            .SelectMany(session => session.Samples, (session, sample) => new { sample.SampleId, sample.LotId })
            .ToListAsync(cancellationToken);
        var lots = samples.Select(sample => sample.LotId).Distinct().ToList();
        var offers = lots.Count == 0 ? [] : await db.Offers.Where(offer => lots.Contains(offer.LotId)).Select(offer => offer.Id).ToListAsync(cancellationToken);
        return new Seal(sealedFor.Select(session => session.Id), [.. samples.Select(sample => sample.SampleId).Distinct()], lots, offers);
    }
}

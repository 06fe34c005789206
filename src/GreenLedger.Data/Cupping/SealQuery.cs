using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>
/// Finds what is sealed for a person (docs/decisions/0006). Which sample stands under which code of an open session is sealed
/// for everybody; only the page of the key says it, and puts on record whom it told. The coffees themselves are sealed for
/// those on its panel whatever else they may do (who laid it out has chosen them), for those whose roles are for cupping
/// only, and for a buyer who has handed in a sheet. Open to a test that takes the seal off, to see that it would notice.
/// </summary>
public class SealQuery(LedgerContext db)
{
    private const Role SeesOffers = Role.Viewer | Role.Buyer | Role.Administrator;

    /// <summary>With no more coffees than this on the table, to know which they are is to know what is in the cup.</summary>
    private const int FewCoffees = 2;

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
        if (open.Count == 0)
        {
            return Seal.None;
        }

        var cupsOnly = (roles & (Role.Cupper | Role.LeadCupper)) != Role.None && (roles & SeesOffers) == Role.None;
        var cupped = open.Where(session => !session.IsLaidOutBy && (session.Order is { Count: > 0 } || (session.HasSheet && !session.HasOpened)))
            .Select(session => session.Id).ToList();
        var covering = cupped.Concat(open.Where(session => cupsOnly && !session.IsLaidOutBy && !session.HasOpened).Select(session => session.Id)).Distinct().ToList();
        var samples = covering.Count == 0 ? [] : await db.CuppingSessions.Where(session => covering.Contains(session.Id))
            .SelectMany(session => session.Samples, (session, sample) => new { SessionId = session.Id, sample.SampleId, sample.LotId })
            .ToListAsync(cancellationToken);
        var lots = samples.Select(sample => sample.LotId).Distinct().ToList();
        var offers = lots.Count == 0 ? [] : await db.Offers.Where(offer => lots.Contains(offer.LotId)).Select(offer => offer.Id).ToListAsync(cancellationToken);
        var namesThem = samples.Where(sample => cupped.Contains(sample.SessionId)).GroupBy(sample => sample.SessionId)
            .Any(table => table.Select(sample => sample.LotId).Distinct().Count() <= FewCoffees);
        return new Seal(open.Select(session => session.Id), [.. samples.Select(sample => sample.SampleId).Distinct()], lots, offers, namesThem);
    }
}

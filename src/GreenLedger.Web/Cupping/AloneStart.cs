using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Cupping;

/// <summary>A session of one cupper's own, laid out without being asked anything: the same for the page and the API.</summary>
internal sealed class AloneStart(LedgerContext db, SessionQuery sessions, Reader reader, HouseZone house)
{
    /// <summary>Bowls of each sample where nobody says a number.</summary>
    public const int UsualCups = 3;

    /// <summary>Added to the ledger; whoever calls saves.</summary>
    /// <exception cref="RuleBrokenException">Nothing is chosen, one sample alone is to stay unknown, or a sample stands on a table where the cupper cups.</exception>
    public async Task<CuppingSession> StartAsync(
        IReadOnlyCollection<Id<Sample>> chosen, CuppingForm form, int cupsPerSample, Blinding blinding, Id<Person> by, CancellationToken cancellationToken)
    {
        Rule.Require(chosen.Count > 0, "Choose what you cup.", "Samples");
        Rule.Require(blinding == Blinding.Open || chosen.Count > 1, "Choose at least two samples to stay blind: one alone is known.", "Samples");
        var habits = await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken);
        var cupper = await db.People.SingleAsync(person => person.Id == by, cancellationToken);
        var session = new CuppingSession($"{cupper.Name} alone, {house.Now:HH:mm}", house.Today, form, cupsPerSample, cupper.Id);
        var plan = new TablePlan(habits.CupMilliliters, TablePlan.ProposedDose(habits.CupMilliliters, habits.DosePerLiter.Grams), habits.Water);
        session.Prepare(plan, await db.NewestProtocolAsync(cancellationToken), null, blinding);
        var samples = await db.Samples.Unsealed(await reader.SealAsync()).Where(sample => chosen.Contains(sample.Id)).ToListAsync(cancellationToken);
        Rule.Require(samples.Count == chosen.Count, "One of these samples stands on a table where you cup: choose it again when that session is closed.", "Samples");
        new TableLayout(samples, null, 0, [cupper], [cupper], samples.Count)
            .Fill(session, await sessions.RecentCodesAsync(cancellationToken), new Unforeseeable());
        db.Add(session);
        return session;
    }
}

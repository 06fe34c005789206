using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Cupping;

/// <summary>A session with codes under its bowls, with what its one cupper has written: the same for the page and the API.</summary>
internal sealed record TurnedBowls(CuppingSession Session, IReadOnlyList<SheetDraft> Drafts)
{
    /// <summary>Every sheet is in: the bowls may be turned over.</summary>
    public bool MayLook => Session.Places.All(place => Drafts.Any(draft => draft.Code == place && draft.HandedInAt is not null));

    /// <summary>Null where there is no such session of this person.</summary>
    public static async Task<TurnedBowls?> FindAsync(LedgerContext db, Id<CuppingSession> id, Id<Person> person, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        return session is { Blinding: Blinding.Undersides } && session.LaidOutBy == person
            ? new TurnedBowls(session, await db.SheetDrafts.Where(draft => draft.SessionId == id && draft.CupperId == person).ToListAsync(cancellationToken))
            : null;
    }

    /// <summary>The sheets of the places become those of the samples, and the house learns the words that were new; whoever calls saves.</summary>
    /// <param name="codes">The code found under the bowls of each place.</param>
    /// <exception cref="RuleBrokenException">A sheet is not in yet, or the codes are not those of this table, each once.</exception>
    public async Task TurnAsync(LedgerContext db, IReadOnlyDictionary<string, string> codes, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var cupper = await db.People.SingleAsync(person => person.Id == Session.LaidOutBy, cancellationToken);
        Session.TurnOver(codes, Drafts, cupper, at);
        foreach (var sheet in Session.Sheets)
        {
            await db.LearnWordsAsync(sheet, cancellationToken);
        }
    }
}

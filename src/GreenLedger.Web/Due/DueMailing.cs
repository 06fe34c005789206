using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Due;
using GreenLedger.Documents.Due;
using GreenLedger.Domain;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Due;

/// <summary>
/// Writes the daily mails of what is due: to each person what the page would show to that person at this moment, by roles and
/// seal, late or within the days of the first page's notice.
/// </summary>
internal sealed class DueMailing(LedgerContext db, DueQuery query, SealQuery seals, HouseZone house, Outbox outbox)
{
    /// <summary>Those whose mail of today is to be written now; none before the house's hour or without a mail server.</summary>
    public async Task<IReadOnlyList<Id<DueMail>>> LackingAsync(CancellationToken cancellationToken) =>
        outbox.CanSend && house.Now.Hour >= (await query.HabitsAsync(cancellationToken)).MailHour
            ? await db.DueMails.Lacking(house.Today).OrderBy(mail => mail.Id).Select(mail => mail.Id).ToListAsync(cancellationToken)
            : [];

    /// <summary>
    /// Puts the mail of today into the outbox, once for all nodes; none where nothing is due. It is read before the day is taken,
    /// so that nobody who writes waits for the reading.
    /// </summary>
    public async Task WriteAsync(Id<DueMail> id, CancellationToken cancellationToken)
    {
        var today = house.Today;
        var (lines, owner, address) = await ReadAsync(id, today, cancellationToken);
        await using var turn = await db.Database.BeginTransactionAsync(cancellationToken);
        if (!await db.DueMails.TakeDayAsync(id, today, cancellationToken))
        {
            return;
        }

        if (lines.Count > 0 && address is not null)
        {
            await PutAsync(id, lines, owner, address, today, cancellationToken);
        }

        await turn.CommitAsync(cancellationToken);
    }

    /// <summary>An address that cannot be written to takes the day all the same: it would be refused every minute, and its owner reads why.</summary>
    private async Task PutAsync(Id<DueMail> id, IReadOnlyList<DueLine> lines, Id<Person> owner, string address, DateOnly today, CancellationToken cancellationToken)
    {
        var name = await db.Houses.Select(one => one.Name).SingleAsync(cancellationToken);
        try
        {
            var message = await outbox.PutAsync(MessagePurpose.Due, address, DueLetter.Subject(lines, today), DueLetter.Text(lines, name, today), [], null, null, cancellationToken);
            message.For(owner, today);
            await db.SaveChangesAsync(cancellationToken);
        }
        catch (RuleBrokenException refused)
        {
            await db.DueMails.KeepTroubleAsync(id, refused.Message, cancellationToken);
        }
    }

    /// <summary>What is due to the owner, and where to write; no line for somebody who left.</summary>
    private async Task<(IReadOnlyList<DueLine> Lines, Id<Person> Owner, string? Address)> ReadAsync(Id<DueMail> id, DateOnly today, CancellationToken cancellationToken)
    {
        var person = await db.DueMails.Where(mail => mail.Id == id).Join(db.People, mail => mail.OwnerId, one => one.Id, (_, one) => one).SingleOrDefaultAsync(cancellationToken);
        if (person is not { IsActive: true })
        {
            return ([], default, null);
        }

        var seal = await seals.ForAsync(person.Id, person.Roles, cancellationToken);
        var within = (await query.HabitsAsync(cancellationToken)).NoticeDays;
        var lines = await query.ListAsync(area => AreaAccess.Of(area, person.Roles) >= Access.Read, seal, today, cancellationToken);
        return (
            [.. lines.Where(line => line.DaysLeft(today) <= within)],
            person.Id,
            await db.Users.Where(account => account.PersonId == person.Id).Select(account => account.Email).FirstOrDefaultAsync(cancellationToken));
    }
}

using System.Text;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Papers;

/// <summary>Who is to be erased, as the ledger names them now.</summary>
public sealed record ErasedSubject(ErasedKind Kind, Guid Id, string Name, IReadOnlyList<string> Addresses);

/// <summary>
/// Erases somebody's personal data within the transaction that the context is in: a designation stands in place of the name, sign-in
/// ends, and every record of what was done stays with the row of the person.
/// </summary>
public sealed class PersonErasure(LedgerContext db)
{
    private static readonly byte[] Erased = Encoding.ASCII.GetBytes("Erased on request.\r\n");

    /// <summary>The number of the next designation of this kind.</summary>
    public async Task<int> NextAsync(ErasedKind kind, CancellationToken cancellationToken) =>
        await db.Erasures.CountAsync(erasure => erasure.Kind == kind, cancellationToken) + 1;

    /// <summary>Null where there is nobody, or nobody any more.</summary>
    public async Task<ErasedSubject?> FindAsync(Id<Person> id, CancellationToken cancellationToken)
    {
        var account = await db.Users.AsNoTracking().SingleOrDefaultAsync(one => one.PersonId == id, cancellationToken);
        var name = await db.People.Where(person => person.Id == id).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken);
        return account is null || name is null ? null : new ErasedSubject(ErasedKind.Person, id.Value, name, [.. new[] { account.Email, account.UserName, account.PhoneNumber }.OfType<string>()]);
    }

    /// <summary>Null where there is nobody, or nobody any more.</summary>
    public async Task<ErasedSubject?> FindAsync(Id<SupplierContact> id, CancellationToken cancellationToken)
    {
        var contact = await db.SupplierContacts.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        return contact is null || await db.Erasures.AnyAsync(one => one.SubjectId == id.Value, cancellationToken)
            ? null : new ErasedSubject(ErasedKind.Contact, id.Value, contact.Name, [contact.Email]);
    }

    /// <summary>In which texts the words stand.</summary>
    public Task<IReadOnlyList<NamedIn>> PreviewAsync(ErasedWords words, CancellationToken cancellationToken) => new PersonalTexts(db, words).FindAsync(cancellationToken);

    /// <exception cref="RuleBrokenException">Somebody else has the same name or address, or the reason names the person.</exception>
    public async Task EraseAsync(Erasure erasure, ErasedSubject subject, ErasedWords words, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(erasure);
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(words);
        Rule.Require(!words.AreIn(erasure.Reason), "The reason names who is to be erased, and it is kept: write it without the name.", nameof(erasure.Reason));
        await RequireAloneAsync(subject, words, cancellationToken);
        await EndAsync(subject, cancellationToken);
        erasure.Count(await new PersonalTexts(db, words).ReplaceAsync(cancellationToken));
        await EmptyMessagesAsync(Erasure.AddressOf(erasure.Designation), cancellationToken);
        db.Erasures.Add(erasure);
        await db.SaveChangesAsync(cancellationToken);
    }

    /// <summary>A name that two people have cannot be taken from one of them alone: whoever of both has the same address as well is the same.</summary>
    private async Task RequireAloneAsync(ErasedSubject subject, ErasedWords words, CancellationToken cancellationToken)
    {
        var people = await db.People.AsNoTracking().Where(person => subject.Kind != ErasedKind.Person || person.Id != new Id<Person>(subject.Id)).Select(person => person.Name).ToListAsync(cancellationToken);
        var contacts = await db.SupplierContacts.AsNoTracking().Where(contact => subject.Kind != ErasedKind.Contact || contact.Id != new Id<SupplierContact>(subject.Id)).ToListAsync(cancellationToken);
        var person = people.Find(words.AreIn);
        var contact = contacts.Find(one => words.AreIn(one.Name) != words.AreIn(one.Email));
        Rule.Require(person is null, $"{person} would lose their name too: change how it is written first, with an initial for instance, or leave out the other spelling.", "Also");
        Rule.Require(contact is null, $"{contact?.Name} ({contact?.Email}), another contact, would lose a name or an address too: change theirs first, or leave out the other spelling.", "Also");
    }

    /// <summary>Signs out everywhere within a minute; nothing is sent any more.</summary>
    private async Task EndAsync(ErasedSubject subject, CancellationToken cancellationToken)
    {
        if (subject.Kind == ErasedKind.Contact)
        {
            var contact = new Id<SupplierContact>(subject.Id);
            await db.SupplierContacts.Where(one => one.Id == contact).ExecuteUpdateAsync(set => set.SetProperty(one => one.IsActive, false).SetProperty(one => one.Receives, Receives.Nothing), cancellationToken);
            return;
        }

        var person = new Id<Person>(subject.Id);
        await db.ApiTokens.Where(token => token.OwnerId == person).ExecuteDeleteAsync(cancellationToken);
        await db.CalendarFeeds.Where(feed => feed.OwnerId == person).ExecuteDeleteAsync(cancellationToken);
        await db.DueMails.Where(mail => mail.OwnerId == person).ExecuteDeleteAsync(cancellationToken);
        await db.Users.Where(account => account.PersonId == person).ExecuteDeleteAsync(cancellationToken);
        await db.People.Where(one => one.Id == person).ExecuteUpdateAsync(set => set.SetProperty(one => one.IsActive, false).SetProperty(one => one.Roles, Role.None), cancellationToken);
    }

    /// <summary>What was sent to them keeps its subject, purpose and time; its text is gone, and what is still to be sent is not.</summary>
    private async Task EmptyMessagesAsync(string address, CancellationToken cancellationToken)
    {
        var theirs = db.Messages.Where(message => message.Address == address);
        await theirs.ExecuteUpdateAsync(set => set.SetProperty(message => message.Bytes, Erased), cancellationToken);
        await theirs.Where(message => message.State != MessageState.Sent)
            .ExecuteUpdateAsync(set => set.SetProperty(message => message.State, MessageState.Dropped).SetProperty(message => message.TakenBy, (string?)null), cancellationToken);
    }
}

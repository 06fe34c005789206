using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Papers;

public static class Messages
{
    /// <summary>Those that a node may take now, the one that waits longest first.</summary>
    public static IQueryable<Message> ToSend(this IQueryable<Message> messages, DateTimeOffset now)
    {
        var silent = now - Message.Silence;
        return messages.Where(message => message.State == MessageState.Queued && message.NextTryAt <= now && (message.TakenBy == null || message.TakenAt < silent))
            .OrderBy(message => message.NextTryAt).ThenBy(message => message.Id);
    }
}

/// <summary>A message of a list.</summary>
/// <param name="Who">Who sent it; null where the house did by itself.</param>
public sealed record MessageRow(
    Domain.Id<Message> Id, int Version, MessagePurpose Purpose, string Address, string Subject, string MessageId, string? Who, DateTimeOffset At, MessageState State, int Tries,
    DateTimeOffset NextTryAt, DateTimeOffset? EndedAt, string? Trouble, string? AskedAgainBy, DateTimeOffset? AskedAgainAt);

/// <summary>Lists of messages, the newest first; without their text.</summary>
public sealed class MessageQuery(LedgerContext db)
{
    /// <param name="state">Only those; null for all.</param>
    public Task<int> CountAsync(MessageState? state, CancellationToken cancellationToken) => Filtered(state).CountAsync(cancellationToken);

    /// <param name="state">Only those; null for all.</param>
    /// <param name="skip">Rows to leave out at the start.</param>
    /// <param name="take">Rows at the most.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<MessageRow>> ListAsync(MessageState? state, int skip, int take, CancellationToken cancellationToken) =>
        await Rows(NewestFirst(Filtered(state)).Skip(skip).Take(take)).ToListAsync(cancellationToken);

    /// <summary>Those about one record.</summary>
    public async Task<IReadOnlyList<MessageRow>> AboutAsync(Guid record, CancellationToken cancellationToken) =>
        await Rows(NewestFirst(Filtered(null).Where(message => message.AboutId == record))).ToListAsync(cancellationToken);

    private static IQueryable<Message> NewestFirst(IQueryable<Message> messages) => messages.OrderByDescending(message => message.At).ThenByDescending(message => message.Id);

    private IQueryable<MessageRow> Rows(IQueryable<Message> messages) => messages
        .Select(message => new MessageRow(
            message.Id, message.Version, message.Purpose, message.Address, message.Subject, message.MessageId,
            db.People.Where(person => person.Id == message.By).Select(person => person.Name).FirstOrDefault(), message.At, message.State, message.Tries, message.NextTryAt, message.EndedAt, message.Trouble,
            db.People.Where(person => person.Id == message.AskedAgainBy).Select(person => person.Name).FirstOrDefault(), message.AskedAgainAt));

    private IQueryable<Message> Filtered(MessageState? state) =>
        db.Messages.AsNoTracking().Where(message => state == null || message.State == state);
}

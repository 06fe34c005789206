using System.Security.Cryptography;
using System.Text.Json;
using GreenLedger.Data;
using GreenLedger.Documents.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using MimeKit;

namespace GreenLedger.Web.Mail;

/// <summary>
/// Where messages wait to be sent. Putting one in is part of the save that it belongs to: what is not stored is not sent, and
/// what is stored is sent by whichever node takes it.
/// </summary>
internal sealed class Outbox(LedgerContext db, MailSettings settings, TimeProvider clock)
{
    public bool CanSend => settings.CanSend;

    /// <summary>Adds a message, to be stored with the caller's save.</summary>
    /// <param name="purpose">What it is sent for.</param>
    /// <param name="address">Whom it goes to.</param>
    /// <param name="subject">One line.</param>
    /// <param name="text">Plain text.</param>
    /// <param name="files">What goes with it.</param>
    /// <param name="about">The record that it is about; null where it is about none.</param>
    /// <param name="by">Who sends it; null where the house does by itself.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    /// <exception cref="RuleBrokenException">No mail server is set, or the address cannot be used.</exception>
    public async Task<Message> PutAsync(
        MessagePurpose purpose, string address, string subject, string text, IReadOnlyList<MailFile> files, Guid? about, Id<Person>? by, CancellationToken cancellationToken)
    {
        Rule.Require(CanSend, "No mail server is set: your administrator finds the settings in the README.", "Address");
        var house = await db.Houses.AsNoTracking().Select(one => one.Name).SingleAsync(cancellationToken);
        var now = clock.GetUtcNow();
        var message = new Message(purpose, Written(new MailDraft(house, settings.From!, address, subject, text, files, IsAutomatic: by is null), now), about, by, now);
        db.Add(message);
        return message;
    }

    /// <summary>
    /// Adds a letter to each of the addresses, none of which sees the others, once for one opening of a form and what it said then: what a
    /// second press or a reload sends again is in the outbox already.
    /// </summary>
    /// <returns>Whether anything was added.</returns>
    /// <exception cref="RuleBrokenException">No mail server is set, or an address cannot be used.</exception>
    public async Task<bool> PutOnceAsync(Guid submission, IReadOnlyCollection<string> to, Letter letter, Id<Person> by, CancellationToken cancellationToken)
    {
        var sending = letter.In(submission);
        var known = await db.Messages.Where(message => message.SubmissionId == sending).Select(message => message.Address).ToListAsync(cancellationToken);
        var unsent = to.Except(known, StringComparer.OrdinalIgnoreCase).ToList();
        foreach (var address in unsent)
        {
            var message = await PutAsync(letter.Purpose, address, letter.Subject, letter.Text, letter.File is { } file ? [file] : [], letter.About, by, cancellationToken);
            message.SentFrom(sending);
        }

        return unsent.Count > 0;
    }

    private static MessageText Written(MailDraft draft, DateTimeOffset at)
    {
        try
        {
            return MailText.Write(draft, at);
        }
        catch (ParseException)
        {
            throw new RuleBrokenException($"{draft.Address} is not an e-mail address that mail can be sent to.", "Address");
        }
    }
}

/// <summary>What is sent to one or more people, to each on its own.</summary>
/// <param name="About">The record that it is about.</param>
/// <param name="File">What goes with it; null for the text alone.</param>
/// <param name="Chosen">What the file was made of, as far as neither its name nor the text says it.</param>
internal sealed record Letter(MessagePurpose Purpose, Guid? About, string Subject, string Text, MailFile? File, string Chosen = "")
{
    /// <summary>One sending: the same words and papers in the same opening of a form are the same one.</summary>
    public Guid In(Guid submission) =>
        new(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(new object?[] { submission, Purpose, About, Subject, Text, File?.Name, Chosen })).AsSpan(0, 16));
}

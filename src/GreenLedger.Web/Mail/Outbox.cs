using GreenLedger.Data;
using GreenLedger.Documents.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

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
        var message = new Message(purpose, MailText.Write(new MailDraft(house, settings.From!, address, subject, text, files, IsAutomatic: by is null), now), about, by, now);
        db.Add(message);
        return message;
    }
}

using GreenLedger.Domain.Papers;
using MimeKit;

namespace GreenLedger.Documents.Papers;

/// <summary>A file that goes with a message.</summary>
public sealed record MailFile(string Name, string MediaType, byte[] Bytes);

/// <summary>What a message says and to whom, before it is written.</summary>
/// <param name="House">How the house is called.</param>
/// <param name="From">The house's address.</param>
/// <param name="Address">Whom it goes to.</param>
/// <param name="IsAutomatic">No person sends it: programs that answer for absent people keep quiet (RFC 3834).</param>
public sealed record MailDraft(string House, string From, string Address, string Subject, string Text, IReadOnlyList<MailFile> Files, bool IsAutomatic = false);

/// <summary>Writes messages by RFC 5322 and MIME.</summary>
public static class MailText
{
    /// <param name="draft">What it says.</param>
    /// <param name="at">The day and time that it bears.</param>
    public static MessageText Write(MailDraft draft, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(draft);
        using var message = new MimeMessage { Subject = draft.Subject, Date = at };
        message.From.Add(new MailboxAddress(draft.House, draft.From));
        message.To.Add(new MailboxAddress("", draft.Address));
        message.MessageId = $"{Guid.CreateVersion7(at):N}@{draft.From[(draft.From.LastIndexOf('@') + 1)..]}";
        if (draft.IsAutomatic)
        {
            message.Headers.Add("Auto-Submitted", "auto-generated");
        }

        var body = new BodyBuilder { TextBody = draft.Text };
        foreach (var file in draft.Files)
        {
            body.Attachments.Add(file.Name, file.Bytes, ContentType.Parse(file.MediaType));
        }

        message.Body = body.ToMessageBody();
        message.Prepare(EncodingConstraint.SevenBit);
        using var stream = new MemoryStream();
        message.WriteTo(stream);
        return new MessageText(draft.Address, draft.Subject, message.MessageId, stream.ToArray());
    }
}

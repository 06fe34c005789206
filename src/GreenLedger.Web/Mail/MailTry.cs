using System.Globalization;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using GreenLedger.Domain.Papers;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace GreenLedger.Web.Mail;

/// <summary>How a try to send a message ended.</summary>
internal enum TryEnd
{
    /// <summary>The mail server took it over.</summary>
    Sent = 0,

    /// <summary>Nothing was taken over: try again.</summary>
    NotNow = 1,

    /// <summary>Refused for good.</summary>
    Never = 2,

    /// <summary>The text went out and no answer came.</summary>
    Unknown = 3,
}

/// <summary>
/// One try to hand a message to the mail server. What counts is whether its text had begun to go out when something broke:
/// before, nothing can have arrived; afterwards, nobody knows, unless the server answered.
/// </summary>
internal sealed class MailTry(MailSettings settings) : ITransferProgress
{
    private bool _isOpen;
    private bool _textIsOut;

    /// <param name="message">As it lies in the outbox.</param>
    /// <param name="beginText">Writes down that its text goes out now; when that fails the try ends with it.</param>
    /// <param name="cancellationToken">Stops it before its text goes out; afterwards it is ended in order.</param>
    /// <returns>The end, and what went wrong in a sentence.</returns>
    public async Task<(TryEnd End, string? Trouble)> SendAsync(Message message, Func<Task> beginText, CancellationToken cancellationToken)
    {
        using var client = new SmtpClient { Timeout = (int)settings.Patience.TotalMilliseconds };
        if (await BrokenAsync(() => OpenAsync(client, cancellationToken), cancellationToken) is { } unopened)
        {
            return unopened;
        }

        _isOpen = true;
        await beginText();
        if (await BrokenAsync(() => HandOverAsync(client, message), CancellationToken.None) is { } broken)
        {
            return broken;
        }

        await CloseAsync(client);
        return (TryEnd.Sent, null);
    }

    void ITransferProgress.Report(long bytesTransferred, long totalSize) => _textIsOut = true;

    void ITransferProgress.Report(long bytesTransferred) => _textIsOut = true;

    /// <summary>How a step broke the try off; null where it went well. Only a stop that was asked for goes on up.</summary>
    private async Task<(TryEnd End, string? Trouble)?> BrokenAsync(Func<Task> step, CancellationToken stop)
    {
        try
        {
            await step();
            return null;
        }
        catch (SmtpCommandException answer)
        {
            return Of(answer);
        }
        catch (Exception refused) when (refused is AuthenticationException or ServiceNotAuthenticatedException)
        {
            return (TryEnd.NotNow, "The mail server does not accept the user or the password of the settings.");
        }
        catch (SslHandshakeException)
        {
            return (TryEnd.NotNow, "The mail server showed no certificate that is trusted here and in its name: ask whoever runs it, or name its certificate in GreenLedger__MailTrust. Nothing was sent.");
        }
        catch (Exception broken) when (broken is not OperationCanceledException || !stop.IsCancellationRequested)
        {
            // Whatever else goes wrong on the way to a mail server: what counts is whether the text had begun to go out.
            return _textIsOut
                ? (TryEnd.Unknown, $"The connection broke after the text had gone out, before the mail server answered ({Short(broken)}).")
                : (TryEnd.NotNow, $"The mail server could not be used ({Short(broken)}).");
        }
    }

    private async Task OpenAsync(SmtpClient client, CancellationToken cancellationToken)
    {
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        deadline.CancelAfter(settings.Patience);
        if (settings.Trusted is { } trusted)
        {
            client.ServerCertificateValidationCallback = (_, certificate, _, errors) => errors == SslPolicyErrors.None || (errors == SslPolicyErrors.RemoteCertificateChainErrors && GoesBackTo(trusted, certificate));
        }

        await client.ConnectAsync(settings.Server!, settings.Port, settings.Security, deadline.Token);
        if (settings.User is { } user)
        {
            await client.AuthenticateAsync(user, settings.Password ?? "", deadline.Token);
        }
    }

    /// <summary>A name that does not fit or a certificate that has run out is refused all the same. Who makes a certificate of their own publishes no list of revoked ones.</summary>
    private static bool GoesBackTo(X509Certificate2Collection trusted, X509Certificate? certificate)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.AddRange(trusted);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        return certificate is X509Certificate2 shown && chain.Build(shown);
    }

    /// <summary>A node that stops does not break off here: its last message would be left in doubt.</summary>
    private async Task HandOverAsync(SmtpClient client, Message message)
    {
        using var deadline = new CancellationTokenSource(settings.Patience);
        using var stream = new MemoryStream(message.Bytes);
        using var written = await MimeMessage.LoadAsync(stream, deadline.Token);
        await client.SendAsync(written, written.From.Mailboxes.First(), [MailboxAddress.Parse(message.Address)], deadline.Token, this);
    }

    /// <summary>
    /// An answer is an answer, also to the text: 5xx is for good, 4xx for now (RFC 5321, section 4.2.1). A 5xx before the message
    /// is spoken of, or to the house's own address, is about the house and its settings, and does not end the message.
    /// </summary>
    private (TryEnd End, string? Trouble) Of(SmtpCommandException answer)
    {
        var code = (int)answer.StatusCode;
        var isAboutMessage = _isOpen && answer.ErrorCode != SmtpErrorCode.SenderNotAccepted;
        return (code >= 500 && isAboutMessage ? TryEnd.Never : TryEnd.NotNow, string.Create(CultureInfo.InvariantCulture, $"The mail server answered {code}: {answer.Message}"));
    }

    /// <summary>The message is handed over: how the two say goodbye no longer matters.</summary>
    private static async Task CloseAsync(SmtpClient client)
    {
        try
        {
            using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(5));
            await client.DisconnectAsync(true, deadline.Token);
        }
        catch (Exception broken) when (broken is IOException or SocketException or ProtocolException or OperationCanceledException or CommandException)
        {
            // Some servers close the line at once; what was handed over stays handed over.
        }
    }

    private static string Short(Exception broken) => broken is OperationCanceledException ? "no answer in time" : broken.Message.Split('\n')[0].Trim();
}

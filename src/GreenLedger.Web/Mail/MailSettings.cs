using System.Net.Mail;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using MailKit.Security;

namespace GreenLedger.Web.Mail;

/// <summary>The mail server that the house sends through; without one nothing is sent, and the pages say so.</summary>
internal sealed record MailSettings(string? Server, int Port, SecureSocketOptions Security, string? User, string? Password, string? From)
{
    private const int Submission = 587;

    /// <summary>How long a step of a try may last; all of them stay below the time after which another node takes the message.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>Certificates that the mail server's may be or go back to, besides those that the machine trusts; null for none.</summary>
    public X509Certificate2Collection? Trusted { get; init; }

    public bool CanSend => Server is not null && From is not null;

    /// <exception cref="InvalidOperationException">A setting cannot be read.</exception>
    public static MailSettings Of(IConfiguration settings)
    {
        var (server, from) = (Text(settings["GreenLedger:MailServer"]), Text(settings["GreenLedger:MailFrom"]));
        if (from is not null && !(MailAddress.TryCreate(from, out var read) && read.Address == from))
        {
            throw new InvalidOperationException($"GreenLedger__MailFrom is '{from}': set the address alone, such as ledger@your-house.example.");
        }

        if ((server is null) != (from is null))
        {
            throw new InvalidOperationException("Set both GreenLedger__MailServer and GreenLedger__MailFrom, or neither.");
        }

        return new MailSettings(server, settings.GetValue("GreenLedger:MailPort", Submission), SecurityOf(settings["GreenLedger:MailSecurity"]), Text(settings["GreenLedger:MailUser"]), settings["GreenLedger:MailPassword"], from)
        {
            Trusted = Text(settings["GreenLedger:MailTrust"]) is { } path ? Read(path) : null,
        };
    }

    private static X509Certificate2Collection Read(string path)
    {
        try
        {
            var certificates = new X509Certificate2Collection();
            certificates.ImportFromPemFile(path);
            return certificates.Count > 0 ? certificates : throw new InvalidOperationException($"GreenLedger__MailTrust is '{path}', which holds no certificate: give a file in PEM.");
        }
        catch (Exception unread) when (unread is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new InvalidOperationException($"GreenLedger__MailTrust is '{path}', which cannot be read as certificates in PEM: {unread.Message}", unread);
        }
    }

    private static SecureSocketOptions SecurityOf(string? text) => text?.ToLowerInvariant() switch
    {
        null or "" or "starttls" => SecureSocketOptions.StartTls,
        "tls" => SecureSocketOptions.SslOnConnect,
        "none" => SecureSocketOptions.None,
        var other => throw new InvalidOperationException($"GreenLedger__MailSecurity is '{other}': use starttls, tls or none."),
    };

    private static string? Text(string? value) => string.IsNullOrWhiteSpace(value) ? null : value.Trim();
}

using System.Net.Mail;
using MailKit.Security;

namespace GreenLedger.Web.Mail;

/// <summary>The mail server that the house sends through; without one nothing is sent, and the pages say so.</summary>
internal sealed record MailSettings(string? Server, int Port, SecureSocketOptions Security, string? User, string? Password, string? From)
{
    private const int Submission = 587;

    /// <summary>How long a step of a try may last; all of them stay below the time after which another node takes the message.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);

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

        return new MailSettings(server, settings.GetValue("GreenLedger:MailPort", Submission), SecurityOf(settings["GreenLedger:MailSecurity"]), Text(settings["GreenLedger:MailUser"]), settings["GreenLedger:MailPassword"], from);
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

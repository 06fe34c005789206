using System.Buffers;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MimeKit;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.ComponentModel;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace GreenLedger.Web.Tests.Mail;

/// <summary>A real mail server on a port of its own, which keeps what it takes over and refuses what a test wants refused.</summary>
internal sealed class PostOffice : MessageStore, IMailboxFilter, IUserAuthenticator, IAsyncDisposable
{
    private readonly CancellationTokenSource _closing = new();
    private readonly List<MimeMessage> _taken = [];
    private readonly Task _open;

    /// <param name="asksForPassword">Takes nothing over from whoever did not sign in.</param>
    /// <param name="certificate">Offers STARTTLS with it, or speaks TLS from the first byte.</param>
    /// <param name="isTlsAtOnce">TLS from the first byte.</param>
    public PostOffice(bool asksForPassword = false, X509Certificate2? certificate = null, bool isTlsAtOnce = false)
    {
        Port = FreePort();
        var options = new SmtpServerOptionsBuilder().ServerName("post-office.example")
            .Endpoint(endpoint => Secure(endpoint.Port(Port).AllowUnsecureAuthentication(certificate is null).AuthenticationRequired(asksForPassword), certificate, isTlsAtOnce)).Build();
        var parts = new ServiceProvider();
        parts.Add((IMessageStore)this);
        parts.Add((IMailboxFilter)this);
        parts.Add((IUserAuthenticator)this);
        _open = new SmtpServer.SmtpServer(options, parts).StartAsync(_closing.Token);
    }

    public int Port { get; }

    /// <summary>What it answers to every recipient; null takes them all.</summary>
    public SmtpResponse? RefusesRecipients { get; set; }

    /// <summary>What it answers to every sender; null takes them all.</summary>
    public SmtpResponse? RefusesSenders { get; set; }

    /// <summary>What it answers to a text that it has read; null takes it over.</summary>
    public SmtpResponse? RefusesText { get; set; }

    /// <summary>The one password that it knows.</summary>
    public string Password { get; set; } = "seven green beans";

    /// <summary>What the ledger must be told to send through it.</summary>
    public Dictionary<string, string> Settings => new()
    {
        ["GreenLedger:MailServer"] = "127.0.0.1",
        ["GreenLedger:MailPort"] = Port.ToString(CultureInfo.InvariantCulture),
        ["GreenLedger:MailSecurity"] = "none",
        ["GreenLedger:MailFrom"] = "ledger@sorrel-roasters.example",
    };

    public IReadOnlyList<MimeMessage> Taken
    {
        get
        {
            lock (_taken)
            {
                return [.. _taken];
            }
        }
    }

    private static EndpointDefinitionBuilder Secure(EndpointDefinitionBuilder endpoint, X509Certificate2? certificate, bool isTlsAtOnce) =>
        certificate is null ? endpoint : endpoint.Certificate(certificate).IsSecure(isTlsAtOnce);

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>Waits until so many are taken over: a node sends by itself every few seconds.</summary>
    public async Task<IReadOnlyList<MimeMessage>> TakenAsync(int count, CancellationToken cancellationToken)
    {
        for (var tries = 0; Taken.Count < count && tries < 300; tries++)
        {
            await Task.Delay(200, cancellationToken);
        }

        Assert.Equal(count, Taken.Count);
        return Taken;
    }

    public override async Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        if (RefusesText is { } refusal)
        {
            return refusal;
        }

        using var stream = new MemoryStream(buffer.ToArray());
        var message = await MimeMessage.LoadAsync(stream, cancellationToken);
        lock (_taken)
        {
            _taken.Add(message);
        }

        return SmtpResponse.Ok;
    }

    public Task<bool> CanAcceptFromAsync(ISessionContext context, IMailbox @from, int size, CancellationToken cancellationToken) =>
        RefusesSenders is { } refusal ? throw new SmtpResponseException(refusal) : Task.FromResult(true);

    public Task<bool> CanDeliverToAsync(ISessionContext context, IMailbox to, IMailbox @from, CancellationToken cancellationToken) =>
        RefusesRecipients is { } refusal ? throw new SmtpResponseException(refusal) : Task.FromResult(true);

    public Task<bool> AuthenticateAsync(ISessionContext context, string user, string password, CancellationToken cancellationToken) => Task.FromResult(password == Password);

    public async ValueTask DisposeAsync()
    {
        await _closing.CancelAsync();
        await Task.WhenAny(_open, Task.Delay(TimeSpan.FromSeconds(5)));
        _closing.Dispose();
    }
}

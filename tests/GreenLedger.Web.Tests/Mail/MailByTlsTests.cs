using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Mail;
using Microsoft.Extensions.Configuration;

namespace GreenLedger.Web.Tests.Mail;

/// <summary>
/// Against a real mail server on a socket with a certificate made here: by STARTTLS (RFC 3207) and by TLS from the first byte
/// (RFC 8314, section 3.3).
/// </summary>
public sealed class MailByTlsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("starttls")]
    [InlineData("tls")]
    public async Task A_message_goes_out_by_TLS_with_user_and_password_where_the_certificate_is_trusted(string security)
    {
        using var certificate = Certificate("127.0.0.1");
        await using var house = await MailHouse.OpenAsync(office: new PostOffice(asksForPassword: true, certificate, security == "tls"));
        using var trust = new TrustFile(certificate);
        var id = await house.PutAsync();

        await house.Node(Settings(house, security, trust.Path)).SendNextAsync(Stop);

        Assert.Equal((MessageState.Sent, 1), ((await house.FindAsync(id)).State, (await house.FindAsync(id)).Tries));
        Assert.Equal("Your samples", Assert.Single(house.Office.Taken).Subject);
    }

    [Theory]
    [InlineData("starttls")]
    [InlineData("tls")]
    public async Task A_certificate_that_nobody_trusts_is_refused_with_a_sentence_and_no_message_is_lost(string security)
    {
        using var certificate = Certificate("127.0.0.1");
        using var another = Certificate("127.0.0.1");
        await using var house = await MailHouse.OpenAsync(office: new PostOffice(certificate: certificate, isTlsAtOnce: security == "tls"));
        using var trust = new TrustFile(certificate);
        using var elsewhere = new TrustFile(another);
        var id = await house.PutAsync();

        await house.Node(Settings(house, security, null)).SendNextAsync(Stop);
        var untrusted = await house.FindAsync(id);
        house.Clock.Now += TimeSpan.FromHours(1);
        await house.Node(Settings(house, security, elsewhere.Path)).SendNextAsync(Stop);
        var other = await house.FindAsync(id);
        Assert.Empty(house.Office.Taken);
        house.Clock.Now += TimeSpan.FromHours(1);
        await house.Node(Settings(house, security, trust.Path)).SendNextAsync(Stop);

        foreach (var waiting in new[] { untrusted, other })
        {
            Assert.Equal((MessageState.Queued, null), (waiting.State, waiting.TakenBy));
            Assert.StartsWith("The mail server showed no certificate that is trusted here", waiting.Trouble, StringComparison.Ordinal);
        }

        Assert.Equal((MessageState.Sent, 3), ((await house.FindAsync(id)).State, (await house.FindAsync(id)).Tries));
        Assert.Equal(untrusted.MessageId, Assert.Single(house.Office.Taken).MessageId);
    }

    [Fact]
    public async Task A_trusted_certificate_of_another_name_or_one_that_has_run_out_is_refused()
    {
        foreach (var certificate in new[] { Certificate("10.9.8.7"), Certificate("127.0.0.1", days: -1) })
        {
            using var shown = certificate;
            await using var house = await MailHouse.OpenAsync(office: new PostOffice(certificate: shown));
            using var trust = new TrustFile(shown);
            var id = await house.PutAsync();

            await house.Node(Settings(house, "starttls", trust.Path)).SendNextAsync(Stop);

            Assert.Equal(MessageState.Queued, (await house.FindAsync(id)).State);
            Assert.Contains("no certificate that is trusted here", (await house.FindAsync(id)).Trouble, StringComparison.Ordinal);
            Assert.Empty(house.Office.Taken);
        }
    }

    [Fact]
    public async Task A_server_that_offers_no_TLS_gets_neither_password_nor_message()
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();

        await house.Node(Settings(house, "starttls", null)).SendNextAsync(Stop);

        Assert.Equal(MessageState.Queued, (await house.FindAsync(id)).State);
        Assert.Contains("STARTTLS", (await house.FindAsync(id)).Trouble, StringComparison.Ordinal);
        Assert.Empty(house.Office.Taken);
    }

    [Fact]
    public void A_file_of_trust_without_a_certificate_is_refused_at_the_start()
    {
        using var empty = new TrustFile(null);

        Assert.Contains("holds no certificate", Assert.Throws<InvalidOperationException>(() => Read("starttls", 25, empty.Path)).Message, StringComparison.Ordinal);
        Assert.Contains("cannot be read", Assert.Throws<InvalidOperationException>(() => Read("starttls", 25, empty.Path + ".gone")).Message, StringComparison.Ordinal);
    }

    private static MailSettings Settings(MailHouse house, string security, string? trust) => Read(security, house.Office.Port, trust) with { User = "ledger", Password = house.Office.Password };

    private static MailSettings Read(string security, int port, string? trust) => MailSettings.Of(new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
    {
        ["GreenLedger:MailServer"] = "127.0.0.1",
        ["GreenLedger:MailPort"] = port.ToString(CultureInfo.InvariantCulture),
        ["GreenLedger:MailSecurity"] = security,
        ["GreenLedger:MailFrom"] = "ledger@sorrel-roasters.example",
        ["GreenLedger:MailTrust"] = trust,
    }).Build());

    /// <summary>One that signs itself, for a server known by its number.</summary>
    private static X509Certificate2 Certificate(string address, int days = 30)
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=post-office.example", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Parse(address));
        request.CertificateExtensions.Add(names.Build());
        var now = DateTimeOffset.UtcNow;
        using var made = request.CreateSelfSigned(now.AddDays(-30), now.AddDays(days));
        return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pkcs12), null);
    }

    private sealed class TrustFile : IDisposable
    {
        public TrustFile(X509Certificate2? certificate) => File.WriteAllText(Path, certificate?.ExportCertificatePem() ?? "");

        public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"greenledger-trust-{Guid.NewGuid():n}.pem");

        public void Dispose() => File.Delete(Path);
    }
}

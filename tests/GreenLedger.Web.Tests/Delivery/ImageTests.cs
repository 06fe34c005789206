using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace GreenLedger.Web.Tests.Delivery;

public sealed class ImageTests(ImageFixture image) : IClassFixture<ImageFixture>
{
    [Fact]
    public void The_image_does_not_run_as_root_and_keeps_its_data_in_a_volume()
    {
        Assert.Equal("$APP_UID", image.Final.Last("USER"));
        Assert.Equal("/data", image.Final.Last("VOLUME"));
        Assert.Contains("GreenLedger__Data=/data", image.Final.Last("ENV"));
        Assert.StartsWith("mcr.microsoft.com/dotnet/aspnet:10.0", image.Final.Image);
    }

    [Fact]
    public async Task A_container_starts_healthy_and_leads_to_the_first_account()
    {
        await using var node = new RunningNode(image);
        await node.ReadyAsync();
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = node.Address };

        var answer = await client.GetAsync("/", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/Entrance/FirstAccount", answer.Headers.Location?.ToString());
        Assert.True(File.Exists(Path.Combine(image.Here("/data"), "ledger.db")));
    }

    [Fact]
    public async Task The_health_check_says_no_when_nothing_answers()
    {
        var node = new RunningNode(image);
        await node.ReadyAsync();
        await node.DisposeAsync();

        Assert.False(await node.IsHealthyAsync());
    }

    [Fact]
    public async Task Two_nodes_on_one_PostgreSQL_know_the_same_people()
    {
        await using var database = await PostgresDatabase.NewAsync();
        var settings = new Dictionary<string, string>
        {
            ["GreenLedger__Database"] = "postgres",
            ["ConnectionStrings__GreenLedger"] = database.Connection,
        };
        await using var first = new RunningNode(image, settings);
        await using var second = new RunningNode(image, settings);
        await first.ReadyAsync();
        await second.ReadyAsync();
        var cookies = new CookieContainer();
        using var atFirst = Client(first, cookies);
        using var atSecond = Client(second, cookies);

        var opened = await new TestBrowser(atFirst).SendFormAsync("/Entrance/FirstAccount", FirstAccount());
        Assert.Equal(HttpStatusCode.Redirect, opened.StatusCode);
        var home = await atSecond.GetAsync("/", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, home.StatusCode);
        Assert.Contains("Imke Adler", await home.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_demo_on_PostgreSQL_says_where_to_open_it_and_how_to_get_in()
    {
        await using var database = await PostgresDatabase.NewAsync();
        var settings = new Dictionary<string, string> { ["GreenLedger__Database"] = "postgres", ["ConnectionStrings__GreenLedger"] = database.Connection };
        await using var node = await new RunningNode(image, settings, "--demo").ReadyAsync();
        using var client = Client(node, new CookieContainer());

        var said = node.Log().Split('\n', StringSplitOptions.TrimEntries);
        var opened = Assert.Single(said, line => line.StartsWith("open: ", StringComparison.Ordinal));
        var token = Assert.Single(said, line => line.StartsWith("token: ", StringComparison.Ordinal))["token: ".Length..];
        var (email, password) = said.First(line => line.StartsWith("sign in: ", StringComparison.Ordinal))["sign in: ".Length..].Split(" / ") is [var who, var word] ? (who, word) : ("", "");
        await new TestBrowser(client).SignInAsync(email, password);
        using var asked = new HttpRequestMessage(HttpMethod.Get, "/api/search?q=washed");
        asked.Headers.Authorization = new("Bearer", token);
        var answer = await client.SendAsync(asked, TestContext.Current.CancellationToken);

        Assert.EndsWith($":{node.Port}", opened, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("ledger.pfx", "open sesame")]
    [InlineData("ledger.pem", null)]
    public async Task A_node_with_a_certificate_speaks_HTTPS_with_it(string name, string? password)
    {
        using var certificate = SelfSigned();
        var file = Path.Combine(Directory.CreateTempSubdirectory("greenledger-certificate-").FullName, name);
        await File.WriteAllBytesAsync(file, password is null ? Pem(certificate) : certificate.Export(X509ContentType.Pkcs12, password), TestContext.Current.CancellationToken);
        var port = RunningNode.FreePort();
        var settings = new Dictionary<string, string> { ["GreenLedger__Certificate"] = file, ["GreenLedger__CertificatePassword"] = password ?? "", ["ASPNETCORE_HTTPS_PORTS"] = $"{port}" };
        await using var node = await new RunningNode(image, settings).ReadyAsync();
        var shown = "";
        using var client = new HttpClient(new HttpClientHandler
        {
            AllowAutoRedirect = false,
            ServerCertificateCustomValidationCallback = (_, presented, _, _) => (shown = presented?.Thumbprint ?? "").Length > 0,
        });

        var answer = await client.GetAsync(new Uri($"https://127.0.0.1:{port}/health"), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(certificate.Thumbprint, shown);
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
    }

    private static X509Certificate2 SelfSigned()
    {
        using var key = RSA.Create(2048);
        return new CertificateRequest("CN=ledger.example", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1)
            .CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
    }

    private static byte[] Pem(X509Certificate2 certificate) =>
        Encoding.ASCII.GetBytes(certificate.ExportCertificatePem() + "\n" + certificate.GetRSAPrivateKey()!.ExportPkcs8PrivateKeyPem() + "\n");

    private static HttpClient Client(RunningNode node, CookieContainer cookies) =>
        new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = cookies }) { BaseAddress = node.Address };

    private static Dictionary<string, string> FirstAccount() => new()
    {
        ["Input.House"] = "Sorrel Roasters",
        ["Input.Currency"] = "EUR",
        ["Input.Name"] = "Imke Adler",
        ["Input.Email"] = "imke@sorrel-roasters.example",
        ["Input.Password"] = "a spoon of washed beans",
    };
}

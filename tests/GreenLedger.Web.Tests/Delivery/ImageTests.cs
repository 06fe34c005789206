using System.Net;

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

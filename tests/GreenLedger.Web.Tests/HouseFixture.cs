using System.Collections.Concurrent;
using GreenLedger.Data;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace GreenLedger.Web.Tests;

/// <summary>
/// A whole application on a temporary SQLite file with the real migrations, and one person for each role. Tests of a
/// class share it through <c>IClassFixture&lt;HouseFixture&gt;</c>.
/// </summary>
public sealed class HouseFixture : WebApplicationFactory<FormPage>
{
    public const string Password = "a spoon of washed beans";

    /// <summary>Of the person who opened the house and may do everything.</summary>
    public const string OwnerEmail = "owner@sorrel-roasters.example";

    private static readonly Lazy<Task<byte[]>> Opened = new(NewlyOpenedAsync);

    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-").FullName;
    private readonly ConcurrentDictionary<Role, Task<TestBrowser>> _browsers = new();
    private readonly SemaphoreSlim _once = new(1);
    private bool _isOpen;
    private bool _isServed;
    private bool _isStarted;
    private byte[]? _opened;

    /// <summary>Settings of this application, before it starts.</summary>
    public Dictionary<string, string> Settings { get; } = new() { ["GreenLedger:SignInsPerMinute"] = "1000" };

    /// <summary>A ledger to begin from, which has a person for each role; none for an empty one.</summary>
    public string? Ledger { get; init; }

    /// <summary>Puts something of a test in the place of a part of the application, before it starts.</summary>
    public Action<IServiceCollection>? Replaces { get; set; }

    public static string EmailOf(Role role) => role.ToString().ToLowerInvariant() + "@sorrel-roasters.example";

    /// <summary>A signed-in person of this role alone; the same one on every call.</summary>
    public Task<TestBrowser> BrowserAsync(Role role) => _browsers.GetOrAdd(role, async one =>
    {
        await OpenHouseAsync();
        var browser = Visitor();
        await browser.SignInAsync(EmailOf(one), Password);
        return browser;
    });

    /// <summary>Nobody signed in; redirects are not followed.</summary>
    public TestBrowser Visitor() => new(Asker());

    /// <summary>A script that shows the token of a person with this role.</summary>
    public async Task<HttpClient> ScriptAsync(Role role)
    {
        await OpenHouseAsync();
        var token = BearerTokens.New();
        await InLedgerAsync(async db =>
        {
            var email = EmailOf(role);
            var owner = await db.Users.Where(account => account.Email == email).Select(account => account.PersonId).SingleAsync();
            db.ApiTokens.Add(new ApiToken(owner, "test", BearerTokens.Hash(token), DateTimeOffset.UtcNow));
            await db.SaveChangesAsync();
        });
        var client = Asker();
        client.DefaultRequestHeaders.Authorization = new("Bearer", token);
        return client;
    }

    /// <summary>Starts the application on a real port, where a browser can open it; once, however often it is asked.</summary>
    public HouseFixture Serve()
    {
        if (!_isServed)
        {
            UseKestrel(0);
            StartServer();
            _isServed = true;
        }

        return this;
    }

    /// <summary>Reads or fills the application's own database.</summary>
    public async Task InLedgerAsync(Func<LedgerContext, Task> work)
    {
        await using var scope = Services.CreateAsyncScope();
        await work(scope.ServiceProvider.GetRequiredService<LedgerContext>());
    }

    public async Task<T> FromLedgerAsync<T>(Func<LedgerContext, Task<T>> read)
    {
        await using var scope = Services.CreateAsyncScope();
        return await read(scope.ServiceProvider.GetRequiredService<LedgerContext>());
    }

    /// <summary>
    /// Makes the house "Sorrel Roasters" (EUR) with a person for each role, once. An application that has not started
    /// yet starts on a copy of such a house, which spares it migrations and seven passwords.
    /// </summary>
    public async Task OpenHouseAsync()
    {
        await _once.WaitAsync();
        try
        {
            if (!_isOpen && Ledger is null && _isStarted)
            {
                await FillAsync();
            }
            else if (!_isOpen && Ledger is null)
            {
                _opened = await Opened.Value;
            }

            _isOpen = true;
        }
        finally
        {
            _once.Release();
        }
    }

    /// <summary>A person for each role, with the password of all.</summary>
    public async Task AddRolesAsync()
    {
        await using var scope = Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<Accounts>();
        foreach (var role in Enum.GetValues<Role>().Where(role => role != Role.None))
        {
            await accounts.AddAsync(new Person("A " + role, role), EmailOf(role), Password);
        }
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        _isStarted = true;
        if (Ledger is not null)
        {
            File.Copy(Ledger, Path.Combine(_folder, "ledger.db"));
        }
        else if (_opened is not null)
        {
            File.WriteAllBytes(Path.Combine(_folder, "ledger.db"), _opened);
        }

        builder.UseEnvironment("Production");
        builder.ConfigureLogging(log => log
            .AddFilter("Microsoft.Hosting", LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error) // keys of a test lie in its own file
            .AddFilter("Microsoft.AspNetCore.Mvc.Filters.RequestSizeLimitFilter", LogLevel.Error) // the test server has no limit to set
            .AddFilter("Microsoft.AspNetCore.Routing.EndpointRoutingMiddleware", LogLevel.Error)); // nor here
        builder.UseSetting("GreenLedger:Data", _folder);
        builder.ConfigureTestServices(services => Replaces?.Invoke(services));
        foreach (var (key, value) in Settings)
        {
            builder.UseSetting(key, value);
        }
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing && Directory.Exists(_folder))
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(_folder, recursive: true);
        }
    }

    /// <summary>The factory's own client follows redirects where the application is on a port.</summary>
    private HttpClient Asker() => _isServed
        ? new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = ClientOptions.BaseAddress }
        : CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });

    private static async Task<byte[]> NewlyOpenedAsync()
    {
        await using var house = new HouseFixture();
        await house.FillAsync();
        var copy = Path.Combine(house._folder, "opened.db");
        await house.InLedgerAsync(db => db.Database.ExecuteSqlAsync($"VACUUM INTO {copy}"));
        return await File.ReadAllBytesAsync(copy);
    }

    private async Task FillAsync()
    {
        await using var scope = Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<NewHouse>().OpenAsync(
            "Sorrel Roasters", Currency.Eur, "Imke Adler", OwnerEmail, Password, CancellationToken.None);
        await AddRolesAsync();
    }
}

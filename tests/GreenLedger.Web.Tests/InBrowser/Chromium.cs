using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// The machine's own Chromium, started once for all tests. Without one a browser test is skipped, saying why;
/// <c>tests/run</c> installs it.
/// </summary>
public sealed class Chromium : IAsyncLifetime
{
    public const int Wide = 1280;
    public const int Phone = 360;

    /// <summary>Milliseconds; long, since a busy machine is no fault of the page.</summary>
    private const float Patience = 180_000;

    private static readonly string[] Names = ["chromium", "chromium-browser"];
    private static readonly string[] Flags =
    [
        "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
    ];

    private readonly SemaphoreSlim _once = new(1);
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    /// <summary>A browser window of its own, with no cookies yet. Anything wrong on its pages lands in the complaints.</summary>
    public async Task<Window> OpenAsync(Uri site, int width = Wide, bool runsScripts = true)
    {
        var browser = await BrowserAsync();
        var context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = site.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = width == Phone ? 740 : 900 },
            HasTouch = width == Phone,
            JavaScriptEnabled = runsScripts,
            ReducedMotion = ReducedMotion.Reduce,
            Locale = "en-GB",
            TimezoneId = "Europe/Berlin",
        });
        context.SetDefaultTimeout(Patience);
        return new Window(context, await context.NewPageAsync());
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
        _once.Dispose();
    }

    private async Task<IBrowser> BrowserAsync()
    {
        var program = Find();
        Assert.SkipWhen(program is null, "No Chromium on this machine: install it, or run tests/run, which does.");
        await _once.WaitAsync();
        try
        {
            _playwright ??= await Playwright.CreateAsync();
            if (_browser is not { IsConnected: true })
            {
                _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
                {
                    ExecutablePath = program,
                    Args = Environment.UserName == "root" ? [.. Flags, "--no-sandbox"] : Flags,
                });
            }

            return _browser;
        }
        finally
        {
            _once.Release();
        }
    }

    private static string? Find() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => Names.Select(name => Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists);
}

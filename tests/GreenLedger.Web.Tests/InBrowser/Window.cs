using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>One window: its page, and what the browser complained about (scripts, the content policy, missing files).</summary>
public sealed class Window : IAsyncDisposable
{
    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    private readonly IBrowserContext _context;
    private readonly List<string> _complaints = [];

    public Window(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                _complaints.Add($"{message.Type}: {message.Text}");
            }
        };
        page.PageError += (_, error) => _complaints.Add($"script: {error}");
    }

    public IPage Page { get; }

    /// <summary>Opens the address, and waits until the page and its files are there.</summary>
    public async Task<IResponse> GoAsync(string address)
    {
        _complaints.Clear();
        return (await Page.GotoAsync(address, new PageGotoOptions { WaitUntil = WaitUntilState.Load }))!;
    }

    public async Task SignInAsync(string email, string password)
    {
        await GoAsync("/Entrance/SignIn");
        await Page.Locator("[name='Input.Email']").FillAsync(email);
        await Page.Locator("[name='Input.Password']").FillAsync(password);
        await Page.Locator("main form button.btn-primary").First.ClickAsync();
        await Page.WaitForURLAsync(url => !url.Contains("/Entrance/SignIn", StringComparison.Ordinal));
    }

    /// <summary>Asks without the browser, which is slower, but as whoever is signed in here; redirects are not followed.</summary>
    public async Task<HttpClient> AskerAsync(Uri site)
    {
        var client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = site };
        var cookies = (await _context.CookiesAsync()).Select(cookie => $"{cookie.Name}={cookie.Value}").ToList();
        if (cookies.Count > 0)
        {
            client.DefaultRequestHeaders.Add("Cookie", string.Join("; ", cookies));
        }

        return client;
    }

    public Task WidenAsync(int width) => Page.SetViewportSizeAsync(width, width == Chromium.Phone ? 740 : 900);

    /// <summary>What the browser said since the page was opened, and takes it as read.</summary>
    public IReadOnlyList<string> Complaints()
    {
        var said = _complaints.ToList();
        _complaints.Clear();
        return said;
    }

    /// <summary>How far the page can be pushed sideways, in pixels: 0 where everything fits.</summary>
    public async Task<int> SidewaysAsync() => await Page.EvaluateAsync<int>(
        "() => document.documentElement.scrollWidth - document.documentElement.clientWidth");

    /// <summary>
    /// Takes from long lists and tables what repeats: of rows with the same elements, classes and roles the first four stay,
    /// so that a scan looks at every kind of row and not at the hundredth of its kind. What is chosen in a list stays.
    /// </summary>
    public async Task DropRepeatsAsync() => await Page.EvaluateAsync("""
        () => {
            const shape = element => [element.tagName, element.getAttribute('class'), element.getAttribute('role'), element.type, element.disabled,
                element.getAttribute('aria-current'), '(', ...[...element.children].map(shape), ')'].join(' ');
            for (const whole of [...document.querySelectorAll('main *')].filter(element => element.children.length > 8 && !element.closest('svg'))) {
                const seen = new Map();
                for (const part of [...whole.children].filter(element => !element.selected)) {
                    const kind = shape(part);
                    seen.set(kind, (seen.get(kind) ?? 0) + 1);
                    if (seen.get(kind) > 4) part.remove();
                }
            }
        }
        """);

    /// <summary>
    /// Each violation of WCAG and of good practice that axe finds, with the element. Our pages have no frames inside, so
    /// axe is put into the page once and asked there; what it would compute beyond the violations is left out.
    /// </summary>
    public async Task<IReadOnlyList<string>> ViolationsAsync()
    {
        if (await Page.EvaluateAsync<bool>("() => window.axe === undefined"))
        {
            await Page.EvaluateAsync(Axe);
        }

        return await Page.EvaluateAsync<string[]>("""
            async () => (await axe.run(document, { resultTypes: ['violations'], selectors: false })).violations
                .flatMap(violation => violation.nodes.map(node => `${violation.id}: ${violation.help}: ${node.html}`))
            """);
    }

    public async ValueTask DisposeAsync() => await _context.CloseAsync();
}

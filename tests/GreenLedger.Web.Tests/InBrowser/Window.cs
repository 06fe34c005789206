using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>One window: its page, and what the browser complained about (scripts, the content policy, missing files).</summary>
public sealed class Window : IAsyncDisposable
{
    private static readonly AxeRunOptions OnlyViolations = new() { ResultTypes = [ResultType.Violations] };

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

    public IAPIRequestContext Requests => _context.APIRequest;

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

    /// <summary>Each violation of WCAG and of good practice that axe finds, with the element.</summary>
    public async Task<IReadOnlyList<string>> ViolationsAsync()
    {
        var found = await Page.RunAxe(OnlyViolations);
        return [.. found.Violations.SelectMany(violation =>
            violation.Nodes.Select(node => $"{violation.Id}: {violation.Help}: {node.Html}"))];
    }

    public async ValueTask DisposeAsync() => await _context.CloseAsync();
}

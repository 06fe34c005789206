using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// Asks for every page as one person after another and writes down what is wrong. What a person is shown is opened in the
/// browser, wide and on a phone, unless its markup was already opened for somebody else: the page's own part and the frame
/// around it (menus, name) are told apart, and whichever is new is looked at.
/// </summary>
internal sealed partial class Crawl(IReadOnlyList<PageRoute> routes, RealIds ids)
{
    private const int RefusalsThatSettleIt = 3;

    private readonly HashSet<string> _seen = [];

    /// <summary>Pages that somebody was shown.</summary>
    public HashSet<string> Shown { get; } = [];

    /// <summary>Who saw what, and what was wrong.</summary>
    public List<string> Faults { get; } = [];

    public async Task VisitAllAsync(Window window, string who)
    {
        foreach (var route in routes)
        {
            if (await FindAsync(window, route, who) is not { } page)
            {
                continue;
            }

            Shown.Add(route.Page);
            if (page.Markup is { } markup && IsNew(markup))
            {
                await VisitAsync(window, page.Address, $"{who} at {page.Address}");
            }
        }
    }

    /// <summary>The first address of the page that answers for this person; a download has no markup.</summary>
    private async Task<(string Address, string? Markup)?> FindAsync(Window window, PageRoute route, string who)
    {
        var refusals = 0;
        foreach (var address in await ids.AddressesAsync(route))
        {
            var answer = await window.Requests.GetAsync(address, new APIRequestContextOptions { MaxRedirects = 0 });
            if (answer.Status >= 500)
            {
                Faults.Add($"{who} at {address}: answered {answer.Status}");
                return null;
            }

            if (answer.Status == 200 || route.Page == "/Error")
            {
                return (address, IsPage(answer) ? await answer.TextAsync() : null);
            }

            if (answer.Status is 403 or 302 && ++refusals == RefusalsThatSettleIt)
            {
                return null;
            }
        }

        return null;
    }

    private static bool IsPage(IAPIResponse answer) =>
        answer.Headers.TryGetValue("content-type", out var type) && type.StartsWith("text/html", StringComparison.Ordinal);

    private bool IsNew(string markup)
    {
        var plain = Changing().Replace(markup, "");
        var (start, end) = (plain.IndexOf("<main", StringComparison.Ordinal), plain.IndexOf("</main>", StringComparison.Ordinal));
        return start < 0 || end < start
            ? _seen.Add(plain)
            : _seen.Add(plain[start..end]) | _seen.Add(Titles().Replace(plain[..start], "") + plain[end..]);
    }

    private async Task VisitAsync(Window window, string address, string where)
    {
        await window.WidenAsync(Chromium.Wide);
        await window.GoAsync(address);
        await CheckAsync(window, $"{where}, wide");
        await window.WidenAsync(Chromium.Phone);
        await CheckAsync(window, $"{where}, {Chromium.Phone} px");
        if (await window.SidewaysAsync() is > 0 and var pixels)
        {
            Faults.Add($"{where}, {Chromium.Phone} px: can be pushed {pixels} pixels sideways");
        }
    }

    private async Task CheckAsync(Window window, string where)
    {
        var faults = (await window.ViolationsAsync()).Concat(window.Complaints());
        Faults.AddRange(faults.Select(fault => $"{where}: {fault}"));
    }

    /// <summary>What differs each time or on each page without being another frame: form tokens, the menu's place.</summary>
    [GeneratedRegex("CfDJ8[\\w-]+| aria-current=\"[a-z]+\"")]
    private static partial Regex Changing();

    [GeneratedRegex("<title>.*?</title>", RegexOptions.Singleline)]
    private static partial Regex Titles();
}

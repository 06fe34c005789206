using System.Net;
using System.Text.RegularExpressions;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// Asks for every page as one person after another and writes down what is wrong. What a person is shown is opened in the
/// browser, wide and on a phone, unless its markup was already opened for somebody else: the page with its files and the
/// menus above it are told apart, and whichever is new is looked at.
/// </summary>
internal sealed partial class Crawl(IReadOnlyList<PageRoute> routes, RealIds ids)
{
    /// <summary>More than the open sessions of the filled house, whose results lead to their tables.</summary>
    private const int RefusalsThatSettleIt = 6;

    private readonly HashSet<string> _seen = [];

    /// <summary>Which page was shown to whom.</summary>
    public HashSet<(string Page, string Who)> Shown { get; } = [];

    /// <summary>Who saw what, and what was wrong.</summary>
    public List<string> Faults { get; } = [];

    /// <summary>A test's last line: every fault in full, since a list of them would be cut short.</summary>
    public void FoundNothing() => Assert.True(Faults.Count == 0, string.Join('\n', Faults));

    /// <param name="name">As the masthead says it: menus are no other ones because somebody else's name stands in them.</param>
    public async Task VisitAllAsync(Window window, HttpClient asker, string who, string name = "")
    {
        foreach (var route in routes)
        {
            if (await FindAsync(asker, route, who) is not { } page)
            {
                continue;
            }

            Shown.Add((route.Page, who));
            if (page.Markup is { } markup && IsNew(markup, name))
            {
                await VisitAsync(window, page.Address, $"{who} at {page.Address}");
            }
        }
    }

    /// <summary>The first address of the page that answers for this person; a download has no markup.</summary>
    private async Task<(string Address, string? Markup)?> FindAsync(HttpClient asker, PageRoute route, string who)
    {
        var refusals = 0;
        foreach (var address in await ids.AddressesAsync(route))
        {
            using var answer = await asker.GetAsync(new Uri(address, UriKind.Relative));
            if (answer.StatusCode >= HttpStatusCode.InternalServerError)
            {
                Faults.Add($"{who} at {address}: answered {(int)answer.StatusCode}");
                return null;
            }

            if (answer.StatusCode == HttpStatusCode.OK || route.Page == "/Error")
            {
                return (address, answer.Content.Headers.ContentType?.MediaType == "text/html" ? await answer.Content.ReadAsStringAsync() : null);
            }

            if (answer.StatusCode is HttpStatusCode.Forbidden or HttpStatusCode.Redirect && ++refusals == RefusalsThatSettleIt)
            {
                return null;
            }
        }

        return null;
    }

    private bool IsNew(string markup, string name)
    {
        var plain = Titles().Replace(Changing().Replace(markup, ""), "");
        var (body, main) = (plain.IndexOf("<body", StringComparison.Ordinal), plain.IndexOf("<main", StringComparison.Ordinal));
        if (body < 0 || main < body)
        {
            return _seen.Add(plain);
        }

        var menus = plain[body..main];
        return _seen.Add(plain[..body] + plain[main..]) | _seen.Add(name.Length == 0 ? menus : menus.Replace(name, "", StringComparison.Ordinal));
    }

    private async Task VisitAsync(Window window, string address, string where)
    {
        await window.WidenAsync(Chromium.Phone);
        await window.GoAsync(address);
        if (await window.SidewaysAsync() is > 0 and var pixels)
        {
            Faults.Add($"{where}, {Chromium.Phone} px: can be pushed {pixels} pixels sideways");
        }

        await window.DropRepeatsAsync();
        await CheckAsync(window, $"{where}, {Chromium.Phone} px");
        await window.WidenAsync(Chromium.Wide);
        await CheckAsync(window, $"{where}, wide");
    }

    private async Task CheckAsync(Window window, string where)
    {
        var faults = (await window.ViolationsAsync()).Concat(window.Complaints());
        Faults.AddRange(faults.Select(fault => $"{where}: {fault}"));
    }

    /// <summary>What differs each time or on each page without being another one: form tokens, the menu's place.</summary>
    [GeneratedRegex("CfDJ8[\\w-]+| aria-current=\"[a-z]+\"")]
    private static partial Regex Changing();

    [GeneratedRegex("<title>.*?</title>", RegexOptions.Singleline)]
    private static partial Regex Titles();
}

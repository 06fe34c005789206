using System.Net;
using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.WebUtilities;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>Somebody signed in who asks the running application for everything, once for each route, and listens for what is sealed.</summary>
internal sealed partial class Insider(Walk walk, TestBrowser browser, Person person, SealedTable table, AskedWords words, IReadOnlyList<AskedRoute> routes)
{
    private readonly List<(string Page, IHtmlFormElement Form)> _forms = [];
    private string _token = "";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Asks every route that is read, with all that it can be told of the sealed coffee.</summary>
    public async Task ReadAllAsync()
    {
        _token = (await browser.ReadAsync("/")).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        foreach (var route in routes.Where(one => one.IsRead))
        {
            await ReadAsync(route);
        }
    }

    /// <summary>Sends every form that a page showed as it stands, and tries every act of a page or of the API without one.</summary>
    public async Task TryAllAsync()
    {
        foreach (var (address, fields) in _forms.Where(one => !IsOfSignIn(one.Page)).SelectMany(one => Sendings(one.Page, one.Form)).Where(one => walk.IsFirstToSend(Identity().Replace(one.Address, ""))))
        {
            using var content = new FormUrlEncodedContent(fields);
            await SendAsync(NameOf(address), HttpMethod.Post, address, content);
        }

        foreach (var route in routes.Where(one => !one.IsRead && !IsOfSignIn(one.Name)))
        {
            await ActAsync(route);
        }
    }

    /// <summary>What signs in and out would end the walk; none of it is about coffee.</summary>
    public static bool IsOfSignIn(string name) =>
        !name.StartsWith("GET", StringComparison.Ordinal) && (name.Contains("/Entrance/", StringComparison.Ordinal) || name.Contains("/Myself", StringComparison.Ordinal));

    private async Task ReadAsync(AskedRoute route)
    {
        // Once a route has answered, or is not for this person, only what is sealed is asked of it; what somebody was answered is asked first.
        var (isSettled, isOpen) = (false, true);
        Dictionary<string, string>? first = null;
        var needed = await words.NeededAsync(route);
        foreach (var values in walk.Answered.TryGetValue(route.Name, out var known) && !words.IsTelling(known) ? needed.Where(words.IsTelling).Append(known) : needed)
        {
            if (isOpen && (!isSettled || words.IsTelling(values)))
            {
                var status = await GetAsync(route, values);
                first ??= values;
                if (status is HttpStatusCode.OK or HttpStatusCode.Redirect)
                {
                    isSettled = true;
                    walk.Answered.TryAdd(route.Name, values);
                }

                isOpen = status != HttpStatusCode.Forbidden;
            }
        }

        // Who the asker is decides in one place what is sealed; what is asked besides is tried by the first, and a search by everybody.
        foreach (var values in first is null || !isOpen ? [] : await words.BesidesAsync(route, first, onlySearches: !walk.IsFirstToSend(route.Name)))
        {
            await GetAsync(route, values);
        }
    }

    private async Task ActAsync(AskedRoute route)
    {
        // An act that somebody reached needs no search for the record that it is for.
        var needed = await words.NeededAsync(route);
        foreach (var values in walk.Reached.ContainsKey(route.Name) ? needed.Take(1) : needed)
        {
            using var content = route.IsPage ? new FormUrlEncodedContent([new("__RequestVerificationToken", _token)]) : await new RequestBody(table, words).OfAsync(route.Body);
            if (await SendAsync(route.Name, new HttpMethod(route.Method), route.Address(await words.WithIdsAsync(route, values)), content) != HttpStatusCode.NotFound)
            {
                return;
            }
        }
    }

    private async Task<HttpStatusCode> GetAsync(AskedRoute route, IReadOnlyDictionary<string, string> values)
    {
        var address = route.Address(values);
        using var answer = await browser.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
        await walk.HearAsync(person, route.Name, address, answer, other => browser.Client.GetAsync(new Uri(other, UriKind.Relative), Stop));
        if (route.IsPage && answer.StatusCode == HttpStatusCode.OK && answer.Content.Headers.ContentType?.MediaType == "text/html" && _forms.TrueForAll(one => PageOf(one.Page) != PageOf(address)))
        {
            _forms.AddRange((await TestBrowser.PageAsync(answer)).Forms
                .Where(form => form.Method == "post" && form.GetAttribute("action")?.Contains("/Entrance/", StringComparison.Ordinal) != true).Select(form => (address, form)));
        }

        return answer.StatusCode;
    }

    private async Task<HttpStatusCode> SendAsync(string name, HttpMethod method, string address, HttpContent? content)
    {
        using var request = new HttpRequestMessage(method, address) { Content = content };
        request.Headers.Add("RequestVerificationToken", _token);
        using var answer = await browser.Client.SendAsync(request, Stop);
        await walk.HearAsync(person, name, address, answer, null);
        return answer.StatusCode;
    }

    /// <summary>The form by each of its buttons, with its fields as they stand.</summary>
    private static IEnumerable<(string Address, List<KeyValuePair<string, string>> Fields)> Sendings(string page, IHtmlFormElement form)
    {
        var fields = TestBrowser.Standing(form).Select(field => new KeyValuePair<string, string>(field.Name, field.Value)).ToList();
        var action = form.GetAttribute("action") is { Length: > 0 } own ? own : page;
        return form.QuerySelectorAll("button[formaction]").Select(button => button.GetAttribute("formaction")!).Prepend(action).Distinct().Select(address => (address, fields));
    }

    /// <summary>What a form is sent to, as its route is called: the form knows what the handler needs.</summary>
    private static string NameOf(string address)
    {
        var parts = address.Split('?');
        var handler = parts.Length > 1 ? QueryHelpers.ParseQuery(parts[1])["handler"].ToString() : "";
        return $"POST {PageOf(address).TrimEnd('/')}{(handler.Length == 0 ? "" : "?handler=" + handler)}";
    }

    /// <summary>The page of an address, whatever record it shows.</summary>
    private static string PageOf(string address) => Identity().Replace(address.Split('?')[0], "");

    [GeneratedRegex("[0-9a-f]{8}-[0-9a-f-]{27}")]
    private static partial Regex Identity();
}

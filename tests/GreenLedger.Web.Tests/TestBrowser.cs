using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace GreenLedger.Web.Tests;

/// <summary>Reads pages and sends their forms as a browser does, with the form's own hidden fields.</summary>
public sealed class TestBrowser(HttpClient client)
{
    private static readonly HtmlParser Html = new();

    public HttpClient Client => client;

    public async Task<IHtmlDocument> ReadAsync(string address)
    {
        var answer = await client.GetAsync(address);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"GET {address} answered {(int)answer.StatusCode} {answer.Headers.Location}");
        return await PageAsync(answer);
    }

    public static async Task<IHtmlDocument> PageAsync(HttpResponseMessage answer) =>
        await Html.ParseDocumentAsync(await answer.Content.ReadAsStringAsync());

    /// <summary>
    /// Opens the page, fills the form that has these fields (or the one sent to <paramref name="handler"/>), sends it.
    /// The answer is not followed: a redirect says that it was taken. <paramref name="to"/> is another address to send it to.
    /// </summary>
    public async Task<HttpResponseMessage> SendFormAsync(
        string address,
        IReadOnlyDictionary<string, string> fields,
        string? handler = null,
        IEnumerable<(string Field, string Name, byte[] Bytes)>? files = null,
        string? to = null) => await SendStandingAsync(await ReadAsync(address), address, fields, handler, files, to);

    /// <summary>The same on a page that was opened before.</summary>
    public async Task<HttpResponseMessage> SendStandingAsync(
        IHtmlDocument page,
        string address,
        IReadOnlyDictionary<string, string> fields,
        string? handler = null,
        IEnumerable<(string Field, string Name, byte[] Bytes)>? files = null,
        string? to = null)
    {
        var form = page.Forms.FirstOrDefault(one => Fits(one, fields, handler))
            ?? throw new InvalidOperationException($"{address} has no such form.");
        var content = new MultipartFormDataContent();
        foreach (var (name, value) in Filled(form, fields))
        {
            content.Add(new StringContent(value), name);
        }

        foreach (var (field, name, bytes) in files ?? [])
        {
            content.Add(new ByteArrayContent(bytes), field, name);
        }

        var target = to ?? ButtonOf(form, handler)?.GetAttribute("formaction") ?? (form.GetAttribute("action") is { Length: > 0 } action ? action : address);
        return await client.PostAsync(new Uri(target, UriKind.RelativeOrAbsolute), content);
    }

    /// <summary>Presses a button of a form without fields, which is sent to this address.</summary>
    public async Task<HttpResponseMessage> PostAsync(string address)
    {
        var token = (await ReadAsync("/")).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token)]);
        return await client.PostAsync(new Uri(address, UriKind.Relative), form);
    }

    public async Task SignInAsync(string email, string password)
    {
        var answer = await SendFormAsync(
            "/Entrance/SignIn", new Dictionary<string, string> { ["Input.Email"] = email, ["Input.Password"] = password });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    /// <summary>The fields of a form as a browser would send them when nothing is typed.</summary>
    public static IEnumerable<(string Name, string Value)> Standing(IHtmlFormElement form)
    {
        foreach (var control in form.Elements)
        {
            if (control.GetAttribute("name") is { Length: > 0 } name && ValueOf(control) is { } value)
            {
                yield return (name, value);
            }
        }
    }

    private static bool Fits(IHtmlFormElement form, IReadOnlyDictionary<string, string> fields, string? handler)
    {
        var action = form.GetAttribute("action") ?? "";
        return handler is not null
            ? action.Contains("handler=" + handler, StringComparison.OrdinalIgnoreCase) || ButtonOf(form, handler) is not null
            : fields.Keys.All(name => form.Elements.Any(control => control.GetAttribute("name") == name));
    }

    /// <summary>A button that sends its form to a handler of its own.</summary>
    private static AngleSharp.Dom.IElement? ButtonOf(IHtmlFormElement form, string? handler) => handler is null
        ? null
        : form.QuerySelectorAll("button[formaction]").FirstOrDefault(button =>
            button.GetAttribute("formaction")!.Contains("handler=" + handler, StringComparison.OrdinalIgnoreCase));

    private static IEnumerable<(string Name, string Value)> Filled(IHtmlFormElement form, IReadOnlyDictionary<string, string> fields) =>
        [.. fields.Select(field => (field.Key, field.Value)), .. Standing(form).Where(field => !fields.ContainsKey(field.Name))];

    private static string? ValueOf(AngleSharp.Dom.IElement control) => control switch
    {
        IHtmlInputElement { Type: "checkbox" or "radio", IsChecked: false } => null,
        IHtmlInputElement { Type: "submit" or "file" or "button" } => null,
        IHtmlInputElement input => input.Value,
        IHtmlSelectElement select => select.Value,
        IHtmlTextAreaElement text => text.Value,
        _ => null,
    };
}

using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>Fills and sends the forms of the page that a window shows, as a person would.</summary>
internal sealed class Forms(Window window)
{
    public IPage Page => window.Page;

    public async Task GoAsync(string address)
    {
        var answer = await window.GoAsync(address);
        Assert.True(answer.Ok, $"{address} answered {answer.Status}.");
    }

    /// <summary>Follows a link of the page and waits for the next one.</summary>
    public async Task FollowAsync(string selector)
    {
        var address = await Page.Locator(selector).First.GetAttributeAsync("href");
        await GoAsync(address!);
    }

    public Task FillAsync(string field, string text) => Page.Locator($"[name='Input.{field}']").FillAsync(text);

    public async Task FillAsync(params (string Field, string Text)[] fields)
    {
        foreach (var (field, text) in fields)
        {
            await FillAsync(field, text);
        }
    }

    public Task ChooseAsync(string field, string value) => Page.Locator($"[name='Input.{field}']").SelectOptionAsync(value);

    /// <summary>Presses the button and waits for the page that follows. A refused form is a failure that quotes it.</summary>
    public async Task SendAsync(string button)
    {
        await PressAsync(button);
        var refused = await RefusalsAsync();
        Assert.True(refused.Length == 0, $"“{button}” was refused at {Page.Url}: {refused}");
        Assert.Empty(window.Complaints());
        Assert.Equal(0, await window.SidewaysAsync());
    }

    /// <summary>Presses the button of a form that will be refused; what the page then says about it.</summary>
    public async Task<string> RefusedAsync(string button)
    {
        await PressAsync(button);
        return await RefusalsAsync();
    }

    /// <summary>What stands there, with one space between words.</summary>
    public async Task<string> ReadAsync(string selector) =>
        string.Join(' ', (await Page.Locator(selector).First.InnerTextAsync()).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Presses a link that hands over a file, and gives its name and its bytes.</summary>
    public async Task<(string Name, byte[] Bytes)> DownloadAsync(string selector)
    {
        var download = await Page.RunAndWaitForDownloadAsync(() => Page.Locator(selector).ClickAsync());
        await using var stream = await download.CreateReadStreamAsync();
        using var copy = new MemoryStream();
        await stream.CopyToAsync(copy);
        return (download.SuggestedFilename, copy.ToArray());
    }

    private async Task PressAsync(string button)
    {
        await Page.RunAndWaitForResponseAsync(
            () => Page.Locator("main button:not([aria-hidden])", new PageLocatorOptions { HasTextString = button }).First.ClickAsync(),
            answer => answer.Request.Method == "GET" ? answer.Request.IsNavigationRequest : answer.Request.IsNavigationRequest && answer.Status is not (302 or 303));
        await Page.WaitForLoadStateAsync(LoadState.Load);
    }

    private async Task<string> RefusalsAsync() =>
        string.Join(' ', await Page.Locator("main [data-errors], main .field-validation-error").AllInnerTextsAsync());
}

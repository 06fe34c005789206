using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// The pictures of the guide, taken while the main job is tested so that they stay true: in <c>docs/pictures</c> with
/// <c>GREENLEDGER_PICTURES=1</c>, in another folder when it names one, and not at all without it.
/// </summary>
internal static class Pictures
{
    private static readonly string? Folder = Environment.GetEnvironmentVariable("GREENLEDGER_PICTURES") switch
    {
        null or "" => null,
        "1" => Path.Combine(Delivery.Shell.Project(), "docs", "pictures"),
        var folder => folder,
    };

    /// <summary>What the window shows, from the part that the selector names downwards; else from the top.</summary>
    public static async Task TakeAsync(Window window, string name, string? from = null)
    {
        if (Folder is null)
        {
            return;
        }

        await (from is null
            ? window.Page.EvaluateAsync("() => window.scrollTo(0, 0)")
            : window.Page.Locator(from).First.EvaluateAsync("element => { element.scrollIntoView(); window.scrollBy(0, -16); }"));
        await window.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Folder, name + ".png"), Animations = ScreenshotAnimations.Disabled });
    }
}

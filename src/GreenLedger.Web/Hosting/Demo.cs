using GreenLedger.Data;
using GreenLedger.SeedDemo;

namespace GreenLedger.Web.Hosting;

/// <summary>
/// Starts the application on the demo: an empty ledger is filled, one that holds the demo is left as it is, and where
/// to go and how to sign in is printed, one thing a line.
/// </summary>
internal static class Demo
{
    public static async Task OpenDemoAsync(this WebApplication app)
    {
        await using var scope = app.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<LedgerContext>();
        var access = await DemoSeed.FillAsync(db, app.Services.GetRequiredService<TimeProvider>().GetUtcNow());
        app.Lifetime.ApplicationStarted.Register(() => Tell(app, access));
    }

    private static void Tell(WebApplication app, DemoAccess access)
    {
        Console.WriteLine($"open: {Reachable(app.Urls.First())}");
        foreach (var line in access.Lines)
        {
            Console.WriteLine(line);
        }

        if (access.SignIns.Count == 0)
        {
            Console.WriteLine(
                "This ledger holds something else than the demo and was left as it is. "
                + "For the demo, name an empty folder in GreenLedger__Data.");
        }
    }

    /// <summary>An address that listens everywhere is opened by the name of this machine.</summary>
    public static string Reachable(string url) => url
        .Replace("0.0.0.0", "localhost", StringComparison.Ordinal)
        .Replace("[::]", "localhost", StringComparison.Ordinal)
        .Replace("//+", "//localhost", StringComparison.Ordinal)
        .Replace("//*", "//localhost", StringComparison.Ordinal);
}

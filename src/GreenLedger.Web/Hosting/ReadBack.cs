using GreenLedger.Domain;
using GreenLedger.Web.Archive;
using GreenLedger.Web.People;

namespace GreenLedger.Web.Hosting;

/// <summary>Starts the application on a house that is read back from an archive, and prints for each administrator the link to a new password.</summary>
internal static class ReadBack
{
    /// <summary>False when nothing was read back; why is printed.</summary>
    public static async Task<bool> ReadBackAsync(this WebApplication app, string path)
    {
        await using var scope = app.Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<Accounts>();
        try
        {
            Rule.Require(File.Exists(path), $"There is no file {path}.");
            await using var file = File.OpenRead(path);
            var (house, administrators) = await scope.ServiceProvider.GetRequiredService<ReadingBack>().ReadBackAsync(file, CancellationToken.None);
            var links = new List<string>();
            foreach (var account in administrators)
            {
                links.Add($"{account.Email}: {{0}}/Entrance/Welcome?account={account.Id}&code={Uri.EscapeDataString(await accounts.LinkCodeAsync(account))}");
            }

            app.Lifetime.ApplicationStarted.Register(() => Tell(house, links, app.Urls.First()));
            return true;
        }
        catch (RuleBrokenException broken)
        {
            Console.Error.WriteLine(broken.Message);
            return false;
        }
    }

    private static void Tell(string house, List<string> links, string url)
    {
        Console.WriteLine($"read back: {house}. Passwords are not in an archive: each link works once, within a day.");
        foreach (var link in links)
        {
            Console.WriteLine($"choose a password: {link.Replace("{0}", Demo.Reachable(url), StringComparison.Ordinal)}");
        }
    }
}

using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace GreenLedger.Benchmarks.Hosting;

/// <summary>The built web application in a process of its own.</summary>
internal sealed class Node : IAsyncDisposable
{
    /// <summary>As the build left it, beside its own files.</summary>
    private static readonly string Application = AppContext.BaseDirectory
        .Replace($"{Path.DirectorySeparatorChar}benchmarks{Path.DirectorySeparatorChar}", $"{Path.DirectorySeparatorChar}src{Path.DirectorySeparatorChar}GreenLedger.Web{Path.DirectorySeparatorChar}", StringComparison.Ordinal) + "GreenLedger.Web.dll";

    private readonly Process _process;

    private Node(Process process, Uri address, double seconds)
    {
        (_process, Address, SecondsToFirstPage) = (process, address, seconds);
    }

    public Uri Address { get; }

    public double SecondsToFirstPage { get; }

    public double PeakMegabytes => Memory.PeakMegabytes(_process.Id);

    /// <summary>Starts it with these settings and waits for its first whole page.</summary>
    public static async Task<Node> StartAsync(IReadOnlyDictionary<string, string> settings)
    {
        var address = $"http://127.0.0.1:{FreePort()}";
        var start = new ProcessStartInfo("dotnet", [Application, "--urls", address]) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        var watch = Stopwatch.StartNew();
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        try
        {
            await FirstPageAsync(address, watch);
            return new Node(process, new Uri(address), watch.Elapsed.TotalSeconds);
        }
        catch
        {
            process.Kill(entireProcessTree: true);
            throw;
        }
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    /// <summary>The sign-in page, where the first page leads; asked for until somebody answers.</summary>
    private static async Task FirstPageAsync(string address, Stopwatch watch)
    {
        using var client = new HttpClient();
        while (true)
        {
            try
            {
                using var answer = await client.GetAsync(new Uri(address));
                var page = await answer.Content.ReadAsStringAsync();
                if (!answer.IsSuccessStatusCode || !page.Contains("</html>", StringComparison.Ordinal))
                {
                    throw new InvalidOperationException($"The first page answered {answer.StatusCode}.");
                }

                return;
            }
            catch (HttpRequestException) when (watch.Elapsed < TimeSpan.FromMinutes(2))
            {
                // Nobody listens yet.
                await Task.Delay(10);
            }
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}

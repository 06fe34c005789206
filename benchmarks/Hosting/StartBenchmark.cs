using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using GreenLedger.Benchmarks.Choosing;
using GreenLedger.SeedDemo;

namespace GreenLedger.Benchmarks.Hosting;

/// <summary>Starts the web application on a ledger that holds the demo and waits for its first page.</summary>
internal static class StartBenchmark
{
    /// <summary>As the build left it, beside its own files.</summary>
    private static readonly string Application = AppContext.BaseDirectory
        .Replace($"{Path.DirectorySeparatorChar}benchmarks{Path.DirectorySeparatorChar}", $"{Path.DirectorySeparatorChar}src{Path.DirectorySeparatorChar}GreenLedger.Web{Path.DirectorySeparatorChar}", StringComparison.Ordinal) + "GreenLedger.Web.dll";

    public static async Task<Dictionary<string, double>> PrepareAsync(string folder)
    {
        Directory.CreateDirectory(folder);
        await using var db = BigLedger.Open(Path.Combine(folder, "ledger.db"));
        var (seconds, _) = await Timing.OfAsync(() => DemoSeed.FillAsync(db, TimeProvider.System.GetUtcNow()));
        return new() { ["demo"] = seconds };
    }

    public static async Task<Dictionary<string, double>> RunAsync(string folder)
    {
        var (times, memories) = (new List<double>(), new List<double>());
        for (var run = 0; run <= Sizes.Repeats; run++)
        {
            var (seconds, memory) = await StartOnceAsync(folder);
            times.Add(seconds);
            memories.Add(memory);
        }

        return new() { ["first"] = times[0], ["start"] = Timing.Median(times.Skip(1)), ["memory"] = memories.Max() };
    }

    private static async Task<(double Seconds, double Memory)> StartOnceAsync(string folder)
    {
        var address = $"http://127.0.0.1:{FreePort()}";
        var start = new ProcessStartInfo("dotnet", [Application, "--urls", address]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["GreenLedger__Data"] = folder;
        var watch = Stopwatch.StartNew();
        using var web = Process.Start(start)!;
        web.OutputDataReceived += (_, _) => { };
        web.ErrorDataReceived += (_, _) => { };
        web.BeginOutputReadLine();
        web.BeginErrorReadLine();
        try
        {
            await FirstPageAsync(address, watch);
            return (watch.Elapsed.TotalSeconds, Memory.PeakMegabytes(web.Id));
        }
        finally
        {
            web.Kill(entireProcessTree: true);
            await web.WaitForExitAsync();
        }
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

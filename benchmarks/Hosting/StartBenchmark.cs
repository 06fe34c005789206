using GreenLedger.Benchmarks.Choosing;
using GreenLedger.SeedDemo;

namespace GreenLedger.Benchmarks.Hosting;

/// <summary>Starts the web application on a ledger that holds the demo and waits for its first page.</summary>
internal static class StartBenchmark
{
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
            await using var node = await Node.StartAsync(new Dictionary<string, string> { ["GreenLedger__Data"] = folder });
            times.Add(node.SecondsToFirstPage);
            memories.Add(node.PeakMegabytes);
        }

        return new() { ["first"] = times[0], ["start"] = Timing.Median(times.Skip(1)), ["memory"] = memories.Max() };
    }
}

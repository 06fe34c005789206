using System.Diagnostics;

namespace GreenLedger.Benchmarks;

internal static class Timing
{
    /// <summary>Processor time is that of all threads together.</summary>
    public static async Task<(double Seconds, double Processor, T Result)> MeasureAsync<T>(Func<Task<T>> work)
    {
        GC.Collect();
        var before = Environment.CpuUsage.TotalTime;
        var (seconds, result) = await OfAsync(work);
        return (seconds, (Environment.CpuUsage.TotalTime - before).TotalSeconds, result);
    }

    public static async Task<(double Seconds, T Result)> OfAsync<T>(Func<Task<T>> work)
    {
        var watch = Stopwatch.StartNew();
        var result = await work();
        return (watch.Elapsed.TotalSeconds, result);
    }

    public static (double Seconds, T Result) Of<T>(Func<T> work)
    {
        var watch = Stopwatch.StartNew();
        var result = work();
        return (watch.Elapsed.TotalSeconds, result);
    }

    public static double Median(IEnumerable<double> seconds)
    {
        var sorted = seconds.Order().ToArray();
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }
}

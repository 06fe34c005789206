using System.Globalization;
using System.Runtime.InteropServices;

namespace GreenLedger.Benchmarks;

/// <summary>What a reader must know of the machine, and nothing that tells whose it is.</summary>
internal static class Machine
{
    public static string Words() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Environment.ProcessorCount} cores, {GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 1024.0 / 1024 / 1024:0} GB, {Processor()}, {RuntimeInformation.FrameworkDescription}, load {Load()} at the start\n");

    private static string Processor() => File.Exists("/proc/cpuinfo")
        ? File.ReadLines("/proc/cpuinfo").FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))?.Split(':')[1].Trim() ?? "processor not named"
        : RuntimeInformation.ProcessArchitecture.ToString();

    private static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "not known";
}

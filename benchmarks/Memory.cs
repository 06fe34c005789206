using System.Diagnostics;
using System.Globalization;

namespace GreenLedger.Benchmarks;

/// <summary>The most memory that a program held at once, as the system counts it.</summary>
internal static class Memory
{
    public static double PeakMegabytes() => PeakMegabytes(Environment.ProcessId);

    public static double PeakMegabytes(int process)
    {
        var status = $"/proc/{process}/status";
        if (!File.Exists(status))
        {
            using var other = Process.GetProcessById(process);
            return other.PeakWorkingSet64 / 1024.0 / 1024;
        }

        var peak = File.ReadLines(status).First(line => line.StartsWith("VmHWM:", StringComparison.Ordinal));
        return double.Parse(peak.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024;
    }
}

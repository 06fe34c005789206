using System.Globalization;

namespace GreenLedger.Benchmarks;

/// <summary>A table as docs/performance.md takes it.</summary>
internal static class Table
{
    public static void Print(string title, IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows)
    {
        Console.WriteLine($"{title}\n");
        Console.WriteLine($"| {string.Join(" | ", heads)} |");
        Console.WriteLine($"| {string.Join(" | ", heads.Select((_, at) => at == 0 ? "---" : "---:"))} |");
        foreach (var row in rows)
        {
            Console.WriteLine($"| {string.Join(" | ", row)} |");
        }

        Console.WriteLine();
    }

    public static string Seconds(double seconds) => seconds.ToString("0.00", CultureInfo.InvariantCulture) + " s";

    public static string Ratio(double ours, double peer) => (ours / peer).ToString("0.0", CultureInfo.InvariantCulture) + " ×";

    public static string Megabytes(double megabytes) => megabytes.ToString("0", CultureInfo.InvariantCulture) + " MB";
}

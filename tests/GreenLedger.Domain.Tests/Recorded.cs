using System.Globalization;

namespace GreenLedger.Domain.Tests;

/// <summary>Values that a script under tests/R recorded; the script stands beside them.</summary>
internal static class Recorded
{
    /// <summary>The rows of a recorded file, each by its column names.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Rows(string name)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "recorded", name));
        var heads = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => heads.Zip(line.Split(',')).ToDictionary(pair => pair.First, pair => pair.Second))];
    }

    public static int Whole(this IReadOnlyDictionary<string, string> row, string column) =>
        int.Parse(row[column], CultureInfo.InvariantCulture);

    public static double Number(this IReadOnlyDictionary<string, string> row, string column) =>
        double.Parse(row[column], CultureInfo.InvariantCulture);
}

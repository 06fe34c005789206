using System.Diagnostics;
using System.Text.Json;

namespace GreenLedger.Benchmarks;

/// <summary>What one measured program says: named figures, and the most memory that it held.</summary>
internal sealed record Findings(Dictionary<string, double> Figures, double PeakMegabytes)
{
    public double this[string name] => Figures[name];
}

/// <summary>Starts this program again for one measurement.</summary>
internal static class Child
{
    private const string Mark = "figures: ";

    /// <summary>One after the other, by name.</summary>
    public static async Task<IReadOnlyDictionary<string, Findings>> RunAsync(IEnumerable<string> names)
    {
        var found = new Dictionary<string, Findings>();
        foreach (var name in names)
        {
            Console.Error.WriteLine($"… {name}");
            found[name] = await RunAsync(name);
        }

        return found;
    }

    /// <summary>Called at the end of a measurement.</summary>
    public static void Tell(Dictionary<string, double> figures) =>
        Console.WriteLine(Mark + JsonSerializer.Serialize(new Findings(figures, Memory.PeakMegabytes())));

    private static async Task<Findings> RunAsync(string name)
    {
        var start = new ProcessStartInfo("dotnet", [Environment.GetCommandLineArgs()[0], "measure", name]) { RedirectStandardOutput = true };
        start.Environment["SCRATCH"] = Sizes.Scratch;
        using var child = Process.Start(start)!;
        var output = await child.StandardOutput.ReadToEndAsync();
        await child.WaitForExitAsync();
        var line = output.Split('\n').LastOrDefault(line => line.StartsWith(Mark, StringComparison.Ordinal));
        return child.ExitCode == 0 && line is not null
            ? JsonSerializer.Deserialize<Findings>(line[Mark.Length..])!
            : throw new InvalidOperationException($"The measurement {name} failed:\n{output}");
    }
}

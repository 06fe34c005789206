using System.Globalization;

namespace GreenLedger.Benchmarks;

/// <summary>How much is measured; the environment can say otherwise, for a quick look.</summary>
internal static class Sizes
{
    private const string ScratchName = "SCRATCH";

    public static int Offers { get; } = Number("OFFERS", 100_000);

    public static int SheetsPerOffer { get; } = Number("SHEETS_PER_OFFER", 10);

    public static int Rows { get; } = Number("ROWS", 100_000);

    /// <summary>At one table.</summary>
    public static int Cuppers { get; } = Number("CUPPERS", 200);

    /// <summary>How long they cup.</summary>
    public static int Seconds { get; } = Number("DURATION", 300);

    public static int Repeats { get; } = Number("REPEATS", 5);

    public static bool IsTemporary { get; } = Environment.GetEnvironmentVariable(ScratchName) is null;

    /// <summary>The children work in the folder of the program that started them.</summary>
    public static string Scratch { get; } = Environment.GetEnvironmentVariable(ScratchName)
        ?? Path.Combine(Path.GetTempPath(), $"greenledger-benchmarks-{Environment.ProcessId}");

    private static int Number(string name, int usual) =>
        Environment.GetEnvironmentVariable(name) is { Length: > 0 } text ? int.Parse(text, CultureInfo.InvariantCulture) : usual;
}

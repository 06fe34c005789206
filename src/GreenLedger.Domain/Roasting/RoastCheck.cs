using System.Globalization;

namespace GreenLedger.Domain.Roasting;

/// <summary>One window of a protocol held against a roast; <see cref="Held"/> is null where nothing was measured.</summary>
public sealed record RoastFinding(string What, string? Found, string Wanted, bool? Held);

/// <summary>Holds a sample roast against the windows of its protocol: missing one is a warning, never a refusal.</summary>
public static class RoastCheck
{
    public static IReadOnlyList<RoastFinding> Of(SampleRoast roast, RoastWindows windows)
    {
        ArgumentNullException.ThrowIfNull(roast);
        ArgumentNullException.ThrowIfNull(windows);
        var found = new List<RoastFinding>
        {
            new("Roast time", Clock(roast.TotalSeconds), $"{Text(windows.LeastMinutes)} to {Text(windows.MostMinutes)} min", Within(roast.TotalSeconds / 60m, windows.LeastMinutes, windows.MostMinutes)),
        };
        found.AddRange(Colour("Colour, whole bean", roast.WholeBean, windows.WholeBean, roast, windows));
        found.AddRange(Colour("Colour, ground", roast.Ground, windows.Ground, roast, windows));
        var hours = roast.Rest is { } rest ? (decimal)rest.TotalMinutes / 60m : (decimal?)null;
        found.Add(new RoastFinding("Rest until cupping", hours is { } some ? $"{Text(some)} h" : null, $"{Text(windows.LeastRestHours)} to {Text(windows.MostRestHours)} h", Within(hours, windows.LeastRestHours, windows.MostRestHours)));
        return found;
    }

    /// <summary>Minutes and seconds: <c>9:30</c>.</summary>
    public static string? Clock(int? seconds) =>
        seconds is { } some ? string.Create(CultureInfo.InvariantCulture, $"{some / 60}:{some % 60:00}") : null;

    private static IEnumerable<RoastFinding> Colour(string what, Measures.ColourReading? read, Measures.ColourReading? target, SampleRoast roast, RoastWindows windows)
    {
        if (target is not { } wanted)
        {
            yield break;
        }

        var isSameScale = string.Equals(roast.ColourScale, windows.ColourScale, StringComparison.OrdinalIgnoreCase);
        yield return new RoastFinding(
            what,
            read is { } some ? isSameScale ? $"{some}" : $"{some} ({roast.ColourScale})" : null,
            $"{wanted} ± {Text(windows.ColourTolerance)} ({windows.ColourScale})",
            read is { } one && isSameScale ? Math.Abs(one.Value - wanted.Value) <= windows.ColourTolerance : null);
    }

    private static bool? Within(decimal? value, decimal least, decimal most) => value is { } some ? some >= least && some <= most : null;

    private static string Text(decimal value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}

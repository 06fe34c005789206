using System.Globalization;

namespace GreenLedger.Domain.Summaries;

/// <summary>How a chart is drawn.</summary>
public enum ChartForm
{
    /// <summary>Lying bars from zero, one for each series, category under category.</summary>
    Bars = 0,

    /// <summary>One closed line around a centre, an axis for each category.</summary>
    Radar = 1,

    /// <summary>A line for each series over categories that follow each other in time; on the page alone.</summary>
    Lines = 2,
}

/// <summary>The values of one series in the order of the categories; null where there is none.</summary>
public sealed record ChartValues(string Name, IReadOnlyList<decimal?> Values);

/// <summary>A line across the bars, such as a market's average.</summary>
public sealed record ChartMark(string Name, decimal Value);

/// <summary>
/// A chart, described once: the page draws it and the PDF prints it from the same figures. A table with the same figures stands
/// below it, and <see cref="Words"/> stand for it where it cannot be seen.
/// </summary>
/// <param name="ValueTitle">What the values are, with their unit.</param>
/// <param name="Least">Where the axis of a radar begins; bars begin at zero.</param>
/// <param name="Most">Where the axis of a radar ends; null for the largest value.</param>
public sealed record ChartSpec(
    string Title, string ValueTitle, ChartForm Form, IReadOnlyList<string> Categories, IReadOnlyList<ChartValues> Series, int Decimals, ChartMark? Mark = null, decimal Least = 0m, decimal? Most = null)
{
    /// <summary>From the palette of Okabe and Ito, which the colour-blind tell apart; names stand beside them.</summary>
    private static readonly string[] Palette = ["#0072B2", "#E69F00", "#009E73", "#D55E00"];

    public bool IsEmpty => Categories.Count == 0 || Series.All(series => series.Values.All(value => value is null or 0m));

    /// <summary>As <c>#RRGGBB</c>.</summary>
    public static string ColourOf(int series) => Palette[series % Palette.Length];

    /// <summary>The figure beside a bar, in the reader's language.</summary>
    public string Figure(decimal value, CultureInfo? reader = null) =>
        value.ToString("N" + Decimals.ToString(CultureInfo.InvariantCulture), reader ?? CultureInfo.InvariantCulture);

    /// <summary>The whole chart in one text, category by category.</summary>
    public string Words(CultureInfo? reader = null) =>
        $"{Title}, {ValueTitle}: " + string.Join("; ", Categories.Select((category, at) => $"{category} " + string.Join(", ", Series
            .Where(series => series.Values[at] is not null).Select(series => (Series.Count > 1 ? series.Name + " " : "") + Figure(series.Values[at]!.Value, reader)))))
        + (Mark is { } mark ? $". {mark.Name} {Figure(mark.Value, reader)}." : ".");
}

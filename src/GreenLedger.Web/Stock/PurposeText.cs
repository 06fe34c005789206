using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Web.Stock;

/// <summary>Purposes in words and as a picture.</summary>
public static class PurposeText
{
    /// <summary>What is asked of the coffee, in a line.</summary>
    public static string Asked(Purpose purpose)
    {
        ArgumentNullException.ThrowIfNull(purpose);
        var parts = new[]
        {
            purpose.Process?.Word(),
            purpose.LeastScore is { } least ? $"{Display.Figures.Score(least.Points)} points or more" : null,
            purpose.Flavour,
            purpose.Share is { } share ? $"{Display.Figures.Percent(share)} of {purpose.Blend}" : null,
        };
        var text = string.Join(", ", parts.Where(part => part is not null));
        return text.Length > 0 ? text : "any coffee";
    }

    /// <summary>A cover in weeks.</summary>
    public static string Weeks(decimal? weeks) => weeks is { } known ? $"{known.ToString("#,0.0", System.Globalization.CultureInfo.GetCultureInfo("en-GB"))} weeks" : "∞";

    /// <summary>When nothing is left, with what is contracted and from stock alone.</summary>
    public static string RunsOut(PurposeCover cover, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(cover);
        var (on, alone) = (cover.RunsOutOn(today), cover.StockRunsOutOn(today));
        return (on, alone) switch
        {
            (null, null) => "It lasts longer than a year from stock alone.",
            (null, { } day) => $"With what is contracted it lasts longer than a year; from stock alone it runs out about {Display.Figures.Day(day)}.",
            ({ } day, _) when day <= today => "It has run out.",
            ({ } day, { } same) when day == same => $"It runs out about {Display.Figures.Day(day)}.",
            ({ } day, { } first) when first < day => $"It runs out about {Display.Figures.Day(day)}, from stock alone about {Display.Figures.Day(first)}.",
            ({ } day, _) => $"It runs out about {Display.Figures.Day(day)}.",
        };
    }

    /// <summary>Cover at the end of each week, with what is contracted and without; the lead time lies across.</summary>
    public static ChartSpec Chart(string purpose, IReadOnlyList<WeekAhead> weeks, int leadDays)
    {
        ArgumentNullException.ThrowIfNull(weeks);
        return new ChartSpec(
            $"Cover of {purpose} at the end of each week", "weeks", ChartForm.Lines, [.. weeks.Select(week => Display.Figures.Day(week.From))],
            [new ChartValues("with what is contracted", [.. weeks.Select(week => week.Cover)]), new ChartValues("from stock alone", [.. weeks.Select(week => week.CoverFromStock)])],
            1, new ChartMark("lead time", leadDays / 7m));
    }
}

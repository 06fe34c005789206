using System.Globalization;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Web.Summaries;

/// <summary>Arrival less approved from arrival to arrival with its limits, as places in a drawing.</summary>
/// <param name="Levels">Nought, and the mean and the limits where there are arrivals enough for them.</param>
public sealed record RunDrawing(int Width, int Height, IReadOnlyList<RunLevel> Levels, IReadOnlyList<RunDot> Dots)
{
    private const int Full = 720;
    private const int Tall = 220;
    private const int Left = 150;
    private const int Edge = 16;

    public string Points => string.Join(' ', Dots.Select(dot => $"{dot.X},{dot.Y}"));

    /// <summary>Null under two arrivals.</summary>
    public static RunDrawing? Of(ArrivalDifferences differences)
    {
        ArgumentNullException.ThrowIfNull(differences);
        if (differences.Number < 2)
        {
            return null;
        }

        var levels = LevelsOf(differences.Chart).ToList();
        var all = differences.Arrivals.Select(fact => (double)fact.Difference).Concat(levels.Select(level => level.Points)).ToList();
        double from = all.Min() - 0.25, to = all.Max() + 0.25;
        string Y(double points) => Place(Edge + (to - points) / (to - from) * (Tall - 2 * Edge));
        string X(int index) => Place(Left + Edge + index * (Full - Left - 2.0 * Edge) / (differences.Number - 1));
        var outside = differences.Chart?.Outside.ToHashSet() ?? [];
        return new RunDrawing(
            Full,
            Tall,
            [.. levels.Select(level => new RunLevel(Y(level.Points), level.Name, level.IsLimit))],
            [.. differences.Arrivals.Select((fact, index) => new RunDot(
                X(index), Y((double)fact.Difference), outside.Contains(index), string.Create(CultureInfo.InvariantCulture, $"{fact.Lot}, {fact.On:d MMM yyyy}: {fact.Difference:+0.00;−0.00;0.00}")))]);
    }

    private static IEnumerable<(double Points, string Name, bool IsLimit)> LevelsOf(ControlChart? chart)
    {
        yield return (0, chart is null ? "as approved" : "", false);
        if (chart is not null)
        {
            yield return (chart.Upper, string.Create(CultureInfo.InvariantCulture, $"upper limit {chart.Upper:+0.00;−0.00;0.00}"), true);
            yield return (chart.Mean, string.Create(CultureInfo.InvariantCulture, $"mean {chart.Mean:+0.00;−0.00;0.00}"), false);
            yield return (chart.Lower, string.Create(CultureInfo.InvariantCulture, $"lower limit {chart.Lower:+0.00;−0.00;0.00}"), true);
        }
    }

    private static string Place(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}

/// <summary>A level across the drawing; one without a name is nought.</summary>
public sealed record RunLevel(string Y, string Name, bool IsLimit);

/// <summary>One arrival.</summary>
public sealed record RunDot(string X, string Y, bool IsOutside, string Title);

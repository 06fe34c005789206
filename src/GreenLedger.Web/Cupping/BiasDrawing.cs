using System.Globalization;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Web.Cupping;

/// <summary>A cupper's bias from session to session with its control limits, as places in a drawing.</summary>
/// <param name="Levels">Nought, and the mean and the limits where there are sessions enough for them.</param>
public sealed record BiasDrawing(int Width, int Height, IReadOnlyList<BiasLevel> Levels, IReadOnlyList<BiasDot> Dots)
{
    private const int Full = 720;
    private const int Tall = 220;
    private const int Left = 150;
    private const int Edge = 16;

    /// <summary>Null under two sessions with a bias.</summary>
    public static BiasDrawing? Of(CupperRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var sessions = record.Sessions.Where(session => session.Bias is not null).ToList();
        if (sessions.Count < 2)
        {
            return null;
        }

        var levels = LevelsOf(record.BiasChart).ToList();
        var all = sessions.Select(session => session.Bias!.Value).Concat(levels.Select(level => level.Points)).ToList();
        double from = all.Min() - 0.25, to = all.Max() + 0.25;
        string Y(double points) => Place(Edge + (to - points) / (to - from) * (Tall - 2 * Edge));
        string X(int index) => Place(Left + Edge + index * (Full - Left - 2.0 * Edge) / (sessions.Count - 1));
        var outside = record.BiasChart?.Outside.ToHashSet() ?? [];
        return new BiasDrawing(
            Full,
            Tall,
            [.. levels.Select(level => new BiasLevel(Y(level.Points), level.Name, level.IsLimit))],
            [.. sessions.Select((session, index) => new BiasDot(
                X(index),
                Y(session.Bias!.Value),
                outside.Contains(index),
                string.Create(CultureInfo.InvariantCulture, $"{session.Session.Title}: {session.Bias:+0.00;−0.00;0.00}")))]);
    }

    private static IEnumerable<(double Points, string Name, bool IsLimit)> LevelsOf(ControlChart? chart)
    {
        yield return (0, chart is null ? "level with the others" : "", false);
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
public sealed record BiasLevel(string Y, string Name, bool IsLimit);

/// <summary>One session.</summary>
public sealed record BiasDot(string X, string Y, bool IsOutside, string Title);

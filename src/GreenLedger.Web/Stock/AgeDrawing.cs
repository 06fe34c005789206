using System.Globalization;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;

namespace GreenLedger.Web.Stock;

/// <summary>Scores of lots that were cupped again: how far each lies from its lot's first, over the months between, with the house's trend and its interval, as places in a drawing.</summary>
/// <param name="Band">The corners of the interval's wedge.</param>
public sealed record AgeDrawing(int Width, int Height, string Nought, IReadOnlyList<AgeMark> Levels, IReadOnlyList<AgeMark> Months, string Trend, string Band, IReadOnlyList<AgeDot> Dots)
{
    private const int Full = 720;
    private const int Tall = 300;
    private const int Left = 56;
    private const int Edge = 16;
    private const int Foot = 40;

    /// <summary>Null without a trend.</summary>
    public static AgeDrawing? Of(AgeTrend? trend, IEnumerable<AgedScore> scores, Func<AgedScore, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(nameOf);
        if (trend is null)
        {
            return null;
        }

        var dots = scores.GroupBy(score => score.LotId).SelectMany(lot => lot.Where(score => score.On > lot.First().On)
            .Select(score => (Score: score, Months: (score.On.DayNumber - lot.First().On.DayNumber) / AgeTrend.DaysOfMonth, Points: score.Points - lot.First().Points))).ToList();
        var last = Math.Max(1, Math.Ceiling(dots.Max(dot => dot.Months)));
        var all = dots.Select(dot => dot.Points).Concat([0, trend.Lower * last, trend.Upper * last]).ToList();
        double from = Math.Floor(all.Min() - 0.25), to = Math.Ceiling(all.Max() + 0.25);
        string X(double months) => Place(Left + months / last * (Full - Left - Edge));
        string Y(double points) => Place(Edge + (to - points) / (to - from) * (Tall - Edge - Foot));
        var step = Math.Max(1, Math.Ceiling((to - from) / 6));
        return new AgeDrawing(
            Full, Tall, Y(0),
            [.. Steps(from, to, step).Select(points => new AgeMark(Y(points), points.ToString("+0;−0;0", CultureInfo.InvariantCulture)))],
            [.. Steps(0, last, Math.Max(1, Math.Ceiling(last / 12))).Select(months => new AgeMark(X(months), months.ToString("0", CultureInfo.InvariantCulture)))],
            $"{X(0)},{Y(0)} {X(last)},{Y(trend.PerMonth * last)}",
            $"{X(0)},{Y(0)} {X(last)},{Y(trend.Upper * last)} {X(last)},{Y(trend.Lower * last)}",
            [.. dots.Select(dot => new AgeDot(X(dot.Months), Y(dot.Points), $"{nameOf(dot.Score)}, {Figures.Day(dot.Score.On)}: {dot.Points.ToString("+0.00;−0.00;0.00", CultureInfo.InvariantCulture)} points after {dot.Months.ToString("0.0", CultureInfo.InvariantCulture)} months"))]);
    }

    private static IEnumerable<double> Steps(double from, double to, double step)
    {
        for (var at = from; at <= to + 0.001; at += step)
        {
            yield return at;
        }
    }

    private static string Place(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}

/// <summary>A figure at its place on an axis.</summary>
public sealed record AgeMark(string At, string Figure);

/// <summary>A score against its lot's first.</summary>
public sealed record AgeDot(string X, string Y, string Title);

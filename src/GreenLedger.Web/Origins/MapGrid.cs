using System.Globalization;

namespace GreenLedger.Web.Origins;

/// <summary>A line of the net, with where its degrees are written.</summary>
public sealed record GridLine(string X1, string Y1, string X2, string Y2, string? Words, string WordsX, string WordsY);

/// <summary>The net of round degrees over a map, and its scale.</summary>
/// <param name="ScaleWords">How long the scale's bar is on the ground.</param>
/// <param name="ScaleLength">How long it is drawn.</param>
public sealed record MapGrid(IReadOnlyList<GridLine> Lines, string ScaleWords, double ScaleLength)
{
    /// <summary>The least distance of two lines, so that their words stand apart on a phone too.</summary>
    private const double Apart = 165;

    public static MapGrid Of(MapView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var step = Round(view.Box.Width * Apart / MapView.Width, up: true);
        var metres = Round(view.Kilometres * 1000 * 200 / MapView.Width, up: false);
        return new MapGrid(
            [.. Steps(view.Box.MinX, view.Box.MaxX, step, 180).Select(degrees => Meridian(view, degrees, step)), .. Steps(view.Box.MinY, view.Box.MaxY, step, 90).Select(degrees => Parallel(view, degrees, step))],
            metres >= 1000 ? string.Create(CultureInfo.InvariantCulture, $"{metres / 1000:#,0} km") : string.Create(CultureInfo.InvariantCulture, $"{metres:0} m"),
            metres / 1000 / view.Kilometres * MapView.Width);
    }

    private static IEnumerable<double> Steps(double from, double to, double step, double most) =>
        Enumerable.Range(0, (int)Math.Floor((to - from) / step) + 2).Select(at => (Math.Ceiling(from / step) + at) * step).Where(degrees => degrees <= to && Math.Abs(degrees) <= most);

    private static GridLine Meridian(MapView view, double degrees, double step)
    {
        var x = view.X(degrees);
        return new GridLine(Figure(x), "0", Figure(x), Figure(MapView.Height), x is > 100 and < MapView.Width - 40 ? Words(degrees, step) : null, Figure(x + 4), "24");
    }

    private static GridLine Parallel(MapView view, double degrees, double step)
    {
        var y = view.Y(degrees);
        return new GridLine("0", Figure(y), Figure(MapView.Width), Figure(y), y is > 50 and < MapView.Height - 20 ? Words(degrees, step) : null, "4", Figure(y - 5));
    }

    private static string Words(double degrees, double step) =>
        Math.Round(degrees, 6).ToString("F" + Math.Max(0, (int)-Math.Floor(Math.Log10(step * 1.0001))), CultureInfo.InvariantCulture) + "°";

    /// <summary>The next of 1, 2, 5, 10 and so on.</summary>
    private static double Round(double value, bool up)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(value)));
        double[] rounds = [1, 2, 5, 10];
        return ten * (up ? rounds.First(one => one * ten >= value * 0.9999) : rounds.Last(one => one * ten <= value * 1.0001));
    }

    private static string Figure(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}

using System.Globalization;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Web.Cupping;

/// <summary>
/// Which samples a panel can tell apart, as places in a drawing: a line of the drawing for each sample, and an upright
/// for each group of samples of which no two can be told apart.
/// </summary>
public sealed record ToldApart(int Width, int Height, IReadOnlyList<SpreadTick> Ticks, IReadOnlyList<ToldApartRow> Rows, IReadOnlyList<ToldApartGroup> Groups)
{
    private const int Left = 104;

    /// <summary>What a phone shows without scrolling; each group beyond the second makes it wider.</summary>
    private const int Narrow = 336;
    private const int RowHeight = 28;
    private const int GroupWidth = 22;
    private const int MostGroups = 12;

    /// <summary>Null where there is nothing to compare or the groups are too many to draw.</summary>
    /// <param name="names">What to call each sample, in the order of the fit.</param>
    public static ToldApart? Of(PairwiseDifferences differences, IReadOnlyList<string> names)
    {
        ArgumentNullException.ThrowIfNull(differences);
        ArgumentNullException.ThrowIfNull(names);
        if (differences.Fitted.Count < 2 || differences.Groups.Count is 0 or > MostGroups)
        {
            return null;
        }

        var order = differences.Groups.SelectMany(group => group).Distinct().OrderByDescending(sample => differences.Fitted[sample]).ToList();
        var line = order.Select((sample, index) => (sample, index)).ToDictionary(pair => pair.sample, pair => pair.index * RowHeight + RowHeight / 2);
        double from = Math.Floor(differences.Fitted.Min()), to = Math.Max(from + 1, Math.Ceiling(differences.Fitted.Max()));
        var full = Narrow + Math.Max(0, differences.Groups.Count - 2) * GroupWidth;
        var right = full - differences.Groups.Count * GroupWidth - 24;
        var step = Math.Max(1, Math.Ceiling((to - from) / 5));
        string X(double points) => (Left + (points - from) / (to - from) * (right - Left)).ToString("0.#", CultureInfo.InvariantCulture);
        return new ToldApart(
            full,
            order.Count * RowHeight + 34,
            [.. Enumerable.Range(0, (int)((to - from) / step) + 1).Select(number => from + number * step).Select(points => new SpreadTick(X(points), points.ToString("0", CultureInfo.InvariantCulture)))],
            [.. order.Select(sample => new ToldApartRow(names[sample], line[sample], X(differences.Fitted[sample])))],
            [.. differences.Groups.Select((group, number) => new ToldApartGroup(
                full - (differences.Groups.Count - number) * GroupWidth + GroupWidth / 2,
                [.. group.Select(sample => line[sample]).Order()],
                string.Join(", ", group.Select(sample => names[sample]))))]);
    }
}

/// <summary>One sample's line.</summary>
public sealed record ToldApartRow(string Label, int Y, string Fitted);

/// <summary>One group's upright, with a dot at the line of each of its samples.</summary>
public sealed record ToldApartGroup(int X, IReadOnlyList<int> Dots, string Title);

using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;

namespace GreenLedger.Web.Trace;

/// <summary>A box of the picture of a trace; several stops may stand in one.</summary>
/// <param name="Full">All that it stands for, for whoever points at it.</param>
public sealed record TraceBox(int X, int Y, string Name, string Under, string Full, bool IsGone);

/// <summary>A line between two boxes, as an SVG path.</summary>
public sealed record TraceLine(string Path, string Full);

/// <summary>A trace as a picture: stops in columns in the order in which coffee passes them. The table behind it says everything.</summary>
public sealed class TraceDrawing
{
    public const int BoxWidth = 164;
    public const int BoxHeight = 42;

    /// <summary>Of one column; what is more stands together in a last box.</summary>
    private const int MostBoxes = 12;

    private const int Across = BoxWidth + 36;
    private const int Down = BoxHeight + 12;
    private const int Head = 26;

    /// <summary>What fits into a box, in bold letters and in others.</summary>
    private const int NameLetters = 20;
    private const int UnderLetters = 25;

    private static readonly (string Word, TraceKind[] Kinds)[] Stages =
    [
        ("grown and sold by", [TraceKind.Plot, TraceKind.Producer, TraceKind.Supplier]), ("lot", [TraceKind.Lot]), ("contract", [TraceKind.Contract]), ("shipment", [TraceKind.Shipment]),
        ("arrival", [TraceKind.Arrival, TraceKind.Added]), ("in the warehouse", [TraceKind.Warehouse]), ("left the stock", [TraceKind.Release, TraceKind.Sale, TraceKind.Sample, TraceKind.Loss]),
    ];

    private readonly Dictionary<TraceKey, TraceBox> _boxOf = [];

    public TraceDrawing(TraceWay way)
    {
        ArgumentNullException.ThrowIfNull(way);
        var stages = Stages.Select(stage => (stage.Word, Groups: Groups(way, stage.Kinds))).Where(stage => stage.Groups.Count > 0).ToList();
        Height = Head + (stages.Count == 0 ? 0 : stages.Max(stage => stage.Groups.Count)) * Down;
        Width = Math.Max(1, stages.Count) * Across - (Across - BoxWidth) + 24;
        foreach (var (column, stage) in stages.Index())
        {
            Heads.Add((column * Across, stage.Word));
            foreach (var (row, group) in stage.Groups.Index())
            {
                Add(column * Across, Head + row * Down, group);
            }
        }

        Lines = [.. way.Edges.Select(edge => (From: _boxOf[edge.From], To: _boxOf[edge.To], edge.Weight)).GroupBy(edge => (edge.From, edge.To)).Select(same => Line(same.Key.From, same.Key.To, same.Select(edge => edge.Weight)))];
    }

    public int Width { get; }

    public int Height { get; }

    public List<(int X, string Word)> Heads { get; } = [];

    public List<TraceBox> Boxes { get; } = [];

    public IReadOnlyList<TraceLine> Lines { get; }

    /// <summary>What left for one purpose stands together, and so does what is more than a column holds.</summary>
    private static List<List<TraceNode>> Groups(TraceWay way, TraceKind[] kinds)
    {
        var groups = way.Of(kinds).GroupBy(node => node.Key.Kind.IsGone() ? (node.Key.Kind, node.Purpose ?? "") : (node.Key.Kind, node.Key.Id.ToString())).Select(group => group.ToList()).ToList();
        return groups.Count <= MostBoxes ? groups : [.. groups.Take(MostBoxes - 1), [.. groups.Skip(MostBoxes - 1).SelectMany(group => group)]];
    }

    private void Add(int x, int y, List<TraceNode> group)
    {
        var first = group[0];
        var isOneKind = group.All(node => node.Key.Kind == first.Key.Kind && node.Purpose == first.Purpose);
        var name = group.Count == 1 || isOneKind && first.Key.Kind.IsGone() ? NameOf(first) : $"{Figures.Count(group.Count)} more";
        string?[] under = [group.Count > 1 && first.Key.Kind.IsGone() ? Figures.Count(group.Count, "time", "times") : group.Count == 1 ? first.Key.Kind.Word() : null, Sum(group.Select(node => node.Weight))];
        var box = new TraceBox(
            x, y, Short(name, NameLetters), Short(string.Join(", ", under.Where(part => part is not null)), UnderLetters),
            string.Join("\n", group.Take(20).Select(node => string.Join(", ", new[] { node.Key.Kind.Word() + " " + NameOf(node), node.Detail, node.Weight is { } weight ? TraceText.Kilograms(weight) : null }.Where(part => part is not null)))), first.Key.Kind.IsGone());
        Boxes.Add(box);
        group.ForEach(node => _boxOf[node.Key] = box);
    }

    private static string NameOf(TraceNode node) => node.Key.Kind.IsGone() ? node.Purpose ?? node.Key.Kind.Word() : node.Name;

    private static TraceLine Line(TraceBox from, TraceBox to, IEnumerable<Weight?> weights)
    {
        var (x1, y1, y2) = (from.X + BoxWidth, from.Y + BoxHeight / 2, to.Y + BoxHeight / 2);
        var path = to.X > from.X
            ? string.Create(CultureInfo.InvariantCulture, $"M{x1} {y1} C{x1 + 22} {y1} {to.X - 22} {y2} {to.X} {y2}")
            : string.Create(CultureInfo.InvariantCulture, $"M{x1} {y1} C{x1 + 24} {y1} {x1 + 24} {y2} {x1} {y2}");
        return new TraceLine(path, $"{from.Name} → {to.Name}{(Sum(weights) is { } sum ? ", " + sum : "")}");
    }

    private static string? Sum(IEnumerable<Weight?> weights)
    {
        var known = weights.OfType<Weight>().ToList();
        return known.Count == 0 ? null : TraceText.Kilograms(known.Aggregate(Weight.Zero, (sum, one) => sum + one));
    }

    private static string Short(string text, int letters) => text.Length <= letters ? text : text[..(letters - 1)].TrimEnd() + "…";
}

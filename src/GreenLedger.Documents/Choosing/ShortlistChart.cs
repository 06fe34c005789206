using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using PdfSharp.Drawing;

namespace GreenLedger.Documents.Choosing;

/// <summary>Score against landed cost, drawn as lines and shapes: sharp at every size and in every printer.</summary>
internal sealed class ShortlistChart
{
    private const double LegendHeight = 18;
    private const double LeftSpace = 44;
    private const double BottomSpace = 34;
    private const int Labelled = 10;

    private static readonly XFont Font = Faces.Regular(8);
    private static readonly XFont Strong = Faces.Bold(8);

    private readonly ScatterChart _chart;
    private readonly ChartAxis _costs;
    private readonly ChartAxis _scores;
    private readonly XGraphics _graphics;
    private readonly XRect _box;
    private readonly XRect _plot;
    private readonly List<XRect> _taken = [];

    private ShortlistChart(ScatterChart chart, XGraphics graphics, XRect box)
    {
        (_chart, _graphics, _box) = (chart, graphics, box);
        _plot = new XRect(box.X + LeftSpace, box.Y + LegendHeight, box.Width - LeftSpace - 6, box.Height - LegendHeight - BottomSpace);
        _costs = new ChartAxis(chart.Points.Min(point => point.Cost), chart.Points.Max(point => point.Cost), 7);
        _scores = new ChartAxis(chart.Points.Min(point => point.Score), chart.Points.Max(point => point.Score), 6);
    }

    /// <summary>The chart has at least one point.</summary>
    public static void Draw(ScatterChart chart, XGraphics graphics, XRect box)
    {
        var drawing = new ShortlistChart(chart, graphics, box);
        drawing.Legend();
        drawing.Axes();
        drawing.Front();
        drawing.Marks();
        drawing.Labels();
    }

    /// <summary>What a person who cannot see the chart should know of it.</summary>
    public static string Words(ScatterChart chart, Shortlist shortlist) =>
        $"{chart.Title}: {Printed.Count(chart.Points.Count, "lot", "lots")}. On the efficient front, cheapest first: "
        + string.Join(", ", shortlist.Front.Take(Labelled).Select(entry => $"{entry.Candidate.Ref} {Printed.Points(entry.Score!.Value.Score)} points at {Printed.Amount(entry.Candidate.CostPerKilogram!.Value)} {shortlist.Currency}/kg")) + ".";

    private void Legend()
    {
        var x = _plot.X;
        foreach (var series in _chart.Series)
        {
            MarkDrawing.Draw(_graphics, series, new XPoint(x + 4, _box.Y + 7), false);
            x += 12;
            Text(series.Word, Font, Ink.Dark, x, _box.Y + 10);
            x += Width(series.Word, Font) + 14;
        }

        _graphics.DrawLine(FrontPen, x, _box.Y + 7, x + 18, _box.Y + 7);
        Text("efficient front", Font, Ink.Dark, x + 23, _box.Y + 10);
    }

    private void Axes()
    {
        foreach (var tick in _costs.Ticks)
        {
            var x = X(tick);
            _graphics.DrawLine(Ink.Rule.Pen(0.4), x, _plot.Top, x, _plot.Bottom);
            Text(_costs.Figure(tick), Font, Ink.Soft, x - Width(_costs.Figure(tick), Font) / 2, _plot.Bottom + 11);
        }

        foreach (var tick in _scores.Ticks)
        {
            var y = Y(tick);
            _graphics.DrawLine(Ink.Rule.Pen(0.4), _plot.Left, y, _plot.Right, y);
            Text(_scores.Figure(tick), Font, Ink.Soft, _plot.Left - Width(_scores.Figure(tick), Font) - 4, y + 2.8);
        }

        _graphics.DrawLine(Ink.Soft.Pen(0.8), _plot.Left, _plot.Bottom, _plot.Right, _plot.Bottom);
        _graphics.DrawLine(Ink.Soft.Pen(0.8), _plot.Left, _plot.Top, _plot.Left, _plot.Bottom);
        Text(_chart.CostTitle, Strong, Ink.Dark, _plot.Left + (_plot.Width - Width(_chart.CostTitle, Strong)) / 2, _plot.Bottom + 25);
        Upwards(_chart.ScoreTitle);
    }

    /// <summary>The title of the vertical axis, read from below.</summary>
    private void Upwards(string title)
    {
        var state = _graphics.Save();
        _graphics.RotateAtTransform(-90, new XPoint(_box.X + 9, _plot.Top + _plot.Height / 2));
        Text(title, Strong, Ink.Dark, _box.X + 9 - Width(title, Strong) / 2, _plot.Top + _plot.Height / 2);
        _graphics.Restore(state);
    }

    private void Front()
    {
        var points = _chart.Front.Select(point => new XPoint(X(point.Cost), Y(point.Score))).ToArray();
        if (points.Length > 1)
        {
            _graphics.DrawLines(FrontPen, points);
            _taken.AddRange(points.Zip(points.Skip(1)).SelectMany(piece => Along(piece.First, piece.Second)));
        }
    }

    /// <summary>Small boxes along a line, which names must not cover.</summary>
    private static IEnumerable<XRect> Along(XPoint from, XPoint to)
    {
        const double step = 3;
        var steps = (int)Math.Ceiling(Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)) / step);
        return Enumerable.Range(0, steps).Select(i => new XRect(
            from.X + (to.X - from.X) * i / steps - 1, from.Y + (to.Y - from.Y) * i / steps - 1, 2, 2));
    }

    /// <summary>The last by rank first, so that the first lie on top.</summary>
    private void Marks()
    {
        foreach (var point in _chart.Points.Reverse())
        {
            var at = new XPoint(X(point.Cost), Y(point.Score));
            MarkDrawing.Draw(_graphics, _chart.Series[point.Series], at, point.IsOnFront);
            _taken.Add(new XRect(at.X - MarkDrawing.Radius, at.Y - MarkDrawing.Radius, 2 * MarkDrawing.Radius, 2 * MarkDrawing.Radius));
        }
    }

    /// <summary>The first lots by rank are named, each where it covers neither a mark nor another name, or not at all.</summary>
    private void Labels()
    {
        foreach (var point in _chart.Points.OrderBy(point => point.Rank).Take(Labelled))
        {
            var text = $"{point.Rank} · {point.Ref}";
            if (FreePlace(point, Width(text, Strong)) is { } place)
            {
                _taken.Add(place);
                _graphics.DrawRectangle(XBrushes.White, place);
                Text(text, Strong, Ink.Dark, place.X, place.Bottom - 2.2);
            }
        }
    }

    private XRect? FreePlace(ChartPoint point, double width)
    {
        const double height = 9;
        var (x, y) = (X(point.Cost), Y(point.Score));
        XPoint[] corners =
        [
            new(x + 6, y - height / 2), new(x - 6 - width, y - height / 2), new(x - width / 2, y - 6 - height), new(x - width / 2, y + 6),
            new(x + 5, y - 4 - height), new(x + 5, y + 4), new(x - 5 - width, y - 4 - height), new(x - 5 - width, y + 4),
        ];
        foreach (var corner in corners)
        {
            var place = new XRect(corner, new XSize(width, height));
            if (_plot.Contains(place) && !_taken.Exists(other => other.IntersectsWith(place)))
            {
                return place;
            }
        }

        return null;
    }

    private static XPen FrontPen => Ink.Green.Pen(1.4);

    private double X(double cost) => _plot.Left + _plot.Width * _costs.Place(cost);

    private double Y(double score) => _plot.Bottom - _plot.Height * _scores.Place(score);

    private double Width(string text, XFont font) => _graphics.MeasureString(text, font).Width;

    private void Text(string text, XFont font, XColor colour, double x, double y) => _graphics.DrawString(text, font, colour.Brush(), x, y);
}

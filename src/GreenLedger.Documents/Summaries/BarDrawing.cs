using GreenLedger.Documents.Choosing;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;
using PdfSharp.Drawing;

namespace GreenLedger.Documents.Summaries;

/// <summary>Lying bars, drawn as shapes: sharp at every size and in every printer. Figures stand beside them.</summary>
internal sealed class BarDrawing
{
    private const double LegendHeight = 18;
    private const double AxisHeight = 30;
    private const double BarHeight = 9;
    private const double Between = 6;

    /// <summary>Names of categories take no more of the width than this.</summary>
    private const double MostForNames = 0.3;

    private static readonly XFont Font = Faces.Regular(8);
    private static readonly XFont Strong = Faces.Bold(8);

    private readonly ChartSpec _chart;
    private readonly XGraphics _graphics;
    private readonly XRect _box;
    private readonly XRect _plot;
    private readonly ChartAxis _axis;

    private BarDrawing(ChartSpec chart, XGraphics graphics, XRect box)
    {
        (_chart, _graphics, _box) = (chart, graphics, box);
        var names = Math.Min(box.Width * MostForNames, chart.Categories.Max(name => Width(name, Font))) + 8;
        _plot = new XRect(box.X + names, box.Y + LegendHeight, box.Width - names - 50, box.Height - LegendHeight - AxisHeight);
        _axis = new ChartAxis(0, (double)chart.Series.SelectMany(series => series.Values).Append(chart.Mark?.Value).Max(value => value ?? 0m), 6);
    }

    public static double HeightOf(ChartSpec chart) => LegendHeight + AxisHeight + chart.Categories.Count * (chart.Series.Count * BarHeight + Between);

    /// <summary>The chart has at least one category with a value above zero.</summary>
    public static void Draw(ChartSpec chart, XGraphics graphics, XRect box)
    {
        var drawing = new BarDrawing(chart, graphics, box);
        drawing.Legend();
        drawing.Axis();
        for (var at = 0; at < chart.Categories.Count; at++)
        {
            drawing.Category(at);
        }

        drawing.Mark();
    }

    private void Legend()
    {
        var x = _plot.X;
        for (var i = 0; i < _chart.Series.Count; i++)
        {
            _graphics.DrawRectangle(Colour(i), x, _box.Y + 3, 10, 8);
            Text(_chart.Series[i].Name, Font, Ink.Dark, x + 14, _box.Y + 10);
            x += Width(_chart.Series[i].Name, Font) + 28;
        }

        if (_chart.Mark is { } mark)
        {
            _graphics.DrawLine(MarkPen, x, _box.Y + 7, x + 16, _box.Y + 7);
            Text($"{mark.Name}, {_chart.Figure(mark.Value)}", Font, Ink.Dark, x + 20, _box.Y + 10);
        }
    }

    private void Axis()
    {
        foreach (var tick in _axis.Ticks.Select(tick => tick + 0.0)) // a zero without its sign
        {
            _graphics.DrawLine(Ink.Rule.Pen(0.4), X(tick), _plot.Top, X(tick), _plot.Bottom);
            Text(_axis.Figure(tick), Font, Ink.Soft, X(tick) - Width(_axis.Figure(tick), Font) / 2, _plot.Bottom + 10);
        }

        _graphics.DrawLine(Ink.Soft.Pen(0.8), X(0), _plot.Top, X(0), _plot.Bottom);
        Text(_chart.ValueTitle, Strong, Ink.Dark, _plot.X + (_plot.Width - Width(_chart.ValueTitle, Strong)) / 2, _plot.Bottom + 22);
    }

    private void Category(int at)
    {
        var top = _plot.Top + at * (_chart.Series.Count * BarHeight + Between) + Between / 2;
        var name = Fitting(_chart.Categories[at]);
        Text(name, Font, Ink.Dark, _plot.X - 6 - Width(name, Font), top + _chart.Series.Count * BarHeight / 2 + 2.8);
        for (var i = 0; i < _chart.Series.Count; i++)
        {
            if (_chart.Series[i].Values[at] is { } value)
            {
                var y = top + i * BarHeight;
                _graphics.DrawRectangle(Colour(i), X(0), y + 0.5, Math.Max(0, X((double)value) - X(0)), BarHeight - 1);
                Text(_chart.Figure(value), Font, Ink.Soft, X((double)value) + 3, y + BarHeight - 2);
            }
        }
    }

    private void Mark()
    {
        if (_chart.Mark is { } mark)
        {
            _graphics.DrawLine(MarkPen, X((double)mark.Value), _plot.Top, X((double)mark.Value), _plot.Bottom);
        }
    }

    /// <summary>A name too long for its room ends in dots; the table below has it whole.</summary>
    private string Fitting(string name)
    {
        var room = _box.Width * MostForNames;
        while (name.Length > 2 && Width(name, Font) > room)
        {
            name = name[..^2] + "…";
        }

        return name;
    }

    private static XPen MarkPen => new(Ink.Dark, 1) { DashStyle = XDashStyle.Dash };

    private static XBrush Colour(int series) => Ink.Of(ChartSpec.ColourOf(series)).Brush();

    private double X(double value) => _plot.X + _plot.Width * _axis.Place(value);

    private double Width(string text, XFont font) => _graphics.MeasureString(text, font).Width;

    private void Text(string text, XFont font, XColor colour, double x, double y) => _graphics.DrawString(text, font, colour.Brush(), x, y);
}

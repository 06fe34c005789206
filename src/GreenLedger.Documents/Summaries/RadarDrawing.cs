using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;
using PdfSharp.Drawing;

namespace GreenLedger.Documents.Summaries;

/// <summary>A closed line around a centre, an axis for each category, with its figure beside its name.</summary>
internal sealed class RadarDrawing
{
    private const int Rings = 4;

    private static readonly XFont Font = Faces.Regular(8);

    private readonly ChartSpec _chart;
    private readonly CultureInfo _reader;
    private readonly XGraphics _graphics;
    private readonly XPoint _middle;
    private readonly double _radius;
    private readonly double _most;

    private RadarDrawing(ChartSpec chart, CultureInfo reader, XGraphics graphics, XRect box)
    {
        (_chart, _reader, _graphics) = (chart, reader, graphics);
        _middle = new XPoint(box.X + box.Width / 2, box.Y + box.Height / 2);
        _radius = box.Height / 2 - 22;
        _most = (double)(chart.Most ?? chart.Series.SelectMany(series => series.Values).Max() ?? 1m);
    }

    /// <summary>The chart has at least three categories.</summary>
    public static void Draw(ChartSpec chart, CultureInfo reader, XGraphics graphics, XRect box)
    {
        var drawing = new RadarDrawing(chart, reader, graphics, box);
        drawing.Net();
        drawing.Lines();
        drawing.Names();
    }

    private void Net()
    {
        for (var ring = 1; ring <= Rings; ring++)
        {
            _graphics.DrawPolygon(Ink.Rule.Pen(0.5), [.. _chart.Categories.Select((_, at) => Place(at, (double)ring / Rings))]);
        }

        for (var at = 0; at < _chart.Categories.Count; at++)
        {
            _graphics.DrawLine(Ink.Rule.Pen(0.5), _middle, Place(at, 1));
        }
    }

    private void Lines()
    {
        for (var i = 0; i < _chart.Series.Count; i++)
        {
            var colour = Ink.Of(ChartSpec.ColourOf(i));
            var points = _chart.Series[i].Values.Select((value, at) => Place(at, Share((double)(value ?? _chart.Least)))).ToArray();
            _graphics.DrawPolygon(colour.Pen(1.4), new XSolidBrush(XColor.FromArgb(40, colour)), points, XFillMode.Winding);
        }
    }

    private void Names()
    {
        for (var at = 0; at < _chart.Categories.Count; at++)
        {
            var text = _chart.Categories[at] + (_chart.Series[0].Values[at] is { } value ? " " + _chart.Figure(value, _reader) : "");
            var (place, width) = (Place(at, 1.08), _graphics.MeasureString(text, Font).Width);
            var x = Math.Abs(place.X - _middle.X) < 2 ? place.X - width / 2 : place.X > _middle.X ? place.X : place.X - width;
            _graphics.DrawString(text, Font, Ink.Dark.Brush(), x, place.Y + 2.8);
        }
    }

    private double Share(double value)
    {
        var least = (double)_chart.Least;
        return _most > least ? Math.Clamp((value - least) / (_most - least), 0, 1) : 0;
    }

    private XPoint Place(int category, double share)
    {
        var angle = Math.PI * 2 * category / _chart.Categories.Count - Math.PI / 2;
        return new XPoint(_middle.X + Math.Cos(angle) * _radius * share, _middle.Y + Math.Sin(angle) * _radius * share);
    }
}

using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using PdfSharp.Drawing;

namespace GreenLedger.Documents.Choosing;

/// <summary>Draws a lot's mark: the shape tells its process before the colour does.</summary>
internal static class MarkDrawing
{
    public const double Radius = 3.6;

    /// <param name="isStrong">Marks of the front have a dark edge.</param>
    public static void Draw(XGraphics graphics, ChartSeries series, XPoint at, bool isStrong)
    {
        var (colour, r) = (Ink.Of(series.Colour), Radius);
        var (edge, fill) = (isStrong ? Ink.Dark.Pen(1) : XColors.White.Pen(0.5), colour.Brush());
        switch (series.Shape)
        {
            case MarkShape.Circle:
                graphics.DrawEllipse(edge, fill, at.X - r, at.Y - r, 2 * r, 2 * r);
                break;
            case MarkShape.Square:
                graphics.DrawRectangle(edge, fill, at.X - 0.9 * r, at.Y - 0.9 * r, 1.8 * r, 1.8 * r);
                break;
            case MarkShape.Triangle:
                graphics.DrawPolygon(edge, fill, Around(at, 1.2 * r, 3), XFillMode.Winding);
                break;
            case MarkShape.Diamond:
                graphics.DrawPolygon(edge, fill, Around(at, 1.25 * r, 4), XFillMode.Winding);
                break;
            case MarkShape.Cross:
                graphics.DrawLine(colour.Pen(isStrong ? 2.6 : 1.8), at.X - r, at.Y - r, at.X + r, at.Y + r);
                graphics.DrawLine(colour.Pen(isStrong ? 2.6 : 1.8), at.X - r, at.Y + r, at.X + r, at.Y - r);
                break;
            case MarkShape.Star:
                graphics.DrawPolygon(edge, fill, Star(at, 1.35 * r), XFillMode.Winding);
                break;
            default:
                graphics.DrawEllipse(colour.Pen(isStrong ? 2.4 : 1.6), XBrushes.White, at.X - 0.9 * r, at.Y - 0.9 * r, 1.8 * r, 1.8 * r);
                break;
        }
    }

    private static XPoint[] Around(XPoint centre, double radius, int corners) =>
        [.. Enumerable.Range(0, corners).Select(i => On(centre, radius, (double)i / corners))];

    private static XPoint[] Star(XPoint centre, double radius) =>
        [.. Enumerable.Range(0, 10).Select(i => On(centre, i % 2 == 0 ? radius : radius * 0.45, i / 10.0))];

    /// <summary>A point of the circle, beginning at the top.</summary>
    private static XPoint On(XPoint centre, double radius, double turn) =>
        new(centre.X + radius * Math.Sin(2 * Math.PI * turn), centre.Y - radius * Math.Cos(2 * Math.PI * turn));
}

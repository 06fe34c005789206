using PdfSharp.Drawing;

namespace GreenLedger.Documents.Layout;

/// <summary>The colours of the screens, on white paper.</summary>
internal static class Ink
{
    public static readonly XColor Dark = Of("#1C2622");
    public static readonly XColor Soft = Of("#5B665F");
    public static readonly XColor Rule = Of("#DDD8CC");
    public static readonly XColor Green = Of("#17664A");
    public static readonly XColor Wash = Of("#F3F5F1");

    /// <param name="hex">As <c>#RRGGBB</c>.</param>
    public static XColor Of(string hex) => XColor.FromArgb(unchecked((int)(0xFF000000 | Convert.ToUInt32(hex[1..], 16))));

    public static XBrush Brush(this XColor colour) => new XSolidBrush(colour);

    public static XPen Pen(this XColor colour, double width = 0.6) => new(colour, width);
}

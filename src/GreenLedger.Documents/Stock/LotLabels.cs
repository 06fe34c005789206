using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Stock;

/// <summary>A label for a pallet or a bag in the warehouse: the lot, what it is, and the address that its QR code holds.</summary>
public sealed record LotLabel(string Ref, string Name, string Address);

/// <summary>Labels for what lies in a warehouse; a phone that reads one opens the lot, or its line of an open count.</summary>
public static class LotLabels
{
    public const string MediaType = "application/pdf";

    private static readonly XFont NameFont = Faces.Regular(8.5);

    /// <param name="from">The first place to print on, from 1; the places before it are used already.</param>
    /// <exception cref="RuleBrokenException">There is nothing to print, or no such place on the sheet.</exception>
    public static void Write(LabelSheet sheet, IReadOnlyList<LotLabel> labels, int from, string house, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(labels);
        LabelPages.Write(sheet, labels, from, "Labels of lots in stock", house, stream, (stage, label, box) => Draw(stage, label, house, box));
    }

    private static void Draw(Stage stage, LotLabel label, string house, XRect box)
    {
        var margin = LabelPages.Points(2.5);
        var side = Math.Min(box.Height - 2 * margin, box.Width * 0.45);
        var code = new XRect(box.X + margin, box.Y + (box.Height - side) / 2, side, side);
        QrCode.Draw(stage, label.Address, $"QR code of {label.Ref}", code);
        var left = code.Right + margin;
        var width = box.Right - margin - left;
        var middle = box.Y + box.Height / 2;
        Line(stage, label.Ref, Largest(stage, label.Ref, width), left, middle - 10, width);
        foreach (var (at, line) in new LineBreaker().Lines(label.Name, NameFont, width).Take(2).Index())
        {
            Line(stage, line, NameFont, left, middle + 3 + at * 10, width);
        }

        Line(stage, house, Faces.Regular(7), left, middle + 24, width);
    }

    /// <summary>The reference as large as it fits, since it is read from afar.</summary>
    private static XFont Largest(Stage stage, string text, double width)
    {
        var size = 20d;
        while (size > 8 && stage.Graphics.MeasureString(text, Faces.Bold(size)).Width > width)
        {
            size--;
        }

        return Faces.Bold(size);
    }

    private static void Line(Stage stage, string text, XFont font, double left, double baseline, double width) => stage.Element(PdfBlockLevelElementTag.Paragraph, () =>
        stage.Graphics.DrawString(LabelPages.Fitting(stage.Graphics, text, font, width), font, Ink.Dark.Brush(), left, baseline));
}

using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Samples;

/// <summary>One label: the code in large letters, and the address that its QR code holds.</summary>
public sealed record PrintedLabel(string Code, string Address);

/// <summary>
/// Labels for the bags, on a sheet or one to a page. They show the house, the label code and a QR code, and nothing that
/// says which coffee it is, since cuppers see them.
/// </summary>
public static class SampleLabels
{
    public const string MediaType = "application/pdf";

    /// <param name="from">The first place to print on, from 1; the places before it are used already.</param>
    /// <exception cref="RuleBrokenException">There is nothing to print, or no such place on the sheet.</exception>
    public static void Write(LabelSheet sheet, IReadOnlyList<PrintedLabel> labels, int from, string house, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(labels);
        LabelPages.Write(sheet, labels, from, "Sample labels", house, stream, (stage, label, box) => Draw(stage, label, house, box));
    }

    private static void Draw(Stage stage, PrintedLabel label, string house, XRect box)
    {
        var margin = LabelPages.Points(2.5);
        var side = box.Height - 2 * margin;
        var code = new XRect(box.X + margin, box.Y + margin, side, side);
        QrCode.Draw(stage, label.Address, $"QR code of {label.Code}", code);
        var left = code.Right + margin;
        var width = box.Right - margin - left;
        var size = Math.Min(26, width / 3.4);
        var middle = box.Y + box.Height / 2;
        stage.Element(PdfBlockLevelElementTag.Paragraph, () => stage.Graphics.DrawString(label.Code, Faces.Bold(size), Ink.Dark.Brush(), left, middle + size * 0.2));
        stage.Element(PdfBlockLevelElementTag.Paragraph, () => stage.Graphics.DrawString(LabelPages.Fitting(stage.Graphics, house, Faces.Regular(7), width), Faces.Regular(7), Ink.Soft.Brush(), left, middle + size * 0.2 + 11));
    }
}

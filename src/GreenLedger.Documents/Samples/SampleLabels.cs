using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using QRCoder;

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

    /// <summary>The light border that a reader needs, in modules (ISO/IEC 18004).</summary>
    private const int Quiet = 4;

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
        stage.Figure($"QR code of {label.Code}", code, () => DrawCode(stage.Graphics, label.Address, code));
        var left = code.Right + margin;
        var width = box.Right - margin - left;
        var size = Math.Min(26, width / 3.4);
        var middle = box.Y + box.Height / 2;
        stage.Element(PdfBlockLevelElementTag.Paragraph, () => stage.Graphics.DrawString(label.Code, Faces.Bold(size), Ink.Dark.Brush(), left, middle + size * 0.2));
        stage.Element(PdfBlockLevelElementTag.Paragraph, () => stage.Graphics.DrawString(LabelPages.Fitting(stage.Graphics, house, Faces.Regular(7), width), Faces.Regular(7), Ink.Soft.Brush(), left, middle + size * 0.2 + 11));
    }

    /// <summary>Dark modules as filled squares; each row's runs are drawn as one, so that no hairline shows between them.</summary>
    private static void DrawCode(XGraphics graphics, string address, XRect box)
    {
        using var generator = new QRCodeGenerator();
        using var code = generator.CreateQrCode(address, QRCodeGenerator.ECCLevel.M);
        var rows = code.ModuleMatrix;
        // The matrix brings its own quiet border of four modules.
        var module = box.Width / rows.Count;
        for (var y = Quiet; y < rows.Count - Quiet; y++)
        {
            for (var x = Quiet; x < rows.Count - Quiet; x++)
            {
                var run = x;
                while (run < rows.Count && rows[y][run])
                {
                    run++;
                }

                if (run > x)
                {
                    graphics.DrawRectangle(XBrushes.Black, box.X + x * module, box.Y + y * module, (run - x) * module, module);
                    x = run;
                }
            }
        }
    }
}

using PdfSharp.Drawing;
using QRCoder;

namespace GreenLedger.Documents.Layout;

/// <summary>An address as a QR code, with the words that stand for it.</summary>
internal static class QrCode
{
    /// <summary>The light border that a reader needs, in modules (ISO/IEC 18004).</summary>
    private const int Quiet = 4;

    public static void Draw(Stage stage, string address, string words, XRect box) => stage.Figure(words, box, () => Fill(stage.Graphics, address, box));

    /// <summary>Dark modules as filled squares; each row's runs are drawn as one, so that no hairline shows between them.</summary>
    public static void Fill(XGraphics graphics, string address, XRect box)
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

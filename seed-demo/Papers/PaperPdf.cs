using System.Globalization;
using System.Text;

namespace GreenLedger.SeedDemo.Papers;

/// <summary>A page of plain lines in the smallest PDF there can be (ISO 32000-1, annex H), for papers that were received.</summary>
internal static class PaperPdf
{
    /// <param name="lines">In ASCII; the first is the heading.</param>
    public static byte[] Of(IReadOnlyList<string> lines)
    {
        var text = string.Concat(lines.Select((line, at) => $"/F1 {(at == 0 ? 16 : 11)} Tf ({Escaped(line)}) Tj 0 -22 Td\n"));
        var content = $"BT 60 770 Td\n{text}ET";
        string[] objects =
        [
            "<< /Type /Catalog /Pages 2 0 R >>",
            "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources << /Font << /F1 5 0 R >> >> >>",
            $"<< /Length {content.Length} >>\nstream\n{content}\nendstream",
            "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>",
        ];
        var file = new StringBuilder("%PDF-1.4\n");
        var places = new StringBuilder("0000000000 65535 f \n");
        for (var number = 1; number <= objects.Length; number++)
        {
            places.Append(CultureInfo.InvariantCulture, $"{file.Length:0000000000} 00000 n \n");
            file.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{objects[number - 1]}\nendobj\n");
        }

        var table = file.Length;
        file.Append(CultureInfo.InvariantCulture, $"xref\n0 {objects.Length + 1}\n{places}trailer\n<< /Size {objects.Length + 1} /Root 1 0 R >>\nstartxref\n{table}\n%%EOF\n");
        return Encoding.Latin1.GetBytes(file.ToString());
    }

    private static string Escaped(string line) => line.Replace("\\", @"\\", StringComparison.Ordinal)
        .Replace("(", @"\(", StringComparison.Ordinal).Replace(")", @"\)", StringComparison.Ordinal);
}

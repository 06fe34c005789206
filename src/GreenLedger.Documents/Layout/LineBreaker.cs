using PdfSharp.Drawing;

namespace GreenLedger.Documents.Layout;

/// <summary>
/// Breaks text into lines of a width: between words, and within a word only where it is wider than a line. A figure and
/// its per cent sign stay together.
/// </summary>
internal sealed class LineBreaker
{
    private readonly XGraphics _measure = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);

    public double WidthOf(string text, XFont font) => _measure.MeasureString(text, font).Width;

    public IReadOnlyList<string> Lines(string text, XFont font, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            Break(paragraph.Replace(" %", "\u00A0%", StringComparison.Ordinal), font, width, lines);
        }

        return lines;
    }

    private void Break(string paragraph, XFont font, double width, List<string> lines)
    {
        var line = "";
        foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, font, width)))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && WidthOf(longer, font) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
    }

    private IEnumerable<string> Pieces(string word, XFont font, double width)
    {
        var from = 0;
        for (var to = 1; to <= word.Length; to++)
        {
            if (to - from > 1 && WidthOf(word[from..to], font) > width)
            {
                yield return word[from..(to - 1)];
                from = to - 1;
            }
        }

        yield return word[from..];
    }
}

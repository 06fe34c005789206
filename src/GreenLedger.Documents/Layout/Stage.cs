using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Layout;

/// <summary>One page while it is drawn: the graphics, and the structure that a screen reader follows.</summary>
internal sealed class Stage(XGraphics graphics, StructureBuilder structure)
{
    public XGraphics Graphics => graphics;

    /// <summary>Everything drawn inside belongs to one element.</summary>
    public void Element(PdfBlockLevelElementTag tag, Action draw)
    {
        structure.BeginElement(tag);
        draw();
        structure.End();
    }

    /// <summary>Lines and page numbers, which a screen reader passes over.</summary>
    public void Ornament(Action draw)
    {
        structure.BeginArtifact();
        draw();
        structure.End();
    }

    /// <summary>A picture with the words that stand for it.</summary>
    public void Figure(string words, XRect box, Action draw)
    {
        structure.BeginElement(PdfIllustrationElementTag.Figure, words, box);
        draw();
        structure.End();
    }

    /// <summary>Lines of one paragraph; each but the last ends in a space, so that words do not run together when read.</summary>
    public void Lines(IReadOnlyList<string> lines, XFont font, XColor colour, double x, double top, double leading)
    {
        var ascent = leading * 0.76;
        for (var i = 0; i < lines.Count; i++)
        {
            if (lines[i].Length > 0)
            {
                graphics.DrawString(i < lines.Count - 1 ? lines[i] + " " : lines[i], font, colour.Brush(), x, top + ascent + i * leading);
            }
        }
    }
}

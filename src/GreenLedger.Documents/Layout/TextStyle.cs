using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Layout;

/// <summary>How a paragraph is set: face, colour, leading, the space before it, and what it is to a screen reader.</summary>
internal sealed record TextStyle(XFont Font, XColor Colour, double Leading, double Before, PdfBlockLevelElementTag Tag)
{
    public static TextStyle Title { get; } = new(Faces.Bold(24), Ink.Dark, 28, 0, PdfBlockLevelElementTag.Heading1);

    public static TextStyle Heading { get; } = new(Faces.Bold(12.5), Ink.Green, 16, 12, PdfBlockLevelElementTag.Heading2);

    public static TextStyle SubHeading { get; } = new(Faces.Bold(9.5), Ink.Dark, 12.5, 6, PdfBlockLevelElementTag.Heading3);

    public static TextStyle Body { get; } = new(Faces.Regular(9.5), Ink.Dark, 12.5, 3, PdfBlockLevelElementTag.Paragraph);

    public static TextStyle Small { get; } = new(Faces.Regular(8.5), Ink.Soft, 11, 3, PdfBlockLevelElementTag.Paragraph);

    public bool IsHeading => Tag is not PdfBlockLevelElementTag.Paragraph;
}

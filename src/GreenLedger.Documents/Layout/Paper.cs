using System.Globalization;
using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Layout;

/// <summary>
/// An A4 document that flows: headings, paragraphs, tables with repeated heads and figures go from page to page, and
/// each page ends in its footer with its number. First everything is placed, then drawn, so that the number of pages
/// is known before anything is written. The PDF is tagged and names its title and language, and the page numbers are in it.
/// </summary>
internal sealed class Paper(string title, string author, string footer, string language = "en-GB", string pageOf = "page {0} of {1}")
{
    private const double Side = 40;
    private const double Top = 40;
    private const double Bottom = 46;
    private const double PageWidth = 595.28;
    private const double PageHeight = 841.89;

    /// <summary>A heading needs so much of what follows it on its own page.</summary>
    private const double KeptWithHeading = 40;

    private readonly List<List<Action<Stage>>> _pages = [[]];
    private double _y = Top;

    public LineBreaker Breaker { get; } = new();

    public static double Left => Side;

    public static double Width => PageWidth - 2 * Side;

    /// <summary>What is left of the present page.</summary>
    public double Room => PageHeight - Bottom - _y;

    public int PageCount => _pages.Count;

    public void Text(string text, TextStyle style)
    {
        var lines = Breaker.Lines(text, style.Font, Width);
        var before = _y > Top ? style.Before : 0;
        var needed = style.IsHeading ? lines.Count * style.Leading + KeptWithHeading : Math.Min(lines.Count, 2) * style.Leading;
        if (before + needed > Room)
        {
            NewPage();
            before = 0;
        }

        _y += before;
        while (lines.Count > 0)
        {
            var fitting = Math.Clamp((int)(Room / style.Leading), 1, lines.Count);
            Paragraph([.. lines.Take(fitting)], style);
            lines = [.. lines.Skip(fitting)];
            if (lines.Count > 0)
            {
                NewPage();
            }
        }
    }

    /// <summary>A drawing of that height; it gets the graphics and its place on the page.</summary>
    public void Figure(double height, string words, Action<XGraphics, XRect> draw)
    {
        MakeRoom(height);
        var box = new XRect(Left, _y, Width, height);
        Place(height, stage => stage.Figure(words, box, () => draw(stage.Graphics, box)));
    }

    public void Table(IReadOnlyList<PaperColumn> columns, IReadOnlyList<IReadOnlyList<PaperCell>> rows) =>
        new PaperTable(this, columns).Flow(rows);

    public void Gap(double height) => _y += Math.Min(height, Math.Max(0, Room));

    /// <summary>Begins a new page when less than this is left.</summary>
    public void MakeRoom(double height)
    {
        if (height > Room && _y > Top)
        {
            NewPage();
        }
    }

    /// <summary>Puts a drawing of that height at the present place, which it hands over.</summary>
    public void Place(double height, Action<Stage> draw)
    {
        _pages[^1].Add(draw);
        _y += height;
    }

    public double Here => _y;

    public void NewPage()
    {
        _pages.Add([]);
        _y = Top;
    }

    public void Save(Stream stream)
    {
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Author = author;
        document.ViewerPreferences.DisplayDocTitle = true;
        var accessibility = UAManager.ForDocument(document);
        document.Language = language;
        for (var i = 0; i < _pages.Count; i++)
        {
            var page = document.AddPage();
            page.Size = PageSize.A4;
            using var graphics = XGraphics.FromPdfPage(page);
            var stage = new Stage(graphics, accessibility.StructureBuilder);
            _pages[i].ForEach(draw => draw(stage));
            Footer(stage, string.Format(CultureInfo.InvariantCulture, pageOf, i + 1, _pages.Count));
        }

        document.Save(stream, closeStream: false);
    }

    private void Paragraph(IReadOnlyList<string> lines, TextStyle style)
    {
        var top = _y;
        Place(lines.Count * style.Leading, stage => stage.Element(style.Tag, () => stage.Lines(lines, style.Font, style.Colour, Left, top, style.Leading)));
    }

    private void Footer(Stage stage, string number) => stage.Ornament(() =>
    {
        var (font, line) = (Faces.Regular(8), PageHeight - Bottom + 14);
        stage.Graphics.DrawLine(Ink.Rule.Pen(), Left, line, Left + Width, line);
        stage.Graphics.DrawString(footer, font, Ink.Soft.Brush(), Left, line + 12);
        stage.Graphics.DrawString(number, font, Ink.Soft.Brush(), Left + Width - Breaker.WidthOf(number, font), line + 12);
    });
}

using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Layout;

/// <summary>Labels on sheets or one to a page: where each stands, page after page.</summary>
internal static class LabelPages
{
    private const double PointsInMillimetre = 72 / 25.4;

    /// <param name="from">The first place to print on, from 1; the places before it are used already.</param>
    /// <param name="draw">Draws one label into its box.</param>
    /// <exception cref="RuleBrokenException">There is nothing to print, or no such place on the sheet.</exception>
    public static void Write<T>(
        LabelSheet sheet, IReadOnlyList<T> labels, int from, string title, string house, Stream stream, Action<Stage, T, XRect> draw)
    {
        Rule.Require(labels.Count > 0, "Choose at least one thing to print labels for.", "");
        Rule.Require(from >= 1 && from <= sheet.LabelsOnPage, $"This sheet has places 1 to {sheet.LabelsOnPage}.", "From");
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Author = house;
        document.ViewerPreferences.DisplayDocTitle = true;
        var accessibility = UAManager.ForDocument(document);
        document.Language = "en-GB";
        var waiting = new Queue<T>(labels);
        for (var place = from - 1; waiting.Count > 0; place = 0)
        {
            var page = document.AddPage();
            page.Width = XUnit.FromMillimeter((double)sheet.PageWidth);
            page.Height = XUnit.FromMillimeter((double)sheet.PageHeight);
            using var graphics = XGraphics.FromPdfPage(page);
            var stage = new Stage(graphics, accessibility.StructureBuilder);
            for (; place < sheet.LabelsOnPage && waiting.TryDequeue(out var label); place++)
            {
                var (x, y) = sheet.At(place);
                draw(stage, label, new XRect(Points((double)x), Points((double)y), Points((double)sheet.LabelWidth), Points((double)sheet.LabelHeight)));
            }
        }

        document.Save(stream, closeStream: false);
    }

    public static double Points(double millimetres) => millimetres * PointsInMillimetre;

    /// <summary>As much of a text as a width holds.</summary>
    public static string Fitting(XGraphics graphics, string text, XFont font, double width)
    {
        while (text.Length > 1 && graphics.MeasureString(text, font).Width > width)
        {
            text = text[..^1];
        }

        return text.TrimEnd();
    }
}

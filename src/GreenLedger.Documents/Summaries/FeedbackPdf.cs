using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>What a supplier hears back, as a PDF in their language. Its title, author and file name tell of nobody else.</summary>
public static class FeedbackPdf
{
    public const string MediaType = "application/pdf";

    private const double RadarHeight = 210;

    public static void Write(FeedbackReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        var words = FeedbackWords.In(report.Language);
        var paper = new Paper($"{words.Title} · {report.Supplier}", report.House, $"{report.House} · {words.Title}", words.Culture, words.PageOf);
        paper.Text(report.House, TextStyle.Body with { Font = Faces.Bold(9.5), Colour = Ink.Green });
        paper.Text(words.Title, TextStyle.Title);
        foreach (var block in FeedbackText.Of(report))
        {
            Print(paper, block, words);
        }

        paper.Save(stream);
    }

    internal static void Print(Paper paper, FeedbackBlock block, FeedbackWords words)
    {
        switch (block)
        {
            case { Chart: { } chart }:
                paper.Gap(4);
                paper.Figure(RadarHeight, chart.Words(words.Reader), (graphics, box) => RadarDrawing.Draw(chart, words.Reader, graphics, box));
                break;
            case { Table: { } table }:
                paper.Gap(4);
                paper.Table([.. table.Columns.Select(column => new PaperColumn(column.Head, column.IsNumber ? 60 : 150, column.IsNumber))], [.. table.Rows.Select(row => row.Select(text => new PaperCell(text)).ToArray())]);
                break;
            default:
                paper.Text(block.Text, block.Part switch
                {
                    FeedbackPart.Heading => TextStyle.Heading,
                    FeedbackPart.SubHeading => TextStyle.SubHeading,
                    FeedbackPart.Small => TextStyle.Small,
                    _ => TextStyle.Body,
                });
                break;
        }
    }
}

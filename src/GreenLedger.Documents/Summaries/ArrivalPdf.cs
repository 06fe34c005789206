using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>What a supplier hears of an arrival, as a PDF in their language. Its title, author and file name tell of nobody else.</summary>
public static class ArrivalPdf
{
    public const string MediaType = "application/pdf";

    public static void Write(ArrivalReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        var words = ArrivalWords.In(report.Language);
        var paper = new Paper($"{words.Title} · {report.Goods.LotName}", report.House, $"{report.House} · {words.Title} · {report.Goods.ContractRef}", words.Common.Culture, words.Common.PageOf);
        paper.Text(report.House, TextStyle.Body with { Font = Faces.Bold(9.5), Colour = Ink.Green });
        paper.Text(words.Title, TextStyle.Title);
        foreach (var block in ArrivalText.Of(report))
        {
            FeedbackPdf.Print(paper, block, words.Common);
        }

        paper.Save(stream);
    }
}

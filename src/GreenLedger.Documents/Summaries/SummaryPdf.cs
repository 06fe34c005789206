
namespace GreenLedger.Documents.Summaries;

/// <summary>
/// A purchase summary on A4 pages for management: the tables of the page with their charts, contents where it is long, and what
/// the figures mean.
/// </summary>
public static class SummaryPdf
{
    public const string MediaType = "application/pdf";

    /// <summary>From so many pages on the contents stand on the first.</summary>
    public const int LongFrom = 4;

    public static void Write(SummaryReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        var (paper, pages) = new SummaryPages(report, null).Compose();
        if (paper.PageCount >= LongFrom)
        {
            // The contents take room of their own and push what follows down, so the pages are counted once with them.
            (_, pages) = new SummaryPages(report, pages).Compose();
            (paper, _) = new SummaryPages(report, pages).Compose();
        }

        paper.Save(stream);
    }
}

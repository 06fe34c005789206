namespace GreenLedger.Documents.Choosing;

/// <summary>
/// A shortlist on one or two A4 pages for those who decide on it: by what rules it was ranked and when, the chart, the
/// ranking, the reasons for the first three, and what failed which gate. A longer list is cut where two pages end, and
/// says so.
/// </summary>
public static class ShortlistPdf
{
    public const string MediaType = "application/pdf";

    public const int MostPages = 2;

    private const int MostRows = 40;

    public static void Write(ShortlistReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        var rows = Math.Min(MostRows, report.Shortlist.Ranked.Count);
        var paper = new ShortlistPages(report, rows).Compose();
        while (paper.PageCount > MostPages && rows > 0)
        {
            paper = new ShortlistPages(report, --rows).Compose();
        }

        paper.Save(stream);
    }
}

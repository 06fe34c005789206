namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// A first look at a list: its titles, its headings with a sample of what stands below each, and its sheets. From it a
/// mapping is proposed and corrected.
/// </summary>
public sealed record ListLook(
    string FileName,
    IReadOnlyList<string> Titles,
    IReadOnlyList<string> Headings,
    IReadOnlyDictionary<string, IReadOnlyList<Cell>> Samples,
    IReadOnlyList<string> Sheets)
{
    /// <summary>How many rows of each sheet are looked at.</summary>
    public const int SampleSize = 60;

    /// <summary>Looks at the beginning of each sheet.</summary>
    /// <exception cref="RuleBrokenException">No sheet has a table.</exception>
    public static ListLook Of(IEnumerable<OfferLine> lines, string fileName)
    {
        var titles = new List<string>();
        var sheets = new List<string>();
        var samples = new Dictionary<string, List<Cell>>();
        var headings = new List<string>();
        foreach (var sheet in ListSheets.Of(lines))
        {
            titles.AddRange(sheet.Table.Titles);
            sheets.AddRange(sheet.Name is { } name ? [name] : []);
            Sample(sheet, headings, samples);
        }

        Rule.Require(headings.Count > 0, "This file has no table of offers: no line has two or more columns.", "File");
        return new ListLook(fileName, [.. titles.Distinct()], headings, samples.ToDictionary(pair => pair.Key, pair => (IReadOnlyList<Cell>)pair.Value), sheets);
    }

    private static void Sample(ListSheet sheet, List<string> headings, Dictionary<string, List<Cell>> samples)
    {
        var named = sheet.Table.Headings.Select((heading, column) => (heading, column)).Where(pair => pair.heading.Length > 0).ToList();
        foreach (var (heading, _) in named.Where(pair => samples.TryAdd(pair.heading, [])))
        {
            headings.Add(heading);
        }

        foreach (var line in sheet.Rows.Where(line => ListTable.Texts(line).Count > 1).Take(SampleSize))
        {
            foreach (var (heading, column) in named)
            {
                samples[heading].Add(line[column]);
            }
        }
    }
}

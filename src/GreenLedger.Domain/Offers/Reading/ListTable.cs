using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// Where the table of a sheet stands: the titles above it, its headings (one or two lines joined), and after which line
/// its rows begin.
/// </summary>
internal sealed record ListTable(IReadOnlyList<string> Titles, IReadOnlyList<string> Headings, int LinesAbove)
{
    /// <summary>How far down a table may begin.</summary>
    public const int Deepest = 40;

    /// <summary>
    /// Finds the table in a sheet's first lines; where no line has headings, every line is a row and the columns are
    /// called by their letters. Null when the lines are blank.
    /// </summary>
    public static ListTable? Find(IReadOnlyList<OfferLine> lines)
    {
        var best = -1;
        var bestKnown = 1;
        for (var at = 0; at < lines.Count; at++)
        {
            var known = Known(lines[at]);
            if (known > bestKnown)
            {
                (best, bestKnown) = (at, known);
            }
        }

        return best >= 0 ? From(lines, best) : WithoutHeadings(lines);
    }

    /// <summary>The texts of a line, each once: a merged title is one text.</summary>
    public static IReadOnlyList<string> Texts(OfferLine line) =>
        [.. line.Cells.Where(cell => !cell.IsEmpty).Select(cell => cell.Trimmed).Distinct()];

    /// <summary>How many different meanings a line's cells have as headings; a line with a figure in it is no heading.</summary>
    private static int Known(OfferLine line)
    {
        var texts = Texts(line);
        if (texts.Count < 2 || line.Cells.Any(IsFigure))
        {
            return 0;
        }

        return texts.Where(text => text.Length <= 60)
            .Select(text => Meaning(text)).Where(meaning => meaning is not null).Distinct().Count();
    }

    private static ColumnMeaning? Meaning(string text) =>
        TradeWords.Heading(text)?.Meaning ?? (PriceQuote.Find(text)?.Quote.IsWhole == true ? ColumnMeaning.Price : null);

    private static bool IsFigure(Cell cell) =>
        cell.Number is not null || (!cell.IsEmpty && !char.IsLetter(cell.Trimmed[0]) && NumberText.Read(cell, NumberRange.Any) is not null);

    private static ListTable From(IReadOnlyList<OfferLine> lines, int at)
    {
        var first = at > 0 && lines[at - 1].RowNumber == lines[at].RowNumber - 1 && IsUpperHalf(lines[at - 1], lines[at]) ? at - 1 : at;
        var last = at + 1 < lines.Count && lines[at + 1].RowNumber == lines[at].RowNumber + 1 && IsLowerHalf(lines[at + 1], lines[at]) ? at + 1 : at;
        var width = Enumerable.Range(first, last - first + 1).Max(line => lines[line].Cells.Count);
        var headings = Enumerable.Range(0, width)
            .Select(column => Joined(Enumerable.Range(first, last - first + 1).Select(line => lines[line][column].Trimmed)))
            .ToList();
        return new ListTable(
            [.. lines.Take(first).SelectMany(Texts)],
            Named(headings, column => lines.Skip(last + 1).Any(line => !line[column].IsEmpty)),
            last + 1);
    }

    /// <summary>A second line of headings has no figure and stands only under headings or beside them: "SCA", "US¢/lb".</summary>
    private static bool IsLowerHalf(OfferLine line, OfferLine above)
    {
        var filled = Filled(line);
        return filled.Count > 0 && !line.Cells.Any(IsFigure)
            && (filled.Count < Filled(above).Count || Known(line) > 1)
            && filled.All(column => line[column].Trimmed.Length <= 40)
            && filled.Count(column => IsUnitOrHeading(line[column].Trimmed)) * 2 >= filled.Count;
    }

    /// <summary>A line of group headings stands over several columns and is no title.</summary>
    private static bool IsUpperHalf(OfferLine line, OfferLine below) =>
        Texts(line).Count >= 2 && !line.Cells.Any(IsFigure)
        && Filled(line).All(column => column < below.Cells.Count && line[column].Trimmed.Length <= 40)
        && Known(line) > 0;

    private static bool IsUnitOrHeading(string text) =>
        TradeWords.Heading(text) is not null || PriceQuote.Find(text) is not null || PriceQuote.FindUnit(text) is not null
        || QuantityText.UnitOf(text) is not null || text.Contains('%', StringComparison.Ordinal) || text.StartsWith('(');

    private static List<int> Filled(OfferLine line) =>
        [.. Enumerable.Range(0, line.Cells.Count).Where(column => !line[column].IsEmpty)];

    private static string Joined(IEnumerable<string> parts) => string.Join(' ', parts.Where(part => part.Length > 0).Distinct());

    private static ListTable? WithoutHeadings(IReadOnlyList<OfferLine> lines)
    {
        var first = lines.ToList().FindIndex(line => Texts(line).Count >= 3);
        if (first < 0)
        {
            return null;
        }

        var width = lines.Skip(first).Max(line => line.Cells.Count);
        return new ListTable(
            [.. lines.Take(first).SelectMany(Texts)],
            Named([.. Enumerable.Repeat("", width)], column => lines.Any(line => !line[column].IsEmpty)),
            first);
    }

    /// <summary>Every heading once: columns without one are called by their letter, a repeated one gets its count.</summary>
    private static List<string> Named(List<string> headings, Func<int, bool> hasData)
    {
        var seen = new Dictionary<string, int>();
        var named = new List<string>();
        for (var column = 0; column < headings.Count; column++)
        {
            var name = headings[column].Length > 0 ? headings[column] : hasData(column) ? $"column {Letter(column)}" : "";
            var folded = SearchText.Of(name);
            var count = seen[folded] = seen.GetValueOrDefault(folded) + 1;
            named.Add(name.Length > 0 && count > 1 ? $"{name} ({count})" : name);
        }

        return named;
    }

    private static string Letter(int column) =>
        column < 26 ? ((char)('A' + column)).ToString() : Letter((column / 26) - 1) + (char)('A' + (column % 26));
}

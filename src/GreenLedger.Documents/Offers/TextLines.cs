using CsvHelper;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>The rows of a text table whose separator (semicolon, comma, tab, bar) is told by its first lines.</summary>
internal static class TextLines
{
    private static readonly char[] Separators = ['\t', ';', ',', '|'];

    public static IEnumerable<OfferLine> Read(string text)
    {
        var body = WithoutSeparatorLine(text, out var stated);
        var options = new CsvReaderOptions
        {
            Separator = stated ?? Separator(body),
            HasHeader = false,
            SkipEmptyLines = false,
            MaxRecordSize = 1_000_000,
        };
        using var reader = CsvReader.FromText(body, options);
        for (var row = stated is null ? 1 : 2; reader.Read(); row++)
        {
            if (Line(reader, row) is { IsBlank: false } line)
            {
                yield return line;
            }
        }
    }

    /// <summary>Spreadsheet programs may write <c>sep=;</c> as the first line.</summary>
    private static string WithoutSeparatorLine(string text, out char? separator)
    {
        var end = text.IndexOf('\n', StringComparison.Ordinal);
        var first = (end < 0 ? text : text[..end]).Trim('\r', ' ', '"');
        separator = first.Length == 5 && first.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) ? first[4] : null;
        return separator is null ? text : text[(end + 1)..];
    }

    private static OfferLine Line(CsvReader reader, int row)
    {
        var cells = new Cell[Math.Min(reader.FieldCount, OfferWorkbook.MostColumns)];
        for (var column = 0; column < cells.Length; column++)
        {
            var text = reader.GetString(column);
            cells[column] = new Cell(text.Length > OfferWorkbook.LongestCell ? text[..OfferWorkbook.LongestCell] : text);
        }

        return new OfferLine(row, cells);
    }

    /// <summary>
    /// The sign that stands the same number of times in most of the first lines: of several the one that parts them into
    /// the most columns, since a decimal comma also recurs.
    /// </summary>
    private static char Separator(string text)
    {
        var lines = FirstLines(text);
        return Separators.MaxBy(separator => Steadiness(lines, separator));
    }

    private static int Steadiness(List<string> lines, char separator)
    {
        var counts = lines.Select(line => CountOutsideQuotes(line, separator)).Where(count => count > 0).ToList();
        var most = counts.GroupBy(count => count).MaxBy(group => group.Count() * group.Key);
        return most is null ? 0 : most.Count() * most.Key;
    }

    private static List<string> FirstLines(string text)
    {
        var lines = new List<string>();
        using var reader = new StringReader(text);
        while (lines.Count < 60 && reader.ReadLine() is { } line)
        {
            lines.Add(line);
        }

        return lines;
    }

    private static int CountOutsideQuotes(string line, char separator)
    {
        var (count, quoted) = (0, false);
        foreach (var sign in line)
        {
            quoted ^= sign == '"';
            count += sign == separator && !quoted ? 1 : 0;
        }

        return count;
    }
}

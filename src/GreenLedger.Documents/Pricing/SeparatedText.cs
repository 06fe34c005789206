using CsvHelper;

namespace GreenLedger.Documents.Pricing;

/// <summary>The lines of a small text table with their numbers, cells trimmed, blank lines passed over.</summary>
internal static class SeparatedText
{
    private const int LongestLine = 100_000;

    /// <exception cref="CsvFormatException">A line is longer than any of the tables read here.</exception>
    public static IEnumerable<(int Row, string[] Cells)> Lines(string text, char separator)
    {
        var options = new CsvReaderOptions
        {
            Separator = separator,
            HasHeader = false,
            TrackLineNumbers = true,
            MaxRecordSize = LongestLine,
        };
        using var reader = CsvReader.FromText(text.TrimStart('\uFEFF'), options);
        while (reader.Read())
        {
            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] = reader.GetString(i).Trim();
            }

            if (cells.Any(cell => cell.Length > 0))
            {
                yield return ((int)reader.LineNumber, cells);
            }
        }
    }
}

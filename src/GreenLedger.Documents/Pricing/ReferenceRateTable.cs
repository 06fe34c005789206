using CsvHelper;
using GreenLedger.Domain;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Pricing;

/// <summary>
/// Reads reference rates as comma-separated text: <c>Date,USD,JPY,…,</c> with a trailing comma, a line for each day,
/// <c>N/A</c> where a currency had no rate. Closed currencies stay as columns.
/// </summary>
internal static class ReferenceRateTable
{
    public static RateFile Read(string text, string noRates)
    {
        try
        {
            using var rows = SeparatedText.Lines(text, ',').GetEnumerator();
            return rows.MoveNext() && IsHead(rows.Current.Cells)
                ? ReadDays(rows, rows.Current.Cells)
                : ReferenceRateFile.Refused(noRates);
        }
        catch (CsvFormatException)
        {
            // A line longer than any of rates: some other kind of file.
            return ReferenceRateFile.Refused(noRates);
        }
    }

    private static bool IsHead(string[] cells) =>
        cells.Length > 1 && cells[0] == "Date" && cells[1..].All(cell => cell.Length is 0 or 3);

    private static RateFile ReadDays(IEnumerator<(int Row, string[] Cells)> rows, string[] codes)
    {
        var lines = new List<RateLine>();
        var problems = new List<Problem>();
        while (rows.MoveNext())
        {
            var (row, cells) = rows.Current;
            if (ReferenceRateFile.ReadDay(cells[0], row, problems) is not { } on)
            {
                continue;
            }

            for (var i = 1; i < Math.Min(cells.Length, codes.Length); i++)
            {
                if (cells[i] is not ("" or "N/A") && codes[i].Length > 0)
                {
                    ReferenceRateFile.ReadRate(codes[i], on, cells[i], row, lines, problems);
                }
            }
        }

        return new RateFile(problems.Count == 0 ? lines : [], problems);
    }
}

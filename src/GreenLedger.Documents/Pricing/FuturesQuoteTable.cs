using System.Globalization;
using System.Text;
using CsvHelper;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Pricing;

/// <summary>
/// Reads futures quotes from comma-, semicolon- or tab-separated text with a header: the month (KCH27), the day and
/// the price in the market's unit. Days are 2026-11-24 or 24 Nov 2026; others could mean two days and are refused.
/// </summary>
public static class FuturesQuoteTable
{
    public const int LargestFile = 4 * 1024 * 1024;

    private static readonly string[] MonthWords = ["month", "contract", "symbol", "futures month"];
    private static readonly string[] DayWords = ["date", "day", "on"];
    private static readonly string[] PriceWords = ["price", "settlement", "settle", "close", "quote", "quoted"];
    private static readonly string[] Days = ["yyyy-MM-dd", "d MMM yyyy", "d MMMM yyyy", "dd-MMM-yyyy"];

    /// <param name="today">For symbols with a one-digit year.</param>
    public static QuoteFile Read(byte[] file, DateOnly today)
    {
        if (file.Length > LargestFile)
        {
            return Refused($"The file is larger than {LargestFile / 1024 / 1024} MB: send the quotes of fewer days.");
        }

        var text = Encoding.UTF8.GetString(file).TrimStart('\uFEFF');
        try
        {
            using var rows = SeparatedText.Lines(text, Separator(text)).GetEnumerator();
            return rows.MoveNext() ? ReadRows(rows, Columns.Of(rows.Current.Cells), today) : Refused("The file is empty.");
        }
        catch (CsvFormatException)
        {
            // A line longer than any of quotes: some other kind of file.
            return Refused("This is no list of futures quotes: send text with the columns month, date and price.");
        }
    }

    private static QuoteFile Refused(string sentence) => new([], [new Problem(null, null, sentence)]);

    private static char Separator(string text)
    {
        var end = text.IndexOfAny(['\r', '\n']);
        var head = end < 0 ? text : text[..end];
        return head.Contains('\t', StringComparison.Ordinal) ? '\t' : head.Contains(';', StringComparison.Ordinal) ? ';' : ',';
    }

    private static QuoteFile ReadRows(IEnumerator<(int Row, string[] Cells)> rows, Columns columns, DateOnly today)
    {
        if (columns.Missing is { } missing)
        {
            return Refused($"The first line names no column for the {missing}: it needs month, date and price.");
        }

        var lines = new List<QuoteLine>();
        var problems = new List<Problem>();
        while (rows.MoveNext())
        {
            ReadRow(rows.Current.Cells, rows.Current.Row, columns, today, lines, problems);
        }

        return lines.Count + problems.Count == 0 ? Refused("The file has no quotes below its first line.") : new QuoteFile(problems.Count == 0 ? lines : [], problems);
    }

    private static void ReadRow(string[] cells, int row, Columns columns, DateOnly today, List<QuoteLine> lines, List<Problem> problems)
    {
        string Cell(int column) => column < cells.Length ? cells[column] : "";
        var before = problems.Count;
        if (!FuturesMonth.TryParse(Cell(columns.Month), today, out var month))
        {
            problems.Add(new Problem(row, "month", $"'{Cell(columns.Month)}' is not a futures month such as KCH27 or RCK27."));
        }

        if (!DateOnly.TryParseExact(Cell(columns.Day), Days, CultureInfo.InvariantCulture, DateTimeStyles.None, out var on))
        {
            problems.Add(new Problem(row, "date", $"'{Cell(columns.Day)}' is not a day such as 2026-11-24."));
        }

        if (!TryPrice(Cell(columns.Price), out var price))
        {
            problems.Add(new Problem(row, "price", $"'{Cell(columns.Price)}' is not a price such as 286.65."));
        }

        if (problems.Count == before)
        {
            lines.Add(new QuoteLine(row, month, on, price));
        }
    }

    /// <summary>286.65, 286,65 and 4,012 (four thousand and twelve: three digits after a lone comma are no decimals).</summary>
    private static bool TryPrice(string text, out decimal price)
    {
        var comma = text.LastIndexOf(',');
        var isDecimalComma = comma >= 0 && !text.Contains('.', StringComparison.Ordinal) && text.Length - comma - 1 != 3;
        var invariant = isDecimalComma ? text.Replace(',', '.') : text;
        return decimal.TryParse(invariant, NumberStyles.AllowDecimalPoint | NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out price);
    }

    private readonly record struct Columns(int Month, int Day, int Price)
    {
        public string? Missing => Month < 0 ? "month" : Day < 0 ? "date" : Price < 0 ? "price" : null;

        public static Columns Of(string[] head) => new(Find(head, MonthWords), Find(head, DayWords), Find(head, PriceWords));

        private static int Find(string[] head, string[] words) =>
            Array.FindIndex(head, cell => words.Contains(cell, StringComparer.OrdinalIgnoreCase));
    }
}

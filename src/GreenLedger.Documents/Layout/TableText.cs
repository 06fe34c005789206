using System.Globalization;
using System.Text;

namespace GreenLedger.Documents.Layout;

/// <summary>
/// A list as a text table (CSV as RFC 4180 has it: commas, quotes, CRLF), in UTF-8 with its mark so that spreadsheet
/// programs read it right. Text that such a program would take for a formula gets an apostrophe in front.
/// </summary>
public static class TableText
{
    public const string MediaType = "text/csv";

    public static Task WriteAsync<T>(Stream stream, IReadOnlyList<TableColumn<T>> columns, IEnumerable<T> rows, CancellationToken cancellationToken = default) =>
        WriteAsync(stream, columns, rows.ToAsyncEnumerable(), cancellationToken);

    /// <summary>The same of rows that are read while they are written.</summary>
    public static async Task WriteAsync<T>(
        Stream stream, IReadOnlyList<TableColumn<T>> columns, IAsyncEnumerable<T> rows, CancellationToken cancellationToken = default)
    {
        await using var text = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true) { NewLine = "\r\n" };
        await text.WriteLineAsync(Line(columns.Select(column => TextOf(column.Head))).AsMemory(), cancellationToken);
        await foreach (var row in rows.WithCancellation(cancellationToken))
        {
            await text.WriteLineAsync(Line(columns.Select(column => TextOf(column.Value(row)))).AsMemory(), cancellationToken);
        }
    }

    private static string Line(IEnumerable<string> cells) => string.Join(',', cells.Select(Quoted));

    private static string TextOf(object? value) => value switch
    {
        null => "",
        string text => IsFormula(text) ? "'" + text : text,
        decimal number => number.ToString("0.############", CultureInfo.InvariantCulture),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        DateTimeOffset instant => instant.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
        bool yes => yes ? "yes" : "no",
        _ => throw new ArgumentException($"A cell cannot hold a {value.GetType().Name}.", nameof(value)),
    };

    /// <summary>A plain number such as -20 is none, whatever it begins with.</summary>
    private static bool IsFormula(string text) =>
        text is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..]
        && !decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _);

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : '"' + text.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';
}

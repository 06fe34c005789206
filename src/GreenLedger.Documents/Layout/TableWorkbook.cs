using SpreadCheetah;
using SpreadCheetah.Metadata;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace GreenLedger.Documents.Layout;

/// <summary>
/// A list as a workbook with one sheet: the export of what a list page shows. Rows are streamed, so that a hundred
/// thousand of them need no memory. The header is frozen and filters are on. No cell is a formula, so text that
/// begins with <c>=</c>, <c>+</c>, <c>-</c> or <c>@</c> stays text.
/// </summary>
public static class TableWorkbook
{
    public const string MediaType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    private const int LastRow = 1_048_576;

    /// <param name="title">Names the sheet and the document.</param>
    public static Task WriteAsync<T>(Stream stream, string title, IReadOnlyList<TableColumn<T>> columns, IEnumerable<T> rows, CancellationToken cancellationToken = default) =>
        WriteAsync(stream, title, columns, rows.ToAsyncEnumerable(), cancellationToken);

    /// <summary>The same of rows that are read while they are written.</summary>
    public static async Task WriteAsync<T>(
        Stream stream,
        string title,
        IReadOnlyList<TableColumn<T>> columns,
        IAsyncEnumerable<T> rows,
        CancellationToken cancellationToken = default)
    {
        var options = new SpreadCheetahOptions { DocumentProperties = new DocumentProperties { Title = CellText.Clean(title) } };
        await using var workbook = await Spreadsheet.CreateNewAsync(stream, options, cancellationToken);
        await workbook.StartWorksheetAsync(CellText.SheetName(title), Sheet(columns), cancellationToken);
        var head = workbook.AddStyle(HeadStyle());
        await workbook.AddHeaderRowAsync(columns.Select(column => column.Head).ToArray(), head, cancellationToken);
        var styles = columns.Select(column => StyleOf(workbook, column)).ToArray();
        var cells = new StyledCell[columns.Count];
        await foreach (var row in rows.WithCancellation(cancellationToken))
        {
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] = new StyledCell(CellOf(columns[i].Value(row)), styles[i]);
            }

            await workbook.AddRowAsync(cells, cancellationToken);
        }

        await workbook.FinishAsync(cancellationToken);
    }

    private static WorksheetOptions Sheet<T>(IReadOnlyList<TableColumn<T>> columns)
    {
        var sheet = new WorksheetOptions
        {
            FrozenRows = 1,
            AutoFilter = new AutoFilterOptions($"A1:{ColumnName(columns.Count)}{LastRow}"),
        };
        for (var i = 0; i < columns.Count; i++)
        {
            sheet.Column(i + 1).Width = columns[i].Width;
        }

        return sheet;
    }

    /// <summary>1 is A, 27 is AA.</summary>
    private static string ColumnName(int number) =>
        number <= 26
            ? ((char)('A' + number - 1)).ToString()
            : ColumnName((number - 1) / 26) + ColumnName(((number - 1) % 26) + 1);

    private static Style HeadStyle()
    {
        var style = new Style();
        style.Font.Bold = true;
        style.Alignment.WrapText = true;
        style.Alignment.Vertical = VerticalAlignment.Top;
        return style;
    }

    private static StyleId? StyleOf<T>(Spreadsheet workbook, TableColumn<T> column) =>
        column.Format.Length == 0
            ? null
            : workbook.AddStyle(new Style { Format = NumberFormat.Custom(column.Format) });

    private static DataCell CellOf(object? value) => value switch
    {
        null => default,
        string text => new DataCell(CellText.Clean(text)),
        decimal number => new DataCell(number),
        DateOnly day => new DataCell(day.ToDateTime(TimeOnly.MinValue)),
        DateTimeOffset instant => new DataCell(instant.UtcDateTime),
        bool yes => new DataCell(yes ? "yes" : "no"),
        _ => throw new ArgumentException($"A cell cannot hold a {value.GetType().Name}.", nameof(value)),
    };
}

using System.Globalization;
using ClosedXML.Excel;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>One table of a summary on its sheet: figures that rows stand behind are formulas over them, and so are ratios and totals.</summary>
/// <param name="table">What stands on it.</param>
/// <param name="summary">For the currency, and the group that was asked for.</param>
/// <param name="sources">The sheets of rows; null for a sheet of rows itself.</param>
internal sealed class TableSheet(SummaryTable table, PurchaseSummary summary, IReadOnlyDictionary<(SummaryFigure Figure, bool IsBefore), SourceSheet>? sources)
{
    public void Write(FormulaBook book, IXLWorksheet sheet)
    {
        var columns = table.Columns.Select((column, at) => new SheetColumn<IReadOnlyList<SummaryCell>>(
            column.Head.Length == 0 ? "Figure" : column.Head, WidthOf(at), FormatOf(column.Kind), (row, number) => ValueOf(row, at, number))).ToList();
        book.Table(sheet, columns, table.Rows, frozenColumns: 1);
        if (table.Totals is { } totals)
        {
            // A row lies between, so that sorting leaves the totals alone.
            var number = table.Rows.Count + 3;
            for (var at = 0; at < totals.Count; at++)
            {
                book.Put(sheet.Cell(number, at + 1), TotalOf(totals[at], at, number));
            }

            sheet.Row(number).Style.Font.Bold = true;
        }
    }

    private object? ValueOf(IReadOnlyList<SummaryCell> row, int at, int number)
    {
        var (cell, column) = (row[at], table.Columns[at]);
        if (column.Total is { Over: { } over, Under: { } under } && cell.Value is not null)
        {
            return new SheetFormula(Ratio(over, under, number), AsNumber(cell.Value));
        }

        return column.Kind is FigureKind.Count or FigureKind.Kilograms or FigureKind.Money
            && cell is { Value: decimal, Link: { Rows: { } rows, Group: var group } } && SourceOf(rows) is { } source
            ? new SheetFormula(source.Formula(column.Kind, rows, group is null ? null : string.Create(CultureInfo.InvariantCulture, $"$A{number}")), AsNumber(cell.Value))
            : cell.Value;
    }

    /// <summary>Null where the rows are none or narrowed by what their sheet has no column for.</summary>
    private SourceSheet? SourceOf(RowFilter rows) =>
        rows is { Month: null, Futures: null } && sources?.GetValueOrDefault((rows.Figure, rows.IsBefore)) is { IsEmpty: false } source ? source : null;

    private object? TotalOf(SummaryCell cell, int at, int number) => table.Columns[at].Total switch
    {
        { Over: { } over, Under: { } under } => new SheetFormula(Ratio(over, under, number), AsNumber(cell.Value)),
        not null => new SheetFormula(string.Create(CultureInfo.InvariantCulture, $"SUBTOTAL(9,{FormulaBook.Letter(at + 1)}2:{FormulaBook.Letter(at + 1)}{table.Rows.Count + 1})"), AsNumber(cell.Value)),
        null => cell.Value,
    };

    private static string Ratio(int over, int under, int row)
    {
        var (dividend, divisor) = (FormulaBook.Letter(over + 1), FormulaBook.Letter(under + 1));
        return string.Create(CultureInfo.InvariantCulture, $"IF({divisor}{row}>0,{dividend}{row}/{divisor}{row},\"\")");
    }

    private static double? AsNumber(object? value) => value is decimal figure ? (double)figure : null;

    private double WidthOf(int at) => table.Columns[at].Kind switch
    {
        FigureKind.Text => Math.Clamp(table.Rows.Select(row => (row[at].Value as string)?.Length ?? 0).Append(table.Columns[at].Head.Length).Max() + 2, 8, 70),
        FigureKind.Count => 10,
        _ => 15,
    };

    private string FormatOf(FigureKind kind) => kind switch
    {
        FigureKind.Text => "",
        FigureKind.Day => FormulaBook.DayFormat,
        FigureKind.Count => "#,##0",
        FigureKind.Kilograms => "#,##0.0",
        FigureKind.Money => summary.Currency.Decimals == 0 ? "#,##0" : "#,##0." + new string('0', summary.Currency.Decimals),
        FigureKind.PerKilogram => "#,##0.00",
        FigureKind.Points => "0.00",
        FigureKind.Share => "0.0%",
        FigureKind.PerPoint => "0.0000",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}

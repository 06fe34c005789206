using System.Globalization;
using ClosedXML.Excel;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>A sheet of rows that formulas add up, and how a formula finds them.</summary>
internal sealed class SourceSheet
{
    private readonly string _name;
    private readonly SummaryTable _table;

    private SourceSheet(RowFilter filter, string name, SummaryTable table) => (Filter, _name, _table) = (filter, name, table);

    public RowFilter Filter { get; }

    public bool IsEmpty => _table.Rows.Count == 0;

    public static SourceSheet Write(FormulaBook book, PurchaseSummary summary, RowFilter filter)
    {
        var name = filter.IsBefore ? $"{Word(filter.Figure)} before" : $"{Word(filter.Figure)} rows";
        var table = SummaryTables.Rows(summary, filter, name, hasKeys: true);
        var source = new SourceSheet(filter, name, table);
        if (!source.IsEmpty)
        {
            var sheet = book.Add(name);
            new TableSheet(table, summary, null).Write(book, sheet);
            source.Name(sheet, summary.Currency.Code);
        }

        return source;
    }

    /// <summary>The formula of a figure over these rows; those of a group, a band or a whole point where it is narrowed.</summary>
    /// <param name="kind">Count, kilograms or money.</param>
    /// <param name="narrowed">What narrows the figure.</param>
    /// <param name="group">A cell or text that names the group; null for all.</param>
    public string Formula(FigureKind kind, RowFilter narrowed, string? group)
    {
        var tests = new[]
        {
            group is null ? null : $"EXACT({Range(SummaryTables.GroupKey)},{group})",
            narrowed.Band is { } band ? $"EXACT({Range(SummaryTables.BandKey)},{Quoted(band)})" : null,
            narrowed.Score is { } score ? string.Create(CultureInfo.InvariantCulture, $"({Range(SummaryTables.PointsKey)}={score})") : null,
        }.OfType<string>().ToList();
        var figure = kind == FigureKind.Count ? null : Range(kind);
        return (tests.Count, figure) switch
        {
            (0, null) => $"ROWS({Range(FigureKind.Kilograms)})",
            (0, { } sum) => $"SUM({sum})",
            (_, null) => $"SUMPRODUCT({string.Join('*', tests.Append("1"))})",
            (_, { } sum) => $"SUMPRODUCT({string.Join('*', tests)},{sum})",
        };
    }

    private static string Quoted(string text) => "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private void Name(IXLWorksheet sheet, string currency)
    {
        var prefix = _name.Replace(' ', '_');
        foreach (var (kind, word) in new[] { (FigureKind.Kilograms, "kg"), (FigureKind.Money, currency) })
        {
            var column = ColumnOf(kind);
            sheet.Range(2, column, _table.Rows.Count + 1, column).AddToNamed($"{prefix}_{word}", XLScope.Workbook);
        }
    }

    private string Range(string head) => Range(_table.Columns.Index().First(column => column.Item.Head == head).Index + 1);

    private string Range(FigureKind kind) => Range(ColumnOf(kind));

    private string Range(int column) => string.Create(
        CultureInfo.InvariantCulture, $"'{_name}'!${FormulaBook.Letter(column)}$2:${FormulaBook.Letter(column)}${_table.Rows.Count + 1}");

    private int ColumnOf(FigureKind kind) => _table.Columns.Index().First(column => column.Item.Kind == kind).Index + 1;

    private static string Word(SummaryFigure figure) => figure switch
    {
        SummaryFigure.Contracted => "Contracted",
        SummaryFigure.Shipped => "Shipped",
        SummaryFigure.Arrived => "Arrived",
        SummaryFigure.ToCome => "To come",
        SummaryFigure.Open => "Open",
        SummaryFigure.InStock => "In stock",
        SummaryFigure.Landed => "Landed",
        _ => throw new ArgumentOutOfRangeException(nameof(figure)),
    };
}

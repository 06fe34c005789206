using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>
/// A purchase summary as a workbook that goes on computing: the rows of purchases stand on sheets of their own, and the figures
/// of the summary's tables are formulas over them. Every formula carries its value, so that a reader without a calculator sees
/// figures too.
/// </summary>
public static class SummaryWorkbook
{
    internal const string NotesName = "Notes";

    /// <summary>The rows that the tables' formulas add up, each on its sheet.</summary>
    private static readonly RowFilter[] Sources =
    [
        new(SummaryFigure.Contracted), new(SummaryFigure.Shipped), new(SummaryFigure.Arrived), new(SummaryFigure.ToCome), new(SummaryFigure.Open), new(SummaryFigure.InStock), new(SummaryFigure.Landed),
        new(SummaryFigure.Contracted, IsBefore: true), new(SummaryFigure.Shipped, IsBefore: true), new(SummaryFigure.Arrived, IsBefore: true),
        new(SummaryFigure.Landed, IsBefore: true),
    ];

    public static void Write(SummaryReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        var summary = report.Summary;
        using var book = new FormulaBook($"Purchase summary, {SummaryWords.Scope(summary.Wish)}", report.MadeBy, report.House);
        var tables = SummaryTables.Of(summary).Where(table => table.Rows.Count > 0).ToList();
        var sheets = tables.ConvertAll(table => book.Add(table.Name));
        var sources = Sources.Select(filter => SourceSheet.Write(book, summary, filter)).ToDictionary(source => (source.Filter.Figure, source.Filter.IsBefore));
        for (var i = 0; i < tables.Count; i++)
        {
            new TableSheet(tables[i], summary, sources).Write(book, sheets[i]);
        }

        Notes(book, report);
        book.Save(stream);
    }

    private static void Notes(FormulaBook book, SummaryReport report)
    {
        var sheet = book.Add(NotesName);
        var lines = new List<(string Of, string Says)>
        {
            ("House", report.House),
            ("Summary", SummaryWords.Scope(report.Summary.Wish)),
            ("Taken out", $"by {report.MadeBy}, {Printed.Moment(report.MadeAt, report.Zone)}"),
        };
        lines.AddRange(SummaryWords.Notes(report.Summary));
        lines.AddRange(SummaryTables.Of(report.Summary).Select(table => ($"Sheet “{table.Name}”", table.Rows.Count == 0 ? $"{table.Note} None, so there is no sheet." : table.Note)));
        lines.Add(("Formulas", "Figures of the tables are formulas over the sheets of rows: correct a cell there and they follow. Totals below a table are of the rows that its filter leaves."));
        book.Table<(string Of, string Says)>(
            sheet, [new("Of", 24, "", (line, _) => line.Of), new("What it means", 110, "", (line, _) => line.Says) { Wraps = true }], lines, frozenColumns: 1);
    }
}

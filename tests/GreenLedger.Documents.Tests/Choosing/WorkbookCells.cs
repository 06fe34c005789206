using System.Globalization;
using ClosedXML.Excel;

namespace GreenLedger.Documents.Tests.Choosing;

/// <summary>Finds cells of a shortlist's workbook by the words that people see.</summary>
internal static class WorkbookCells
{
    public static IXLCell Of(this XLWorkbook book, string lot, string head)
    {
        var sheet = book.Worksheet("Shortlist");
        var row = sheet.Column(2).CellsUsed().First(cell => cell.GetString() == lot).Address.RowNumber;
        var column = sheet.Row(1).CellsUsed().First(cell => cell.GetString() == head).Address.ColumnNumber;
        return sheet.Cell(row, column);
    }

    public static IXLRow RuleRow(this XLWorkbook book, string name) =>
        book.Worksheet("Rules").Column(1).CellsUsed().Last(cell => cell.GetString() == name).WorksheetRow();

    /// <summary>The value stored beside the formula, not computed anew.</summary>
    public static double CachedNumber(this IXLCell cell) => Convert.ToDouble(cell.CachedValue, CultureInfo.InvariantCulture);

    public static string CachedText(this IXLCell cell) =>
        cell.CachedValue is string { Length: 0 } or null ? "-" : cell.CachedNumber().ToString("#.0000", CultureInfo.InvariantCulture);
}

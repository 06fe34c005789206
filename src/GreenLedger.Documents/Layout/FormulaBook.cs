using System.Globalization;
using ClosedXML.Excel;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace GreenLedger.Documents.Layout;

/// <summary>A cell that goes on computing: the formula without its equals sign, and what it comes to now; null is an empty text.</summary>
internal sealed record SheetFormula(string Text, double? Value);

/// <summary>
/// One column of a sheet with formulas: its head with the unit in it, its number format, and what a row's cell holds.
/// The value gets the row's number in the sheet, which its formulas refer to.
/// </summary>
internal sealed record SheetColumn<T>(string Head, double Width, string Format, Func<T, int, object?> Value)
{
    public bool Wraps { get; init; }
}

/// <summary>
/// A workbook whose totals are formulas, each with its value stored beside it, so that a reader without a calculator
/// sees figures too. ClosedXML stores only values that it computed itself, cell by cell, which takes minutes on a long
/// list: the values are known, and are put in when the book is saved.
/// </summary>
internal sealed class FormulaBook : IDisposable
{
    public const string DayFormat = "d mmm yyyy";

    private const string HeadFill = "#E8EFEA";

    private readonly XLWorkbook _book = new();
    private readonly Dictionary<(string Sheet, string Address), double?> _values = [];

    public FormulaBook(string title, string author, string company)
    {
        _book.Properties.Title = CellText.Clean(title);
        _book.Properties.Author = CellText.Clean(author);
        _book.Properties.Company = CellText.Clean(company);
    }

    /// <summary>Column letters: 1 is A, 27 is AA.</summary>
    public static string Letter(int column) => XLHelper.GetColumnLetterFromNumber(column);

    public void Dispose() => _book.Dispose();

    public IXLWorksheet Add(string name) => _book.AddWorksheet(name);

    /// <summary>Writes head and rows from the first row down, with filters. Frozen: the head and this many columns.</summary>
    public void Table<T>(IXLWorksheet sheet, IReadOnlyList<SheetColumn<T>> columns, IReadOnlyList<T> rows, int frozenColumns)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            var column = sheet.Column(i + 1);
            column.Width = columns[i].Width;
            column.Style.NumberFormat.Format = columns[i].Format;
            column.Style.Alignment.Vertical = XLAlignmentVerticalValues.Top;
            column.Style.Alignment.WrapText = columns[i].Wraps;
            Head(sheet.Cell(1, i + 1), columns[i].Head, columns[i].Format.Length > 0);
            for (var row = 0; row < rows.Count; row++)
            {
                Put(sheet.Cell(row + 2, i + 1), columns[i].Value(rows[row], row + 2));
            }
        }

        sheet.SheetView.Freeze(1, frozenColumns);
        sheet.Range(1, 1, rows.Count + 1, columns.Count).SetAutoFilter();
        PrintWide(sheet);
    }

    public void Head(IXLCell cell, string text, bool isNumber = false)
    {
        Put(cell, text);
        cell.Style.Font.Bold = true;
        cell.Style.Fill.BackgroundColor = XLColor.FromHtml(HeadFill);
        cell.Style.Alignment.WrapText = true;
        cell.Style.Alignment.Horizontal = isNumber ? XLAlignmentHorizontalValues.Right : XLAlignmentHorizontalValues.Left;
        cell.Style.Border.BottomBorder = XLBorderStyleValues.Thin;
    }

    /// <summary>Puts a value as what it is. Text never becomes a formula or a number, whatever it looks like.</summary>
    public void Put(IXLCell cell, object? value)
    {
        switch (value)
        {
            case null:
                break;
            case SheetFormula formula:
                cell.FormulaA1 = formula.Text;
                _values[(cell.Worksheet.Name, cell.Address.ToString()!)] = formula.Value;
                break;
            case string text:
                cell.SetDataType(XLDataType.Text);
                cell.SetValue(CellText.Clean(text));
                break;
            case DateOnly day:
                cell.SetValue(day.ToDateTime(TimeOnly.MinValue));
                cell.Style.NumberFormat.Format = DayFormat;
                break;
            case bool yes:
                cell.SetValue(yes ? "yes" : "no");
                break;
            default:
                cell.SetValue(Convert.ToDouble(value, CultureInfo.InvariantCulture));
                break;
        }
    }

    public void Save(Stream stream)
    {
        using var whole = new MemoryStream();
        _book.SaveAs(whole, new SaveOptions { EvaluateFormulasBeforeSaving = false, ValidatePackage = false });
        using (var document = SpreadsheetDocument.Open(whole, isEditable: true))
        {
            StoreValues(document.WorkbookPart!);
        }

        whole.Position = 0;
        whole.CopyTo(stream);
    }

    private void StoreValues(WorkbookPart book)
    {
        foreach (var sheet in book.Workbook.Descendants<Sheet>())
        {
            var part = (WorksheetPart)book.GetPartById(sheet.Id!.Value!);
            foreach (var cell in part.Worksheet.Descendants<Cell>().Where(cell => cell.CellFormula is not null))
            {
                var value = _values[(sheet.Name!.Value!, cell.CellReference!.Value!)];
                cell.CellValue = new CellValue((value + 0.0)?.ToString("R", CultureInfo.InvariantCulture) ?? "");
                cell.DataType = value is null ? CellValues.String : CellValues.Number;
            }
        }
    }

    private static void PrintWide(IXLWorksheet sheet)
    {
        sheet.PageSetup.PageOrientation = XLPageOrientation.Landscape;
        sheet.PageSetup.PaperSize = XLPaperSize.A4Paper;
        sheet.PageSetup.PagesWide = 1;
        sheet.PageSetup.PagesTall = 0;
        sheet.PageSetup.SetRowsToRepeatAtTop(1, 1);
    }
}

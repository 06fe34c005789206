using ExcelDataReader;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>
/// The rows of a workbook's visible sheets. Formulas are never evaluated: a cell is what the sender's program stored in it.
/// Merged cells hold their text in every cell that they cover.
/// </summary>
internal static class SheetLines
{
    private const int MostSheets = 60;

    static SheetLines() => System.Text.Encoding.RegisterProvider(System.Text.CodePagesEncodingProvider.Instance);

    /// <param name="file">The workbook.</param>
    /// <param name="most">The most rows to give of each sheet.</param>
    /// <param name="opened">Told how many rows each sheet that is opened has.</param>
    public static IEnumerable<OfferLine> Read(byte[] file, int most = int.MaxValue, Action<int>? opened = null)
    {
        using var reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(file, writable: false));
        Rule.Require(reader.ResultsCount <= MostSheets, "This workbook has too many sheets to be an offer list.", "File");
        var known = new RecurringText();
        do
        {
            if (reader.VisibleState != "visible")
            {
                continue;
            }

            var merged = new MergedCells(reader.MergeCells);
            opened?.Invoke(reader.RowCount);
            for (var row = 1; row <= most && reader.Read(); row++)
            {
                if (Line(reader, row, merged, known) is { IsBlank: false } line)
                {
                    yield return line;
                }
            }
        }
        while (reader.NextResult());
    }

    private static OfferLine Line(IExcelDataReader reader, int row, MergedCells merged, RecurringText known)
    {
        var width = Math.Min(reader.FieldCount, OfferWorkbook.MostColumns);
        while (width > 0 && reader.GetValue(width - 1) is null && !merged.Any)
        {
            width--;
        }

        var cells = new Cell[width];
        for (var column = 0; column < width; column++)
        {
            cells[column] = CellAt(reader, column, known);
        }

        merged.Fill(row - 1, cells);
        return new OfferLine(row, cells, reader.Name, reader.RowHeight == 0);
    }

    private static Cell CellAt(IExcelDataReader reader, int column, RecurringText known) => reader.GetValue(column) switch
    {
        null => Cell.Empty,
        string text => new Cell(text.Length > OfferWorkbook.LongestCell ? text[..OfferWorkbook.LongestCell] : known.Of(text)),
        double number => Number(number, reader, column, known),
        int number => Cell.Of(number),
        DateTime moment => Cell.Of(DateOnly.FromDateTime(moment)),
        bool claim => new Cell(claim ? "yes" : "no"),
        var other => new Cell(other.ToString() ?? ""),
    };

    /// <summary>A share formatted in per cent is given as its percentage: 0.108 shown as 10.8 % is 10.8.</summary>
    private static Cell Number(double number, IExcelDataReader reader, int column, RecurringText known)
    {
        if (Math.Abs(number) > 1e15)
        {
            return new Cell(number.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
        }

        var isShare = number is > 0 and < 1 && reader.GetNumberFormatString(column)?.Contains('%', StringComparison.Ordinal) == true;
        return isShare ? Cell.Of((decimal)number * 100m) : known.Of(number);
    }
}

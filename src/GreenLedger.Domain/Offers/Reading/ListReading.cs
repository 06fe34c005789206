using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// A whole list read by a mapping: the rows that are offers, the rows set aside with what is wrong with them, and how
/// many lines were titles, totals or notes. The cells of a row set aside stand in the order of the mapping's columns.
/// </summary>
public sealed record ListReading(IReadOnlyList<OfferRow> Rows, IReadOnlyList<(OfferLine Line, Problem Problem)> SetAside, int Notes)
{
    private static readonly ColumnMeaning[] Figures =
    [
        ColumnMeaning.Price, ColumnMeaning.Differential, ColumnMeaning.Bags, ColumnMeaning.BagWeight, ColumnMeaning.Packaging,
        ColumnMeaning.Quantity, ColumnMeaning.NetWeight, ColumnMeaning.StatedScore,
    ];

    /// <summary>
    /// Reads every line once. <paramref name="report"/> is told now and then how many rows were read.
    /// </summary>
    /// <exception cref="RuleBrokenException">The mapping does not fit the list: no sheet has a column that names lots.</exception>
    public static ListReading Of(IEnumerable<OfferLine> lines, OfferMapping mapping, ListReference reference, Action<int>? report = null)
    {
        mapping.Check();
        var rows = new List<OfferRow>();
        var setAside = new List<(OfferLine, Problem)>();
        var firstRows = new Dictionary<string, int>();
        var notes = 0;
        var isNamed = false;
        foreach (var sheet in ListSheets.Of(lines))
        {
            var columns = new SheetColumns(sheet.Table.Headings, mapping);
            isNamed |= columns.Has(ColumnMeaning.Ref) || columns.Has(ColumnMeaning.Name) || columns.Has(ColumnMeaning.Producer);
            notes += Read(sheet, columns, new RowReader(columns, mapping, reference), reference, rows, setAside, firstRows, report);
        }

        Rule.Require(isNamed, "No column of this list has a heading that the mapping names: choose the columns again.", "Mapping");
        return new ListReading(rows, setAside, notes);
    }

    /// <summary>
    /// Reads one row again after it was mended; its cells stand in the order of the mapping's columns. Either the row, or
    /// a sentence for each fault.
    /// </summary>
    public static (OfferRow? Row, IReadOnlyList<Problem> Problems) Mend(OfferLine line, OfferMapping mapping, ListReference reference)
    {
        var columns = new SheetColumns([.. mapping.Columns.Select(column => column.Heading)], mapping);
        var problems = new RowProblems(line, columns);
        var row = new RowReader(columns, mapping, reference).Read(line, reference.CountryOf(line.Sheet), problems);
        return (row, problems.All);
    }

    private static int Read(
        ListSheet sheet, SheetColumns columns, RowReader reader, ListReference reference, List<OfferRow> rows,
        List<(OfferLine, Problem)> setAside, Dictionary<string, int> firstRows, Action<int>? report)
    {
        var notes = 0;
        var sectionCountry = reference.CountryOf(sheet.Name);
        foreach (var line in sheet.Rows)
        {
            if (IsNote(line, columns))
            {
                sectionCountry = SectionOf(line, reference) ?? sectionCountry;
                notes += line.IsBlank ? 0 : 1;
                continue;
            }

            var problems = new RowProblems(line, columns);
            var row = line.IsHidden ? null : reader.Read(line, sectionCountry, problems);
            if (line.IsHidden)
            {
                problems.Add(null, "The sender hid this row: take it in if it is on offer all the same.");
            }

            if (row is not null && !firstRows.TryAdd(row.Key, line.RowNumber))
            {
                problems.Add(ColumnMeaning.Ref, $"The lot {row.Ref} stands twice in this list (first in row {firstRows[row.Key]}): keep one of them.");
            }

            Sort(row, line, columns, problems, rows, setAside);
            if ((rows.Count + setAside.Count) % 1000 == 0)
            {
                report?.Invoke(rows.Count + setAside.Count);
            }
        }

        return notes;
    }

    private static void Sort(
        OfferRow? row, OfferLine line, SheetColumns columns, RowProblems problems, List<OfferRow> rows, List<(OfferLine, Problem)> setAside)
    {
        if (row is not null && !problems.Any)
        {
            rows.Add(row);
        }
        else
        {
            setAside.Add((columns.InOrder(line), problems.ToProblem()));
        }
    }

    /// <summary>Blank lines, single texts, totals, headings repeated, and footers: lines without any figure and mostly empty.</summary>
    private static bool IsNote(OfferLine line, SheetColumns columns)
    {
        Cell? first = null;
        var more = false;
        foreach (var cell in line.Cells)
        {
            if (!cell.IsEmpty)
            {
                more |= first is { } seen && seen.Text != cell.Text;
                first ??= cell;
            }
        }

        if (!more || first is not { } text)
        {
            return true;
        }

        return (text.Number is null && TradeWords.IsTotal(text.Text))
            || (Figures.All(meaning => columns.Cell(line, meaning).IsEmpty) && columns.Filled(line) * 2 < columns.Mapped)
            || IsHeading(line, columns);
    }

    private static bool IsHeading(OfferLine line, SheetColumns columns)
    {
        var filled = 0;
        for (var column = 0; column < line.Cells.Count; column++)
        {
            if (!line[column].IsEmpty)
            {
                filled++;
                if (column >= columns.Headings.Count || line[column].Trimmed != columns.Headings[column])
                {
                    return false;
                }
            }
        }

        return filled > 1;
    }

    private static string? SectionOf(OfferLine line, ListReference reference) =>
        ListTable.Texts(line) is [var only] ? reference.CountryOf(SearchText.Of(only)) : null;
}

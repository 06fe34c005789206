using ExcelDataReader;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>Which cells of a sheet are merged, and what stands in the first of each as the rows pass by.</summary>
internal sealed class MergedCells
{
    private const int MostCovered = 200_000;

    private readonly Dictionary<int, List<(int From, int To, CellRange Range)>> _byRow = [];
    private readonly Dictionary<CellRange, Cell> _texts = new(ReferenceEqualityComparer.Instance);

    /// <summary>Ranges beyond the most that a list of offers could have are left unmerged.</summary>
    public MergedCells(CellRange[]? ranges)
    {
        var covered = 0L;
        foreach (var range in ranges ?? [])
        {
            var lastColumn = Math.Min(range.ToColumn, OfferWorkbook.MostColumns - 1);
            covered += (long)(range.ToRow - range.FromRow + 1) * Math.Max(1, lastColumn - range.FromColumn + 1);
            if (covered > MostCovered)
            {
                break;
            }

            for (var row = range.FromRow; row <= range.ToRow; row++)
            {
                if (!_byRow.TryGetValue(row, out var list))
                {
                    _byRow[row] = list = [];
                }

                list.Add((range.FromColumn, lastColumn, range));
            }
        }
    }

    public bool Any => _byRow.Count > 0;

    /// <summary>Puts the text of each merged range into its cells of this row, counted from 0.</summary>
    public void Fill(int row, Cell[] cells)
    {
        if (!_byRow.TryGetValue(row, out var ranges))
        {
            return;
        }

        foreach (var (from, to, range) in ranges.Where(range => range.From < cells.Length))
        {
            if (row == range.FromRow)
            {
                _texts[range] = cells[from];
            }

            var text = _texts.GetValueOrDefault(range, Cell.Empty);
            for (var column = from; column <= to && column < cells.Length; column++)
            {
                cells[column] = text;
            }
        }
    }
}

namespace GreenLedger.Domain.Offers;

/// <summary>
/// One row of a list without judgement: its number as the sender's program shows it, counted from 1, its cells from the
/// first column on, the sheet it stands on, and whether the sender hid it.
/// </summary>
public sealed record OfferLine(int RowNumber, IReadOnlyList<Cell> Cells, string? Sheet = null, bool IsHidden = false)
{
    public bool IsBlank => Cells.All(cell => cell.IsEmpty);

    /// <summary>The cell in this column, counted from 0; empty beyond the row's end.</summary>
    public Cell this[int column] => column >= 0 && column < Cells.Count ? Cells[column] : Cell.Empty;
}

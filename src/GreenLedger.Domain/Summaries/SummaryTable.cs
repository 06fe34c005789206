using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;

namespace GreenLedger.Domain.Summaries;

/// <summary>What stands in a column, which decides how page, PDF and workbook write it.</summary>
public enum FigureKind
{
    Text = 0,
    Day = 1,
    Count = 2,

    /// <summary>Up to three decimals.</summary>
    Kilograms = 3,

    /// <summary>In the house currency, with its decimals.</summary>
    Money = 4,

    /// <summary>House currency for a kilogram.</summary>
    PerKilogram = 5,
    Points = 6,

    /// <summary>A share: 0.25 is 25 %.</summary>
    Share = 7,

    /// <summary>House currency for a kilogram and point.</summary>
    PerPoint = 8,
}

/// <summary>How a column's total follows from its table: the sum of the column, or one total divided by another.</summary>
/// <param name="Over">The column whose total is divided; null for the sum of the column itself.</param>
/// <param name="Under">The column whose total divides.</param>
public sealed record ColumnTotal(int? Over = null, int? Under = null)
{
    public static ColumnTotal Sum { get; } = new();

    public static ColumnTotal Ratio(int over, int under) => new(over, under);
}

/// <param name="Head">With the unit in it.</param>
/// <param name="Total">Null where the column has no total.</param>
public sealed record SummaryColumn(string Head, FigureKind Kind, ColumnTotal? Total = null);

/// <summary>Where a figure opens: the rows behind it, a group of the cut, or the record itself.</summary>
public sealed record SummaryLink(RowFilter? Rows = null, string? Group = null, Id<Contract>? Contract = null, Id<Arrival>? Arrival = null, Id<Offers.Offer>? Offer = null, Id<Claim>? Claim = null, Id<Offers.Lot>? Stock = null);

/// <param name="Value">A text, a day or a decimal; null where there is no figure.</param>
public sealed record SummaryCell(object? Value, SummaryLink? Link = null)
{
    public static implicit operator SummaryCell(string? text) => new(Value: text);

    public static implicit operator SummaryCell(decimal? figure) => new(Value: figure);

    public static implicit operator SummaryCell(DateOnly day) => new(Value: day);
}

/// <summary>
/// A table of a summary, described once: the page shows it, the PDF prints it and the workbook goes on computing it, so that
/// the three cannot disagree.
/// </summary>
/// <param name="Name">Short: the name of its sheet.</param>
/// <param name="Note">What its figures mean, in one or two sentences.</param>
/// <param name="Totals">One cell a column; null where the table has no totals.</param>
public sealed record SummaryTable(
    string Name, string Title, string Note, IReadOnlyList<SummaryColumn> Columns, IReadOnlyList<IReadOnlyList<SummaryCell>> Rows, IReadOnlyList<SummaryCell>? Totals = null)
{
    /// <summary>With what its columns add up to, computed from the rows by each column's rule.</summary>
    internal SummaryTable Totalled()
    {
        if (Rows.Count == 0)
        {
            return this;
        }

        var sums = Columns.Select((column, at) => column.Total is { Over: null } ? Rows.Sum(row => row[at].Value as decimal? ?? 0m) : (decimal?)null).ToList();
        return this with
        {
            Totals = [.. Columns.Select((column, at) => column.Total is { Over: { } over, Under: { } under } ? Ratio(sums[over], sums[under]) : at == 0 ? "Total" : new SummaryCell(Value: sums[at]))],
        };
    }

    private static SummaryCell Ratio(decimal? over, decimal? under) => new(Value: under is > 0m ? over / under : null);
}

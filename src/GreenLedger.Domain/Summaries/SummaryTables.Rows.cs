using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Summaries;

/// <summary>The rows behind a figure as a table.</summary>
public static partial class SummaryTables
{
    public const string GroupKey = "Group";
    public const string BandKey = "Band";
    public const string PointsKey = "Whole points";

    /// <summary>The rows behind a figure, with the totals that the figure shows.</summary>
    /// <param name="summary">Whose rows.</param>
    /// <param name="filter">Which figure, and what narrows it.</param>
    /// <param name="title">What the table is called.</param>
    /// <param name="hasKeys">With the columns by which a workbook's formulas find their rows: group, band and whole points.</param>
    public static SummaryTable Rows(PurchaseSummary summary, RowFilter filter, string title, bool hasKeys = false)
    {
        ArgumentNullException.ThrowIfNull(summary);
        ArgumentNullException.ThrowIfNull(filter);
        var columns = RowColumns(filter.Figure, summary.Currency.Code);
        if (hasKeys)
        {
            columns.AddRange(KeyColumns(summary));
        }

        return new SummaryTable(
            title,
            title,
            "",
            [.. columns.Select(column => column.Column)],
            [.. summary.Rows(filter).Select(row => columns.Select(column => column.CellOf(row)).ToList())]).Totalled();
    }

    private static List<(SummaryColumn Column, Func<SummaryRow, SummaryCell> CellOf)> RowColumns(SummaryFigure figure, string money)
    {
        var isStock = figure == SummaryFigure.InStock;
        List<(SummaryColumn Column, Func<SummaryRow, SummaryCell> CellOf)> columns =
        [
            .. isStock ? [] : new (SummaryColumn, Func<SummaryRow, SummaryCell>)[] { (new("Contract", FigureKind.Text), row => Contract(row.Purchase!)) },
            (new("Lot", FigureKind.Text), row => isStock ? new(LotOf(row.Lot).Value, new SummaryLink(Stock: row.Lot.LotId)) : LotOf(row.Lot)),
            (new("Supplier", FigureKind.Text), row => row.Lot.Supplier),
            (new("Origin", FigureKind.Text), row => row.Lot.Origin),
            (new("Process", FigureKind.Text), row => row.Lot.Process),
            (new("Certificates", FigureKind.Text), row => string.Join(", ", row.Lot.Certificates)),
            (new("Programme", FigureKind.Text), row => row.Lot.Programme),
            (new(DayHead(figure), FigureKind.Day), row => row.On),
            (new("Score, points", FigureKind.Points), row => row.Lot.Score?.Points),
            (new("kg", FigureKind.Kilograms, ColumnTotal.Sum), row => row.Net.Kilograms),
        ];
        if (figure == SummaryFigure.Open)
        {
            columns.Add((new("Unpriced, kg", FigureKind.Kilograms, ColumnTotal.Sum), row => row.Purchase!.Unpriced.Kilograms));
        }

        columns.AddRange(
        [
            (new(money, FigureKind.Money, ColumnTotal.Sum), row => row.Value?.Amount),
            (new($"{money}/kg", FigureKind.PerKilogram), row => row.Net > Weight.Zero ? row.Value?.Amount / row.Net.Kilograms : (decimal?)null),
            (new(figure is SummaryFigure.Landed or SummaryFigure.InStock ? "Cost" : "Price", FigureKind.Text), row => MoneyWord(figure, row)),
        ]);
        return columns;
    }

    private static string DayHead(SummaryFigure figure) => figure switch
    {
        SummaryFigure.Open or SummaryFigure.ToCome => "Ship until",
        SummaryFigure.InStock => "As of",
        _ => "Day",
    };

    private static IEnumerable<(SummaryColumn Column, Func<SummaryRow, SummaryCell> CellOf)> KeyColumns(PurchaseSummary summary) =>
    [
        (new(GroupKey, FigureKind.Text), row => summary.Wish.Cut.GroupOf(row.Lot)),
        (new(BandKey, FigureKind.Text), row => summary.BandOf(row.Lot)),
        (new(PointsKey, FigureKind.Count), row => PurchaseSummary.PointOf(row.Lot)),
    ];

    private static string MoneyWord(SummaryFigure figure, SummaryRow row) => (figure, row) switch
    {
        (SummaryFigure.Landed or SummaryFigure.InStock, { Value: null }) => "not billed",
        (SummaryFigure.Landed, { Purchase.IsEarlier: true }) => "from before",
        (SummaryFigure.Landed or SummaryFigure.InStock, _) => "billed so far",
        (_, { Value: null }) => "not known",
        _ => (row.IsProvisional ? "provisional" : "priced") + (row.Purchase is { IsEarlier: true } ? ", from before" : ""),
    };
}

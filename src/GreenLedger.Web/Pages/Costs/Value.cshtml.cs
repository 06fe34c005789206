using GreenLedger.Data.Stock;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Costs;

/// <summary>What the stock of a day was worth at cost, by the way of valuing that held on it.</summary>
public sealed class ValueModel(ValuationQuery query, HouseZone house) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public DateOnly? On { get; set; }

    public ValuationMethod Method { get; private set; }

    /// <summary>From which day on late bills are looked at; null for all of them.</summary>
    [BindProperty(SupportsGet = true)]
    public DateOnly? Since { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    public IReadOnlyList<ValuedRow> Rows { get; private set; } = [];

    /// <summary>By lot, the largest first, with the bills that came too late for coffee already gone.</summary>
    public IReadOnlyList<IGrouping<(Id<Lot> Id, string Lot), LateRow>> Late { get; private set; } = [];

    /// <summary>Of the rows that have a cost; null where none has.</summary>
    public Money? Total => Sum(Rows.Select(row => row.Cost).OfType<Money>());

    /// <summary>Null where no bill came too late.</summary>
    public Money? LateTotal => Sum(Late.SelectMany(lot => lot).Select(late => late.Late));

    public static Money? Sum(IEnumerable<Money> costs) => costs.Aggregate((Money?)null, (sum, cost) => sum is { } one ? one + cost : cost);

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        On ??= house.Today;
        var stock = await query.FindAsync(On.Value, cancellationToken);
        (Method, Rows) = (stock.Method, Sorted(stock.Rows));
        Late = [.. stock.LateSince(Since).OrderByDescending(late => Math.Abs(late.Late.MinorUnits)).GroupBy(late => (late.LotId, late.Lot))
            .OrderByDescending(lot => Math.Abs(lot.Sum(late => late.Late.MinorUnits))).ThenBy(lot => lot.Key.Lot, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>What the list shows as a workbook, a pool with each of its lots.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        await OnGetAsync(cancellationToken);
        var late = Late.ToDictionary(lot => lot.Key.Id, lot => Sum(lot.Select(bill => bill.Late)));
        TableColumn<SheetRow>[] columns =
        [
            TableColumn<SheetRow>.Text("Valued as", row => row.Pool, 36),
            TableColumn<SheetRow>.Text("Lot", row => row.Lot, 36),
            TableColumn<SheetRow>.Number("In stock, kg", row => row.Left.Kilograms),
            TableColumn<SheetRow>.Text("Currency", row => row.Cost?.Currency.Code, 10),
            TableColumn<SheetRow>.Number("Value", row => row.Cost?.Amount),
            TableColumn<SheetRow>.Number("Late bills for coffee already gone", row => late.GetValueOrDefault(row.Id)?.Amount),
        ];
        return await this.WorkbookAsync("Value of the stock", columns, Rows.SelectMany(row => row.Parts().Select(lot => new SheetRow(row.Name, lot.Id, lot.Name, lot.Left, lot.Cost))), cancellationToken);
    }

    private IReadOnlyList<ValuedRow> Sorted(IReadOnlyList<ValuedRow> rows) => Sort switch
    {
        "-name" => [.. rows.Reverse()],
        "left" => [.. rows.OrderBy(row => row.Left)],
        "-left" => [.. rows.OrderByDescending(row => row.Left)],
        "value" => [.. rows.OrderBy(row => row.Cost?.Amount)],
        "-value" => [.. rows.OrderByDescending(row => row.Cost?.Amount)],
        "each" => [.. rows.OrderBy(row => row.PerKilogram)],
        "-each" => [.. rows.OrderByDescending(row => row.PerKilogram)],
        _ => rows,
    };

    private sealed record SheetRow(string Pool, Id<Lot> Id, string Lot, Weight Left, Money? Cost);
}

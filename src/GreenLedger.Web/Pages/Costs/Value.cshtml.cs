using GreenLedger.Data.Stock;
using GreenLedger.Domain.Measures;
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

    public IReadOnlyList<ValuedRow> Rows { get; private set; } = [];

    /// <summary>Of the rows that have a cost; null where none has.</summary>
    public Money? Total => Rows.Select(row => row.Cost).OfType<Money>().Aggregate((Money?)null, (sum, cost) => sum is { } one ? one + cost : cost);

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        On ??= house.Today;
        (Method, Rows) = await query.FindAsync(On.Value, cancellationToken);
    }
}

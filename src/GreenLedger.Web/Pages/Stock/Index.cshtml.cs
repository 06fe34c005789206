using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>What lies where, now or at the end of a past day.</summary>
public sealed class IndexModel(LedgerContext db, StockQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public Id<Warehouse>? Warehouse { get; set; }

    [BindProperty(SupportsGet = true)]
    public DateOnly? On { get; set; }

    public IReadOnlyList<StockRow> Rows { get; private set; } = [];

    public IReadOnlyList<WaitingRow> Waiting { get; private set; } = [];

    public IReadOnlyList<Warehouse> Warehouses { get; private set; } = [];

    public bool HasAny { get; private set; }

    public Weight Sum(Func<StockRow, Weight> weight) => Rows.Aggregate(Weight.Zero, (sum, row) => sum + weight(row));

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Warehouses = await db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToListAsync(cancellationToken);
        Rows = await query.ListAsync(Q, Warehouse, On, cancellationToken);
        Waiting = await query.WaitingAsync(cancellationToken);
        HasAny = await db.Movements.AnyAsync(cancellationToken);
    }
}

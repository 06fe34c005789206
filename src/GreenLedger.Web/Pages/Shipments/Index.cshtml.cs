using GreenLedger.Data;
using GreenLedger.Data.Shipments;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Shipments;

/// <summary>All shipments, the latest first.</summary>
public sealed class IndexModel(LedgerContext db, ShipmentQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<ShipmentRow> Shipments { get; private set; } = [];

    public bool HasAny { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var found = db.Shipments.AsNoTracking().Holding(Q);
        Paging = Paging.Of(PageNumber, await found.CountAsync(cancellationToken), "shipment", "shipments");
        Shipments = await query.ListAsync(Q, Paging.Skip, Paging.Size, cancellationToken);
        HasAny = Shipments.Count > 0 || await db.Shipments.AnyAsync(cancellationToken);
    }
}

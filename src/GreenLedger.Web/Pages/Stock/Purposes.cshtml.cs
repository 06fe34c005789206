using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Purposes with their cover, and the use of every lot in stock.</summary>
public sealed class PurposesModel(LedgerContext db, PurposeQuery query, HouseZone house) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public IReadOnlyList<PurposeRow> Rows { get; private set; } = [];

    public IReadOnlyList<Purpose> PutAway { get; private set; } = [];

    public IReadOnlyList<LotUseRow> Lots { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IEnumerable<LotUseRow> Shown => Lots.Skip(Paging.Skip).Take(Paging.Size);

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Rows = await query.ListAsync(house.Today, cancellationToken);
        PutAway = await db.Purposes.AsNoTracking().Where(purpose => !purpose.IsInUse).OrderBy(purpose => purpose.Name).ToListAsync(cancellationToken);
        Lots = await query.LotsAsync(house.Today, cancellationToken);
        Paging = Paging.Of(PageNumber, Lots.Count, "lot", "lots");
    }
}

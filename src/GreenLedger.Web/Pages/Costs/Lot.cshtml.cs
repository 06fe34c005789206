using GreenLedger.Data;
using GreenLedger.Data.Costs;
using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Costs;

/// <summary>What a lot truly cost, beside what was reckoned before it was bought.</summary>
public sealed class LotModel(LedgerContext db, LotCostQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    public Lot? Lot { get; private set; }

    public LotCost Cost { get; private set; } = null!;

    public StockHabits Habits { get; private set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        Lot = await db.Lots.AsNoTracking().SingleOrDefaultAsync(lot => lot.Id == Id, cancellationToken);
        if (Lot is null)
        {
            return NotFound();
        }

        Cost = await query.FindAsync(Id, cancellationToken);
        Habits = await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        return Page();
    }
}

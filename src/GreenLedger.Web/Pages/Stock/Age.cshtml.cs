using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Display;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>How old the stock is and how its quality has moved.</summary>
public sealed class AgeModel(AgedStockQuery query, LedgerContext db, HouseZone house) : PageModel
{
    public AgedStock Stock { get; private set; } = null!;

    public AgeDrawing? Drawing { get; private set; }

    public DateOnly Today => house.Today;

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Stock = await query.FindAsync(cancellationToken);
        var ids = Stock.Scores.Select(score => score.LotId).Distinct().ToList();
        Dictionary<Id<Lot>, string> names = await db.Lots.AsNoTracking().Where(lot => ids.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, lot => lot.Ref, cancellationToken);
        Drawing = AgeDrawing.Of(Stock.Trend, Stock.Scores, score => names[score.LotId]);
    }
}

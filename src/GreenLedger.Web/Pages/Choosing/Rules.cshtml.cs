using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain.Choosing;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class RulesModel(LedgerContext db) : PageModel
{
    public IReadOnlyList<BuyingRules> Sets { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) =>
        Sets = await db.BuyingRules.Whole().AsNoTracking().OrderBy(set => set.Name).ToListAsync(cancellationToken);
}

using GreenLedger.Data;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages;

public sealed class IndexModel(LedgerContext db) : PageModel
{
    public string House { get; private set; } = "";

    public async Task OnGetAsync(CancellationToken cancellationToken) =>
        House = await db.Houses.Select(house => house.Name).SingleOrDefaultAsync(cancellationToken) ?? "GreenLedger";
}

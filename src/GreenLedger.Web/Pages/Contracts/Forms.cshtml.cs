using GreenLedger.Data;
using GreenLedger.Domain.Contracts;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

public sealed class FormsModel(LedgerContext db) : PageModel
{
    public IReadOnlyList<StandardForm> All { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) =>
        All = await db.StandardForms.AsNoTracking().OrderByDescending(form => form.IsInUse).ThenBy(form => form.Name).ThenBy(form => form.Edition).ToListAsync(cancellationToken);
}

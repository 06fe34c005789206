using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

public sealed class FormModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingForm> Id { get; set; }

    public CuppingForm Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var found = await db.CuppingForms.AsNoTracking().SingleOrDefaultAsync(form => form.Id == Id, cancellationToken);
        Found = found!;
        return found is null ? NotFound() : Page();
    }
}

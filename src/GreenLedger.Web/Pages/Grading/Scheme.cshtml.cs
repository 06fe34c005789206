using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>A defect table in one revision: its kinds with their equivalents, and its classes.</summary>
public sealed class SchemeModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<SchemeRevision> Id { get; set; }

    public SchemeRevision Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.SchemeRevisions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        return Page();
    }
}

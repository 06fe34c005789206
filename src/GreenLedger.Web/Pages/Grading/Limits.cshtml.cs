using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>Physical limits in one revision.</summary>
public sealed class LimitsModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<LimitsRevision> Id { get; set; }

    public LimitsRevision Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.LimitsRevisions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        return Page();
    }
}

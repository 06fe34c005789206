using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>An open session as cuppers see it: codes and nothing else.</summary>
public sealed class TableModel(BlindTableQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public BlindTable Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, User.FindPerson(), cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        return found.IsClosed ? RedirectToPage("Result", new { Id }) : Page();
    }
}

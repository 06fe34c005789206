using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>A descriptive form in one revision: its intensities and lists of words.</summary>
public sealed class DescriptiveModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<DescriptiveForm> Id { get; set; }

    public DescriptiveForm Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.DescriptiveForms.AsNoTracking().SingleOrDefaultAsync(form => form.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        return Page();
    }
}

using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>Where the QR code on a bag leads: the short address opens the sample's page.</summary>
internal sealed class ScanModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string Label { get; set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var label = Label.Trim().ToUpperInvariant();
        var found = await db.Samples.Where(sample => sample.LabelCode == label).Select(sample => (Id<Sample>?)sample.Id).SingleOrDefaultAsync(cancellationToken);
        return found is { } id ? RedirectToPage("/Samples/Sample", new { id }) : Page();
    }
}

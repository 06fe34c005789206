using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Where the QR code on a lot's label leads: to its line of the open count, or else to its stock.</summary>
public sealed class ScanModel(LedgerContext db, CountQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    public Lot? Lot { get; private set; }

    /// <summary>Its lines, where counts of several warehouses are open.</summary>
    public IReadOnlyList<OpenLine> Lines { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        Lot = await db.Lots.AsNoTracking().SingleOrDefaultAsync(lot => lot.Id == Id, cancellationToken);
        Lines = User.MayWrite("Stock") ? await query.OpenLinesAsync(Id, cancellationToken) : [];
        return (Lot, Lines) switch
        {
            (null, _) or (_, { Count: > 1 }) => Page(),
            (_, [var line]) => RedirectToPage("CountLine", new { id = line.Id }),
            _ => RedirectToPage("Lot", new { Id }),
        };
    }
}

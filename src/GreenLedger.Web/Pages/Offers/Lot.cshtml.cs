using GreenLedger.Data.Offers;
using GreenLedger.Data.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Trace;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Offers;

public sealed class LotModel(LotQuery lots, LotWayQuery ways) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    public LotView View { get; private set; } = null!;

    public IReadOnlyList<WayStop> Way { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await lots.FindAsync(Id, cancellationToken) is not { } view)
        {
            return NotFound();
        }

        View = view;
        Way = await ways.FindAsync(Id, cancellationToken);
        return Page();
    }
}

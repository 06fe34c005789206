using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class DecisionModel(LedgerContext db, DecisionQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Decision> Id { get; set; }

    public DecisionRow Row { get; private set; } = null!;

    public RuleWords Rules { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } row)
        {
            return NotFound();
        }

        Row = row;
        var terms = row.Rules.Terms;
        Rules = new RuleWords(terms, (await db.CuppingForms.FindAsync([terms.FormId], cancellationToken))?.ToString());
        return Page();
    }
}

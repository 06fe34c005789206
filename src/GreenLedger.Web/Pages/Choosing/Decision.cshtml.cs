using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class DecisionModel(LedgerContext db, DecisionQuery query, DraftBasisQuery drafts) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Decision> Id { get; set; }

    public DecisionRow Row { get; private set; } = null!;

    /// <summary>The contract that it led to; null where there is none.</summary>
    public Contract? Contract { get; private set; }

    public RuleWords Rules { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } row)
        {
            return NotFound();
        }

        Row = row;
        Contract = await drafts.ContractOfAsync(Id, cancellationToken);
        var terms = row.Rules.Terms;
        Rules = new RuleWords(terms, (await db.CuppingForms.FindAsync([terms.FormId], cancellationToken))?.ToString());
        return Page();
    }
}

using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Web.Costs;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Takes an outcome back that was entered wrong.</summary>
public sealed class ReopenModel(LedgerContext db, ClaimActs acts, HouseZone house, TimeProvider clock) : ClaimPage(db, house, clock)
{
    [BindProperty]
    public ReopenForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.Version = Shown.Version;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var others = await Db.Claims.BesideAsync(Id, cancellationToken);
        return await ActAsync(Input.Version, async claim =>
        {
            claim.Reopen(others, Input.Reason ?? "", User.Person(), Now);
            await acts.PostAsync(claim, User.Person(), cancellationToken);
            return $"Claim {claim.Ref} is open again.";
        }, cancellationToken);
    }

    public sealed class ReopenForm
    {
        public int Version { get; set; }

        [Display(Name = "Why it does not hold")]
        public string? Reason { get; set; }
    }
}

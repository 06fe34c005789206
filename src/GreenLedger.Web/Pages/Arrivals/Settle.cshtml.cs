using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.Costs;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Enters how a claim ended.</summary>
public sealed class SettleModel(LedgerContext db, ClaimActs acts, HouseZone house, TimeProvider clock) : ClaimPage(db, house, clock)
{
    [BindProperty]
    public SettleForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        (Input.Version, Input.On) = (Shown.Version, Today);
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(Input.Version, async claim =>
    {
        Rule.Require(Input.Amount is null or (> -1_000_000_000_000m and < 1_000_000_000_000m), "This amount is too large: please check it.", nameof(Input.Amount));
        claim.Settle(Input.Outcome, Input.Amount is { } amount ? Money.Of(amount, claim.Case.Currency) : null, Input.On!.Value, Input.Words, User.Person(), Now);
        await acts.PostAsync(claim, User.Person(), cancellationToken);
        return $"Claim {claim.Ref} is settled: {claim.Outcome!.Value.Word()}.{(claim.Settled is null ? "" : " Its amount stands in the cost of the lot.")}";
    }, cancellationToken);

    public sealed class SettleForm
    {
        public int Version { get; set; }

        [Display(Name = "It ended in")]
        public ClaimOutcome Outcome { get; set; }

        [Display(Name = "Amount")]
        public decimal? Amount { get; set; }

        [Display(Name = "Day")]
        [Required(ErrorMessage = "On which day was it settled?")]
        public DateOnly? On { get; set; }

        [Display(Name = "What was agreed or decided")]
        public string? Words { get; set; }
    }
}

using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Enters that both sides have signed the newest version.</summary>
public sealed class SignModel(LedgerContext db, HouseZone house, TimeProvider clock) : ContractPage(db, house, clock)
{
    [BindProperty]
    public SignForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        (Input.Version, Input.SignedOn) = (Shown!.Version, Today);
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(Input.Version, contract =>
    {
        contract.Sign(Input.SignedOn!.Value, Input.SignedForSeller, User.Person(), Now);
        return $"Version {contract.Newest.Number} of {contract.Ref} is signed.";
    }, cancellationToken);

    public sealed class SignForm
    {
        public int Version { get; set; }

        [Display(Name = "Signed on")]
        [Required(ErrorMessage = "On which day was it signed?")]
        public DateOnly? SignedOn { get; set; }

        [Display(Name = "Signed for the seller by")]
        public string? SignedForSeller { get; set; }
    }
}

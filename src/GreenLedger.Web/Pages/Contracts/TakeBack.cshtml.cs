using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Takes a fixing back that was entered wrong or did not happen.</summary>
public sealed class TakeBackModel(LedgerContext db, HouseZone house, TimeProvider clock) : ContractPage(db, house, clock)
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public TakeBackForm Input { get; set; } = new();

    public PriceFixing? Fixing => Shown?.Fixings.FirstOrDefault(fixing => fixing.Number == Number);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(null, contract =>
    {
        contract.TakeBack(Number, Input.Reason ?? "", Today, User.Person(), Now);
        return $"Fixing {Number} of {contract.Ref} is taken back.";
    }, cancellationToken);

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) =>
        Db.Contracts.AnyAsync(contract => contract.Id == Id && contract.Fixings.Any(fixing => fixing.Number == Number), cancellationToken);

    public sealed class TakeBackForm
    {
        [Required(ErrorMessage = "Please say why the fixing is taken back.")]
        public string? Reason { get; set; }
    }
}

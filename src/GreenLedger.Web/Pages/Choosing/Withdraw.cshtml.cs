using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class WithdrawModel(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty]
    public WithdrawForm Input { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public Id<Decision> Id { get; set; }

    public FiguresSnapshot? Lot { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Lot is null ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var decision = await db.Decisions.FirstOrDefaultAsync(row => row.Id == Id, cancellationToken);
        if (decision is null)
        {
            return NotFound();
        }

        decision.Withdraw(Input.WithdrawnBecause, User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("The decision is withdrawn. It stays in the list.");
        return RedirectToPage("/Choosing/Decision", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var decision = await db.Decisions.AsNoTracking().FirstOrDefaultAsync(row => row.Id == Id, cancellationToken);
        Lot = decision is null ? null : FrozenJson.Read<FiguresSnapshot>(decision.Figures);
    }

    public sealed class WithdrawForm
    {
        [Required(ErrorMessage = "Please say why the decision is withdrawn.")]
        [Display(Name = "Reason")]
        public string WithdrawnBecause { get; set; } = "";
    }
}

using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Takes a movement back by one that undoes it.</summary>
public sealed class ReverseModel(LedgerContext db, StockActs acts, HouseZone house) : FormPage
{
    /// <summary>The movement.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Movement> Id { get; set; }

    [BindProperty]
    public ReverseForm Input { get; set; } = new();

    public Movement? Movement { get; private set; }

    protected override bool IsThere => Movement is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.On = house.Today;
        return Movement is null ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var back = await acts.ReverseAsync(Id, new MovementNote(Input.On!.Value, null, Input.Reason), User.Person(), cancellationToken);
        if (back is null)
        {
            return NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say("Taken back. Both lines stay in the ledger.");
        return RedirectToPage("Lot", new { Id = back.LotId });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Movement = await db.Movements.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);

    public sealed class ReverseForm
    {
        [Required(ErrorMessage = "Give the day.")]
        public DateOnly? On { get; set; }

        [Required(ErrorMessage = "Say why it is taken back.")]
        public string? Reason { get; set; }
    }
}

using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Takes an arrival into a warehouse.</summary>
public sealed class ReceiveModel(LedgerContext db, StockActs acts) : FormPage
{
    /// <summary>The arrival.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    [BindProperty]
    public ReceiveForm Input { get; set; } = new();

    public Arrival? Arrival { get; private set; }

    public Lot? Lot { get; private set; }

    public IReadOnlyList<SelectListItem> Places { get; private set; } = [];

    protected override bool IsThere => Arrival is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.On = Arrival?.ReceivedOn;
        return Arrival is null ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var movement = await acts.ReceiveAsync(Id, Input.WarehouseId, new MovementNote(Input.On!.Value, Input.Document, null), User.Person(), cancellationToken);
        if (movement is null)
        {
            return NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say("It is in stock.");
        return RedirectToPage("Lot", new { Id = movement.LotId });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Arrival = await db.Arrivals.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        Lot = Arrival is null ? null : await db.Lots.AsNoTracking().SingleAsync(lot => lot.Id == Arrival.LotId, cancellationToken);
        Places = await db.Warehouses.OrderBy(one => one.Name).Select(one => new SelectListItem(one.Name, one.Id.ToString())).ToListAsync(cancellationToken);
    }

    public sealed class ReceiveForm
    {
        [Required(ErrorMessage = "Choose the warehouse.")]
        [Display(Name = "Warehouse")]
        public Id<Warehouse> WarehouseId { get; set; }

        [Required(ErrorMessage = "Give the day.")]
        public DateOnly? On { get; set; }

        [Display(Name = "Warehouse receipt")]
        public string? Document { get; set; }
    }
}

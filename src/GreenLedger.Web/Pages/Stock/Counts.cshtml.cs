using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Counts of the stock, open ones first, and a new one.</summary>
public sealed class CountsModel(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty]
    public CountForm Input { get; set; } = new();

    public IReadOnlyList<StockCount> Counts { get; private set; } = [];

    public IReadOnlyDictionary<Id<Warehouse>, string> Names { get; private set; } = new Dictionary<Id<Warehouse>, string>();

    public IEnumerable<SelectListItem> Places => Names.Select(one => new SelectListItem(one.Value, one.Key.ToString()));

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.On = house.Today;
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        Rule.Require(!await db.StockCounts.AnyAsync(one => one.WarehouseId == Input.WarehouseId && one.ApprovedAt == null && one.DroppedBecause == null, cancellationToken), "A count of this warehouse is open: finish it or give it up first.", nameof(StockCount.WarehouseId));
        var holdings = await db.Holdings.AsNoTracking().Where(one => one.WarehouseId == Input.WarehouseId).ToListAsync(cancellationToken);
        var lastMoved = await db.Movements.Where(one => one.WarehouseId == Input.WarehouseId).Select(one => (DateOnly?)one.On).MaxAsync(cancellationToken);
        var count = new StockCount(Input.WarehouseId, Input.On!.Value, holdings, lastMoved, User.Person(), clock.GetUtcNow());
        db.Add(count);
        await db.SaveChangesAsync(cancellationToken);
        return RedirectToPage("Count", new { count.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Names = await db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToDictionaryAsync(one => one.Id, one => one.Name, cancellationToken);
        Counts = await db.StockCounts.AsNoTracking().Whole().OrderByDescending(one => one.On).ThenByDescending(one => one.Id).Take(100).ToListAsync(cancellationToken);
    }

    public sealed class CountForm
    {
        [Required(ErrorMessage = "Choose the warehouse.")]
        [Display(Name = "Warehouse")]
        public Id<Warehouse> WarehouseId { get; set; }

        [Required(ErrorMessage = "Give the day of the count.")]
        public DateOnly? On { get; set; }
    }
}

using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Counts of the stock, open ones first, and a new one.</summary>
public sealed class CountsModel(LedgerContext db, CountActs acts, HouseZone house) : FormPage
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
        var count = await acts.BeginAsync(Input.WarehouseId, Input.On!.Value, User.Person(), cancellationToken);
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

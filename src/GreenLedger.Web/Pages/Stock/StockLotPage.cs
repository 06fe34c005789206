using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>A page about the stock of one lot.</summary>
public abstract class StockLotPage(LedgerContext db, StockQuery query, HouseZone house) : FormPage
{
    /// <summary>The lot.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    public Lot? Lot { get; private set; }

    public IReadOnlyList<Warehouse> Warehouses { get; private set; } = [];

    /// <summary>Where it lies.</summary>
    public IReadOnlyList<StockRow> Held { get; private set; } = [];

    /// <summary>What a release or a reserve may be for.</summary>
    public IReadOnlyList<SelectListItem> Purposes { get; private set; } = [];

    protected LedgerContext Db { get; } = db;

    protected StockQuery Query { get; } = query;

    protected DateOnly Today => house.Today;

    protected override bool IsThere => Lot is not null;

    /// <summary>Every warehouse, to put something in.</summary>
    public IEnumerable<SelectListItem> Places() => Warehouses.Select(one => new SelectListItem(one.Name, one.Id.ToString()));

    /// <summary>Warehouses that hold some of the lot, with what is there, to take something out.</summary>
    public IEnumerable<SelectListItem> HeldPlaces() => Held.Select(row => new SelectListItem(
        $"{row.Warehouse}: {Figures.Count(row.Bags, "bag", "bags")}, {Figures.ExactWeight(row.Available, false)} available", row.WarehouseId.ToString()));

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Lot is null)
        {
            return NotFound();
        }

        Prepare();
        return Page();
    }

    /// <summary>Fills the empty form once the page is loaded.</summary>
    protected virtual void Prepare()
    {
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Lot = await Db.Lots.AsNoTracking().SingleOrDefaultAsync(lot => lot.Id == Id, cancellationToken);
        Warehouses = await Db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToListAsync(cancellationToken);
        Purposes = await Db.Purposes.AsNoTracking().InUse().Select(one => new SelectListItem(one.Name, one.Id.ToString())).ToListAsync(cancellationToken);
        Held = Lot is null ? [] : [.. (await Query.ListAsync(null, null, null, cancellationToken)).Where(row => row.LotId == Id)];
    }

    /// <summary>Saves what was done, says it, and goes to the lot.</summary>
    protected async Task<IActionResult> SaveAsync(string said, CancellationToken cancellationToken)
    {
        await Db.SaveChangesAsync(cancellationToken);
        Say(said);
        return RedirectToPage("Lot", new { Id });
    }

    /// <summary>Kilograms as typed.</summary>
    protected static Weight Kilograms(decimal? typed, string field)
    {
        Rule.Require(typed is > 0m and <= 100_000_000m, "The weight lies above 0 kg.", field);
        return Weight.FromKilograms(typed.Value);
    }
}

using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>The places where the house keeps coffee.</summary>
public sealed class WarehousesModel(LedgerContext db, WarehouseActs acts) : FormPage
{
    [BindProperty]
    public WarehouseForm Input { get; set; } = new();

    /// <summary>The warehouse that is given another name, and that name.</summary>
    [BindProperty]
    public Id<Warehouse> Warehouse { get; set; }

    [BindProperty]
    public string? Called { get; set; }

    public IReadOnlyList<Warehouse> Warehouses { get; private set; } = [];

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var warehouse = await acts.NameAsync(Input.Name, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{warehouse.Name} is named.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostCallAsync(CancellationToken cancellationToken)
    {
        var known = await db.Warehouses.SingleOrDefaultAsync(one => one.Id == Warehouse, cancellationToken);
        if (known is null)
        {
            return NotFound();
        }

        await acts.CallAsync(known, Called, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"It is called {known.Name} now.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Warehouses = await db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToListAsync(cancellationToken);

    public sealed class WarehouseForm
    {
        [Required(ErrorMessage = "What is the warehouse called?")]
        public string? Name { get; set; }
    }
}

using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

public sealed class EditSupplierModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Supplier> Id { get; set; }

    [BindProperty]
    public SupplierForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var supplier = await db.Suppliers.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (supplier is null)
        {
            return NotFound();
        }

        Input = SupplierForm.Of(supplier);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var supplier = await db.Suppliers.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (supplier is null)
        {
            return NotFound();
        }

        OpenedOn(supplier, Input.Version);
        supplier.Describe(Input.Name ?? "", Input.Kind, Input.CountryCode, Input.Language, Input.Email);
        await db.SaveChangesAsync(cancellationToken);
        Say("The supplier is changed.");
        return RedirectToPage("Supplier", new { Id });
    }
}

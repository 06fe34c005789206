using GreenLedger.Data;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

public sealed class NewSupplierModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public SupplierForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var supplier = new Supplier(Input.Name ?? "", Input.Kind);
        supplier.Describe(Input.Name ?? "", Input.Kind, Input.CountryCode, Input.Language, Input.Email);
        db.Add(supplier);
        await db.SaveChangesAsync(cancellationToken);
        Say("The supplier is added.");
        return RedirectToPage("Supplier", new { supplier.Id });
    }
}

using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>Adds somebody at a supplier.</summary>
public sealed class NewContactModel(LedgerContext db) : FormPage, IContactPage
{
    /// <summary>The supplier.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Supplier> Id { get; set; }

    [BindProperty]
    public ContactForm Input { get; set; } = new();

    public Supplier Supplier { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.Language = Supplier.Language;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var contact = new SupplierContact(Id, Input.Name, Input.Email, Input.Language, Input.All());
        await db.SupplierContacts.RequireFreeAddressAsync(contact, cancellationToken);
        db.Add(contact);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{contact.Name} is added.");
        return RedirectToPage("Supplier", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Supplier = await db.Suppliers.AsNoTracking().SingleAsync(supplier => supplier.Id == Id, cancellationToken);

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.Suppliers.AnyAsync(supplier => supplier.Id == Id, cancellationToken);
}

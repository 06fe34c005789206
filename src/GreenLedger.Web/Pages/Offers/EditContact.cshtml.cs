using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>Changes somebody at a supplier, or says that the person has left.</summary>
public sealed class EditContactModel(LedgerContext db) : FormPage, IContactPage
{
    [BindProperty(SupportsGet = true)]
    public Id<SupplierContact> Id { get; set; }

    [BindProperty]
    public ContactForm Input { get; set; } = new();

    public SupplierContact Contact { get; private set; } = null!;

    public string SupplierName { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = ContactForm.Of(Contact);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        OpenedOn(Contact, Input.Version);
        Contact.Describe(Input.Name, Input.Email, Input.Language, Input.All());
        await db.SupplierContacts.RequireFreeAddressAsync(Contact, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Contact.Name} is changed.");
        return RedirectToPage("Supplier", new { Id = Contact.SupplierId });
    }

    public Task<IActionResult> OnPostLeaveAsync(CancellationToken cancellationToken) => ChangeAsync(contact => contact.Leave(), "has left and is sent nothing.", cancellationToken);

    public Task<IActionResult> OnPostReturnAsync(CancellationToken cancellationToken) => ChangeAsync(contact => contact.Return(), "is there again.", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Contact = await db.SupplierContacts.SingleAsync(contact => contact.Id == Id, cancellationToken);
        SupplierName = await db.Suppliers.Where(supplier => supplier.Id == Contact.SupplierId).Select(supplier => supplier.Name).SingleAsync(cancellationToken);
    }

    private async Task<IActionResult> ChangeAsync(Action<SupplierContact> act, string said, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        act(Contact);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Contact.Name} {said}");
        return RedirectToPage("Supplier", new { Id = Contact.SupplierId });
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.SupplierContacts.AnyAsync(contact => contact.Id == Id, cancellationToken);
}

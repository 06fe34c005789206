using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Who is who at a supplier, for scripts.</summary>
internal static class SupplierContactsApi
{
    public static void MapSupplierContacts(this RouteGroupBuilder offers)
    {
        offers.MapGet("/suppliers/{id}/contacts", ListAsync).WithName("ListSupplierContacts").WithSummary("The contacts of a supplier, those who left last");
        offers.MapPost("/suppliers/{id}/contacts", AddAsync).WithName("AddSupplierContact").WithSummary("Adds a contact; `receives` holds feedback, arrivalReports, contractPapers, claims");
        offers.MapPut("/contacts/{id}", ChangeAsync).WithName("ChangeSupplierContact").WithSummary("Changes a contact, or says that the person has left");
    }

    private static async Task<Results<Ok<List<ContactReply>>, NotFound>> ListAsync(Id<Supplier> id, LedgerContext db, CancellationToken cancellationToken) =>
        await db.Suppliers.AnyAsync(supplier => supplier.Id == id, cancellationToken)
            ? TypedResults.Ok((await db.SupplierContacts.AsNoTracking().Of(id).ToListAsync(cancellationToken)).ConvertAll(ContactReply.Of))
            : TypedResults.NotFound();

    private static async Task<Results<Created<ContactReply>, NotFound>> AddAsync(Id<Supplier> id, ContactRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (!await db.Suppliers.AnyAsync(supplier => supplier.Id == id, cancellationToken))
        {
            return TypedResults.NotFound();
        }

        var contact = new SupplierContact(id, request.Name, request.Email, request.Language, request.All());
        await db.SupplierContacts.RequireFreeAddressAsync(contact, cancellationToken);
        db.Add(contact);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/offers/suppliers/{id}/contacts", ContactReply.Of(contact));
    }

    private static async Task<Results<Ok<ContactReply>, NotFound>> ChangeAsync(Id<SupplierContact> id, ContactRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.SupplierContacts.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } contact)
        {
            return TypedResults.NotFound();
        }

        contact.Describe(request.Name, request.Email, request.Language, request.All());
        if (request.IsActive)
        {
            contact.Return();
        }
        else
        {
            contact.Leave();
        }

        await db.SupplierContacts.RequireFreeAddressAsync(contact, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ContactReply.Of(contact));
    }

    /// <param name="Language">en, es, pt or fr.</param>
    /// <param name="IsActive">False once the person has left.</param>
    internal sealed record ContactRequest(string Name, string Email, string Language, IReadOnlyList<Receives>? Receives = null, bool IsActive = true)
    {
        public Receives All() => (Receives ?? []).Aggregate(Domain.Offers.Receives.Nothing, (all, kind) => all | kind);
    }

    internal sealed record ContactReply(Guid Id, Guid SupplierId, string Name, string Email, string Language, IReadOnlyList<Receives> Receives, bool IsActive)
    {
        public static ContactReply Of(SupplierContact contact) => new(
            contact.Id.Value, contact.SupplierId.Value, contact.Name, contact.Email, contact.Language, [.. ReceivesWords.Kinds.Where(kind => contact.Receives.HasFlag(kind))], contact.IsActive);
    }
}

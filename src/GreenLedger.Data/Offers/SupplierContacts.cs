using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Offers;

public static class SupplierContacts
{
    /// <summary>Of one supplier, those who left last.</summary>
    public static IQueryable<SupplierContact> Of(this IQueryable<SupplierContact> contacts, Id<Supplier> supplier) =>
        contacts.Where(contact => contact.SupplierId == supplier).OrderByDescending(contact => contact.IsActive).ThenBy(contact => contact.Name).ThenBy(contact => contact.Id);

    /// <exception cref="RuleBrokenException">Another contact of this supplier has the address.</exception>
    public static async Task RequireFreeAddressAsync(this IQueryable<SupplierContact> contacts, SupplierContact contact, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contact);
        Rule.Require(
            !await contacts.AnyAsync(other => other.Id != contact.Id && other.SupplierId == contact.SupplierId && other.Email == contact.Email, cancellationToken),
            $"Another contact of this supplier has the address {contact.Email}: change that one instead.", nameof(SupplierContact.Email));
    }
}

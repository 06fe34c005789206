using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Offers;

internal sealed class SupplierConfiguration
    : IEntityTypeConfiguration<Supplier>, IEntityTypeConfiguration<SupplierMapping>, IEntityTypeConfiguration<SupplierContact>
{
    public void Configure(EntityTypeBuilder<Supplier> builder)
    {
        builder.Property(supplier => supplier.Id).ValueGeneratedNever();
        builder.Property(supplier => supplier.Name).HasMaxLength(200);
        builder.Property(supplier => supplier.CountryCode).HasMaxLength(2);
        builder.Property(supplier => supplier.Language).HasMaxLength(2);
        builder.Property(supplier => supplier.Email).HasMaxLength(200);
        builder.HasOne<Country>().WithMany().HasForeignKey(supplier => supplier.CountryCode).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(supplier => supplier.Name).IsUnique();
    }

    public void Configure(EntityTypeBuilder<SupplierMapping> builder)
    {
        builder.Property(mapping => mapping.Id).ValueGeneratedNever();
        builder.HasOne<Supplier>().WithMany().HasForeignKey(mapping => mapping.SupplierId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(mapping => new { mapping.SupplierId, mapping.Headings }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<SupplierContact> builder)
    {
        builder.Property(contact => contact.Id).ValueGeneratedNever();
        builder.Property(contact => contact.Name).HasMaxLength(200);
        builder.Property(contact => contact.Email).HasMaxLength(200);
        builder.Property(contact => contact.Language).HasMaxLength(2);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(contact => contact.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(contact => new { contact.SupplierId, contact.Email }).IsUnique();
    }
}

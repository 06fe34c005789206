using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Offers;

internal sealed class LotConfiguration : IEntityTypeConfiguration<Lot>
{
    public void Configure(EntityTypeBuilder<Lot> builder)
    {
        builder.Property(lot => lot.Id).ValueGeneratedNever();
        builder.Property(lot => lot.CountryCode).HasMaxLength(2);
        builder.Property(lot => lot.Ref).HasMaxLength(200);
        builder.Property(lot => lot.Name).HasMaxLength(200);
        builder.Property(lot => lot.CropYear).HasMaxLength(20);
        builder.Property(lot => lot.Programme).HasMaxLength(80);
        builder.Property(lot => lot.SearchText).UsePropertyAccessMode(PropertyAccessMode.Property);
        builder.PrimitiveCollection(lot => lot.Certificates);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(lot => lot.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Producer>().WithMany().HasForeignKey(lot => lot.ProducerId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Country>().WithMany().HasForeignKey(lot => lot.CountryCode).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<ProcessMethod>().WithMany().HasForeignKey(lot => lot.ProcessMethodId).OnDelete(DeleteBehavior.Restrict);
    }
}

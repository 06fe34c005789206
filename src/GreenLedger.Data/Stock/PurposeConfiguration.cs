using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Stock;

internal sealed class PurposeConfiguration : IEntityTypeConfiguration<Purpose>, IEntityTypeConfiguration<PurposeLot>
{
    public void Configure(EntityTypeBuilder<Purpose> builder)
    {
        builder.Property(purpose => purpose.Id).ValueGeneratedNever();
        builder.Property(purpose => purpose.Name).HasMaxLength(80);
        builder.Property(purpose => purpose.Flavour).HasMaxLength(60);
        builder.Property(purpose => purpose.Blend).HasMaxLength(80);
        builder.HasIndex(purpose => purpose.SearchText).IsUnique();
        builder.HasMany(purpose => purpose.Lots).WithOne().HasForeignKey("PurposeId").IsRequired();
    }

    public void Configure(EntityTypeBuilder<PurposeLot> builder)
    {
        builder.ToTable("PurposeLots");
        builder.Property(lot => lot.Id).ValueGeneratedNever();
        builder.HasIndex("PurposeId", nameof(PurposeLot.LotId)).IsUnique();
        builder.HasOne<Lot>().WithMany().HasForeignKey(lot => lot.LotId).OnDelete(DeleteBehavior.Restrict);
    }
}

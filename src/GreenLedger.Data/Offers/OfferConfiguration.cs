using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Offers;

internal sealed class OfferConfiguration : IEntityTypeConfiguration<Offer>, IEntityTypeConfiguration<OfferPrice>
{
    public void Configure(EntityTypeBuilder<Offer> builder)
    {
        builder.Property(offer => offer.Id).ValueGeneratedNever();
        builder.Property(offer => offer.Ref).HasMaxLength(200);
        builder.Property(offer => offer.Place).HasMaxLength(200);
        builder.Property(offer => offer.Availability).HasMaxLength(200);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(offer => offer.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(offer => offer.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<OfferList>().WithMany().HasForeignKey(offer => offer.ListId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(offer => offer.Prices).WithOne().HasForeignKey(price => price.OfferId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(offer => new { offer.SupplierId, offer.Ref });
        builder.HasIndex(offer => offer.State);
    }

    public void Configure(EntityTypeBuilder<OfferPrice> builder)
    {
        builder.Property(price => price.Id).ValueGeneratedNever();
        builder.HasOne<OfferList>().WithMany().HasForeignKey(price => price.ListId).OnDelete(DeleteBehavior.Restrict);
    }
}

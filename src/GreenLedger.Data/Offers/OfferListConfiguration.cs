using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Offers;

internal sealed class OfferListConfiguration : IEntityTypeConfiguration<OfferList>, IEntityTypeConfiguration<SetAsideRow>
{
    public void Configure(EntityTypeBuilder<OfferList> builder)
    {
        builder.Property(list => list.Id).ValueGeneratedNever();
        builder.Property(list => list.FileName).HasMaxLength(255);
        builder.Property(list => list.FileHash).HasMaxLength(64);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(list => list.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<StoredFile>().WithMany().HasForeignKey(list => list.StoredFileId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(list => list.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(list => list.SetAside).WithOne().HasForeignKey(row => row.ListId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(list => new { list.SupplierId, list.FileHash });
    }

    public void Configure(EntityTypeBuilder<SetAsideRow> builder)
    {
        builder.Property(row => row.Id).ValueGeneratedNever();
        builder.Ignore(row => row.Line);
        builder.HasOne<Person>().WithMany().HasForeignKey(row => row.MendedBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Offer>().WithMany().HasForeignKey(row => row.OfferId).OnDelete(DeleteBehavior.Restrict);
    }
}

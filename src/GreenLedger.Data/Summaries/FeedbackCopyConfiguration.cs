using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Summaries;

internal sealed class FeedbackCopyConfiguration : IEntityTypeConfiguration<FeedbackCopy>
{
    public void Configure(EntityTypeBuilder<FeedbackCopy> builder)
    {
        builder.Property(copy => copy.Id).ValueGeneratedNever();
        builder.Property(copy => copy.Language).HasMaxLength(2);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(copy => copy.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<StoredFile>().WithMany().HasForeignKey(copy => copy.StoredFileId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(copy => copy.By).OnDelete(DeleteBehavior.Restrict);
    }
}

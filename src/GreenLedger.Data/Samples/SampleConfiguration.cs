using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Samples;

internal sealed class SampleConfiguration : IEntityTypeConfiguration<Sample>
{
    public void Configure(EntityTypeBuilder<Sample> builder)
    {
        builder.Property(sample => sample.Id).ValueGeneratedNever();
        builder.Property(sample => sample.LabelCode).HasMaxLength(20);
        builder.Property(sample => sample.Note).HasMaxLength(2000);
        builder.HasIndex(sample => sample.LabelCode).IsUnique();
        builder.HasOne<Lot>().WithMany().HasForeignKey(sample => sample.LotId).OnDelete(DeleteBehavior.Restrict);
    }
}

using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Offers;

internal sealed class JobConfiguration : IEntityTypeConfiguration<Job>
{
    public void Configure(EntityTypeBuilder<Job> builder)
    {
        builder.Property(job => job.Id).ValueGeneratedNever();
        builder.Property(job => job.Kind).HasMaxLength(80);
        builder.Property(job => job.TakenBy).HasMaxLength(200);
        builder.HasIndex(job => job.State);
    }
}

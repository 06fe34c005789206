using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Origins;

internal sealed class ProducerConfiguration : IEntityTypeConfiguration<Producer>
{
    public void Configure(EntityTypeBuilder<Producer> builder)
    {
        builder.Property(producer => producer.Id).ValueGeneratedNever();
        builder.Property(producer => producer.Name).HasMaxLength(200);
        builder.Property(producer => producer.CountryCode).HasMaxLength(2);
        builder.Property(producer => producer.Region).HasMaxLength(200);
        builder.Property(producer => producer.Place).HasMaxLength(200);
        builder.HasOne<Country>().WithMany().HasForeignKey(producer => producer.CountryCode).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(producer => producer.Name);
    }
}

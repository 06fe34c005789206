using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Origins;

internal sealed class ProcessMethodConfiguration : IEntityTypeConfiguration<ProcessMethod>
{
    public void Configure(EntityTypeBuilder<ProcessMethod> builder)
    {
        builder.Property(method => method.Id).ValueGeneratedNever();
        builder.Property(method => method.Name).HasMaxLength(80);
        builder.PrimitiveCollection(method => method.Synonyms);
        builder.HasIndex(method => method.Name).IsUnique();
    }
}

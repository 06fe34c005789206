using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Papers;

internal sealed class ErasureConfiguration : IEntityTypeConfiguration<Erasure>
{
    public void Configure(EntityTypeBuilder<Erasure> builder)
    {
        builder.Property(erasure => erasure.Id).ValueGeneratedNever();
        builder.Property(erasure => erasure.Designation).HasMaxLength(40);
        builder.Property(erasure => erasure.Reason).HasMaxLength(500);
        builder.HasIndex(erasure => erasure.SubjectId).IsUnique();
        builder.HasIndex(erasure => new { erasure.Kind, erasure.Designation }).IsUnique();
        builder.HasOne<Person>().WithMany().HasForeignKey(erasure => erasure.By).OnDelete(DeleteBehavior.Restrict);
    }
}

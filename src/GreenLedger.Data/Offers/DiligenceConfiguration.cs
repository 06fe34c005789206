using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Offers;

internal sealed class DiligenceConfiguration : IEntityTypeConfiguration<DiligenceHabits>, IEntityTypeConfiguration<EvidenceFile>
{
    public void Configure(EntityTypeBuilder<DiligenceHabits> builder)
    {
        builder.ToTable("DiligenceHabits");
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        builder.Property(habits => habits.Source).HasMaxLength(500);
        builder.Property(habits => habits.MostPerHectare).HasDefaultValue(DiligenceHabits.UsualMostPerHectare);
    }

    public void Configure(EntityTypeBuilder<EvidenceFile> builder)
    {
        builder.ToTable("EvidenceFiles");
        builder.Property(file => file.Id).ValueGeneratedNever();
        builder.HasOne<DueDiligence>().WithMany(held => held.Files).HasForeignKey("DueDiligenceId").IsRequired();
        builder.HasOne<Attachment>().WithMany().HasForeignKey(file => file.AttachmentId).OnDelete(DeleteBehavior.Restrict);
        builder.Property(file => file.MistakenBecause).HasMaxLength(500);
        builder.Ignore(file => file.IsMistaken);
        builder.HasIndex(file => file.AttachmentId).IsUnique();
    }
}

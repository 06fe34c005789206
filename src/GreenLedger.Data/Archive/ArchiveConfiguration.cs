using GreenLedger.Domain.Archive;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Archive;

internal sealed class ArchiveConfiguration : IEntityTypeConfiguration<ArchiveTaking>
{
    public void Configure(EntityTypeBuilder<ArchiveTaking> builder)
    {
        builder.Property(taking => taking.Id).ValueGeneratedNever();
        builder.HasOne<Person>().WithMany().HasForeignKey(taking => taking.By).OnDelete(DeleteBehavior.Restrict);
    }
}

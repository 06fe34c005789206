using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Papers;

internal sealed class StoredFileConfiguration : IEntityTypeConfiguration<StoredFile>, IEntityTypeConfiguration<StoredBytes>
{
    public void Configure(EntityTypeBuilder<StoredFile> builder)
    {
        builder.Property(file => file.Id).ValueGeneratedNever();
        builder.Property(file => file.Name).HasMaxLength(255);
        builder.Property(file => file.ContentType).HasMaxLength(127);
        builder.Property(file => file.Sha256).HasMaxLength(64);
        builder.HasIndex(file => file.Sha256);
        builder.HasOne(file => file.Content).WithOne().HasForeignKey<StoredBytes>(bytes => bytes.Id);
    }

    public void Configure(EntityTypeBuilder<StoredBytes> builder) =>
        builder.Property(bytes => bytes.Id).ValueGeneratedNever();
}

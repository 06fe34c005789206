using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Papers;

internal sealed class PapersConfiguration
    : IEntityTypeConfiguration<Change>, IEntityTypeConfiguration<Note>, IEntityTypeConfiguration<Attachment>
{
    public void Configure(EntityTypeBuilder<Change> builder)
    {
        builder.Property(change => change.Id).ValueGeneratedNever();
        builder.Property(change => change.RecordKind).HasMaxLength(80);
        builder.Property(change => change.RecordId).HasMaxLength(120);
        builder.Property(change => change.RecordName).HasMaxLength(Change.LongestName);
        builder.HasIndex(change => new { change.RecordKind, change.RecordId, change.At });
        builder.HasIndex(change => change.At);
        builder.HasIndex(change => new { change.By, change.At });
        builder.HasOne<Person>().WithMany().HasForeignKey(change => change.By).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<Note> builder)
    {
        builder.Property(note => note.Id).ValueGeneratedNever();
        builder.Property(note => note.Text).HasMaxLength(Note.Longest);
        builder.HasIndex(note => new { note.About, note.AboutId });
        builder.HasOne<Person>().WithMany().HasForeignKey(note => note.By).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<Attachment> builder)
    {
        builder.Property(attachment => attachment.Id).ValueGeneratedNever();
        builder.Property(attachment => attachment.FileName).HasMaxLength(255);
        builder.Property(attachment => attachment.ContentType).HasMaxLength(127);
        builder.Property(attachment => attachment.Sha256).HasMaxLength(64);
        builder.HasIndex(attachment => new { attachment.About, attachment.AboutId });
        builder.HasOne<StoredFile>().WithMany().HasForeignKey(attachment => attachment.StoredFileId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(attachment => attachment.By).OnDelete(DeleteBehavior.Restrict);
    }
}

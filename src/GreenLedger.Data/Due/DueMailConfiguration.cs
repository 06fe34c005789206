using GreenLedger.Domain.Due;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Due;

internal sealed class DueMailConfiguration : IEntityTypeConfiguration<DueMail>
{
    public void Configure(EntityTypeBuilder<DueMail> builder)
    {
        builder.Property(mail => mail.Id).ValueGeneratedNever();
        builder.Property(mail => mail.Trouble).HasMaxLength(500);
        builder.HasIndex(mail => mail.OwnerId).IsUnique();
        builder.HasOne<Person>().WithMany().HasForeignKey(mail => mail.OwnerId).OnDelete(DeleteBehavior.Restrict);
    }
}

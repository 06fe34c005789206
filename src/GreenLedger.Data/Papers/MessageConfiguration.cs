using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Papers;

internal sealed class MessageConfiguration : IEntityTypeConfiguration<Message>
{
    public void Configure(EntityTypeBuilder<Message> builder)
    {
        builder.Property(message => message.Id).ValueGeneratedNever();
        builder.Property(message => message.MessageId).HasMaxLength(300);
        builder.HasIndex(message => message.MessageId).IsUnique();
        builder.Property(message => message.Address).HasMaxLength(320);
        builder.Property(message => message.Subject).HasMaxLength(200);
        builder.Property(message => message.TakenBy).HasMaxLength(200);
        builder.Property(message => message.Trouble).HasMaxLength(500);
        builder.HasIndex(message => new { message.State, message.NextTryAt });
        builder.HasIndex(message => new { message.SubmissionId, message.Address }).IsUnique();
        builder.HasIndex(message => message.AboutId);
        builder.HasOne<Person>().WithMany().HasForeignKey(message => message.OwnerId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(message => message.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(message => message.AskedAgainBy).OnDelete(DeleteBehavior.Restrict);
    }
}

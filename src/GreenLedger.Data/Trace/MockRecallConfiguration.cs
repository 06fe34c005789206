using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Trace;

/// <summary>What was found is frozen and read whole, so it is one JSON text.</summary>
internal sealed class MockRecallConfiguration : IEntityTypeConfiguration<MockRecall>
{
    public void Configure(EntityTypeBuilder<MockRecall> builder)
    {
        builder.Property(recall => recall.Id).ValueGeneratedNever();
        builder.Property(recall => recall.Ref).HasMaxLength(20);
        builder.Property(recall => recall.StartName).HasMaxLength(200);
        builder.Property(recall => recall.Reason).HasMaxLength(500);
        builder.Property(recall => recall.Learned).HasMaxLength(2000);
        builder.Property(recall => recall.Findings).HasConversion(found => FrozenJson.Write(found!), text => FrozenJson.Read<RecallFindings>(text));
        builder.HasIndex(recall => recall.Ref).IsUnique();
        builder.HasIndex(recall => recall.StartedAt);
        builder.Ignore(recall => recall.HasEnded).Ignore(recall => recall.Took);
        builder.HasOne<Person>().WithMany().HasForeignKey(recall => recall.StartedBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(recall => recall.EndedBy).OnDelete(DeleteBehavior.Restrict);
    }
}

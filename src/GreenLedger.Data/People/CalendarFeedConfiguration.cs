using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.People;

internal sealed class CalendarFeedConfiguration : IEntityTypeConfiguration<CalendarFeed>
{
    public void Configure(EntityTypeBuilder<CalendarFeed> builder)
    {
        builder.Property(feed => feed.Id).ValueGeneratedNever();
        builder.Property(feed => feed.Hash).HasMaxLength(64);
        builder.HasIndex(feed => feed.Hash).IsUnique();
        builder.HasOne<Person>().WithMany().HasForeignKey(feed => feed.OwnerId).OnDelete(DeleteBehavior.Restrict);
    }
}

using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Roasting;

internal sealed class SampleRoastConfiguration : IEntityTypeConfiguration<SampleRoast>, IEntityTypeConfiguration<RoastProtocol>
{
    public void Configure(EntityTypeBuilder<SampleRoast> builder)
    {
        builder.Property(roast => roast.Id).ValueGeneratedNever();
        builder.Property(roast => roast.ColourScale).HasMaxLength(60);
        builder.Property(roast => roast.Note).HasMaxLength(2000);
        builder.Property(roast => roast.WithdrawnBecause).HasMaxLength(500);
        builder.Ignore(roast => roast.IsWithdrawn);
        // As for grades: it counts nowhere unless it is asked for by name.
        builder.HasQueryFilter(Withdrawn.Filter, roast => roast.WithdrawnAt == null);
        builder.HasOne<Person>().WithMany().HasForeignKey(roast => roast.WithdrawnBy).OnDelete(DeleteBehavior.Restrict);
        builder.Ignore(roast => roast.Loss);
        builder.Ignore(roast => roast.Rest);
        builder.HasIndex(roast => roast.RoastedAt);
        builder.HasOne<Sample>().WithMany().HasForeignKey(roast => roast.SampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(roast => roast.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(roast => roast.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<RoastProtocol>().WithMany().HasForeignKey(roast => roast.ProtocolId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<RoastProtocol> builder)
    {
        builder.Property(protocol => protocol.Id).ValueGeneratedNever();
        builder.Property(protocol => protocol.Name).HasMaxLength(200);
        builder.Property(protocol => protocol.ColourScale).HasMaxLength(60);
        builder.Ignore(protocol => protocol.Windows);
    }
}

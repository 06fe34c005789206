using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Choosing;

internal sealed class DecisionConfiguration : IEntityTypeConfiguration<Decision>
{
    public void Configure(EntityTypeBuilder<Decision> builder)
    {
        builder.Property(decision => decision.Id).ValueGeneratedNever();
        builder.Property(decision => decision.Reason).HasMaxLength(2000);
        builder.Property(decision => decision.Note).HasMaxLength(2000);
        builder.Property(decision => decision.WithdrawnBecause).HasMaxLength(2000);
        builder.HasOne<Lot>().WithMany().HasForeignKey(decision => decision.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Offer>().WithMany().HasForeignKey(decision => decision.OfferId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(decision => decision.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(decision => decision.At);
    }
}

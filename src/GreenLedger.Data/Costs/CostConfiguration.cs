using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Costs;

internal sealed class CostConfiguration : IEntityTypeConfiguration<CostPosting>
{
    public void Configure(EntityTypeBuilder<CostPosting> builder)
    {
        builder.Property(posting => posting.Id).ValueGeneratedNever();
        builder.Property(posting => posting.Document).HasMaxLength(80);
        builder.Property(posting => posting.From).HasMaxLength(120);
        builder.Property(posting => posting.WithdrawnBecause).HasMaxLength(500);
        builder.Ignore(posting => posting.Covers);
        builder.Ignore(posting => posting.MayBeAccounting);
        builder.HasIndex(posting => posting.On);
        builder.HasOne<Contract>().WithMany().HasForeignKey(posting => posting.ContractId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Shipment>().WithMany().HasForeignKey(posting => posting.ShipmentId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(posting => posting.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Claim>().WithMany().HasForeignKey(posting => posting.ClaimId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(posting => posting.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(posting => posting.WithdrawnBy).OnDelete(DeleteBehavior.Restrict);
    }
}

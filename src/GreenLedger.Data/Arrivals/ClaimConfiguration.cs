using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Arrivals;

/// <summary>The case is frozen and read whole, so it is one JSON text; what lists ask about stands in columns beside it.</summary>
internal sealed class ClaimConfiguration : IEntityTypeConfiguration<Claim>, IEntityTypeConfiguration<ClaimNote>, IEntityTypeConfiguration<ClaimSettlement>
{
    private const string OfClaim = "ClaimId";

    public void Configure(EntityTypeBuilder<Claim> builder)
    {
        builder.Property(claim => claim.Id).ValueGeneratedNever();
        builder.Property(claim => claim.Ref).HasMaxLength(20);
        builder.Property(claim => claim.LateReason).HasMaxLength(1000);
        builder.Property(claim => claim.Case).HasConversion(found => FrozenJson.Write(found), text => FrozenJson.Read<ClaimCase>(text));
        builder.HasIndex(claim => claim.Ref).IsUnique();
        builder.HasIndex(claim => claim.ArrivalId);
        builder.HasIndex(claim => claim.ContractId);
        builder.Ignore(claim => claim.Effect).Ignore(claim => claim.IsOpen);
        builder.HasOne<Arrival>().WithMany().HasForeignKey(claim => claim.ArrivalId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Shipment>().WithMany().HasForeignKey(claim => claim.ShipmentId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Contract>().WithMany().HasForeignKey(claim => claim.ContractId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(claim => claim.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(claim => claim.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(claim => claim.Notes).WithOne().HasForeignKey(OfClaim).IsRequired();
        builder.HasMany(claim => claim.Settlements).WithOne().HasForeignKey(OfClaim).IsRequired();
    }

    public void Configure(EntityTypeBuilder<ClaimNote> builder)
    {
        builder.ToTable("ClaimNotes");
        builder.Property(note => note.Id).ValueGeneratedNever();
        builder.Property(note => note.Text).HasMaxLength(4000);
        builder.HasOne<Person>().WithMany().HasForeignKey(note => note.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfClaim, nameof(ClaimNote.Number)).IsUnique();
    }

    public void Configure(EntityTypeBuilder<ClaimSettlement> builder)
    {
        builder.ToTable("ClaimSettlements");
        builder.Property(settlement => settlement.Id).ValueGeneratedNever();
        builder.Property(settlement => settlement.Words).HasMaxLength(2000);
        builder.Property(settlement => settlement.TakenBackBecause).HasMaxLength(1000);
        builder.HasOne<Person>().WithMany().HasForeignKey(settlement => settlement.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(settlement => settlement.TakenBackBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfClaim, nameof(ClaimSettlement.Number)).IsUnique();
    }
}

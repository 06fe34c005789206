using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Contracts;

/// <summary>Terms are read and written whole and never asked about in SQL, so they are one JSON text.</summary>
internal sealed class ContractConfiguration :
    IEntityTypeConfiguration<Contract>, IEntityTypeConfiguration<ContractVersion>, IEntityTypeConfiguration<ContractLot>,
    IEntityTypeConfiguration<PriceFixing>, IEntityTypeConfiguration<MonthRoll>, IEntityTypeConfiguration<ContractMove>,
    IEntityTypeConfiguration<SampleApproval>
{
    private const string OfContract = "ContractId";

    public void Configure(EntityTypeBuilder<Contract> builder)
    {
        builder.Property(contract => contract.Id).ValueGeneratedNever();
        builder.Property(contract => contract.Ref).HasMaxLength(20);
        builder.HasIndex(contract => contract.Ref).IsUnique();
        builder.HasIndex(contract => contract.OpenMonth);
        builder.HasOne<StoredFile>().WithMany().HasForeignKey(contract => contract.SourceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(contract => contract.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(contract => contract.Versions).WithOne().HasForeignKey(OfContract).IsRequired();
        builder.HasMany(contract => contract.Lots).WithOne().HasForeignKey(OfContract).IsRequired();
        builder.HasMany(contract => contract.Fixings).WithOne().HasForeignKey(OfContract).IsRequired();
        builder.HasMany(contract => contract.Rolls).WithOne().HasForeignKey(OfContract).IsRequired();
        builder.HasMany(contract => contract.Approvals).WithOne().HasForeignKey(OfContract).IsRequired();
        builder.HasMany(contract => contract.Moves).WithOne().HasForeignKey(OfContract).IsRequired();
        builder.Ignore(contract => contract.Newest).Ignore(contract => contract.InForce).Ignore(contract => contract.Terms).Ignore(contract => contract.Position);
    }

    public void Configure(EntityTypeBuilder<ContractVersion> builder)
    {
        builder.ToTable("ContractVersions");
        builder.Property(version => version.Id).ValueGeneratedNever();
        builder.Property(version => version.Reason).HasMaxLength(1000);
        builder.Property(version => version.SignedForSeller).HasMaxLength(200);
        builder.Property(version => version.Terms).HasConversion(
            terms => FrozenJson.Write(terms),
            text => FrozenJson.Read<ContractTerms>(text));
        builder.HasOne<Person>().WithMany().HasForeignKey(version => version.WrittenBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(version => version.SignedBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfContract, nameof(ContractVersion.Number)).IsUnique();
    }

    public void Configure(EntityTypeBuilder<ContractLot> builder)
    {
        builder.ToTable("ContractLots");
        builder.Property(lot => lot.Id).ValueGeneratedNever();
        builder.Ignore(lot => lot.Net);
        builder.HasOne<Lot>().WithMany().HasForeignKey(lot => lot.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Decision>().WithMany().HasForeignKey(lot => lot.DecisionId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<PriceFixing> builder)
    {
        builder.ToTable("PriceFixings");
        builder.Property(fixing => fixing.Id).ValueGeneratedNever();
        builder.Property(fixing => fixing.Method).HasMaxLength(200);
        builder.Property(fixing => fixing.TakenBackBecause).HasMaxLength(500);
        builder.HasOne<Person>().WithMany().HasForeignKey(fixing => fixing.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(fixing => fixing.TakenBackBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfContract, nameof(PriceFixing.Number)).IsUnique();
    }

    public void Configure(EntityTypeBuilder<MonthRoll> builder)
    {
        builder.ToTable("MonthRolls");
        builder.Property(roll => roll.Id).ValueGeneratedNever();
        builder.HasOne<Person>().WithMany().HasForeignKey(roll => roll.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfContract, nameof(MonthRoll.Number)).IsUnique();
    }

    public void Configure(EntityTypeBuilder<SampleApproval> builder)
    {
        builder.ToTable("SampleApprovals");
        builder.Property(approval => approval.Id).ValueGeneratedNever();
        builder.Property(approval => approval.Remarks).HasMaxLength(1000);
        builder.HasOne<Lot>().WithMany().HasForeignKey(approval => approval.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sample>().WithMany().HasForeignKey(approval => approval.SampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(approval => approval.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfContract, nameof(SampleApproval.LotId), nameof(SampleApproval.Round)).IsUnique();
    }

    public void Configure(EntityTypeBuilder<ContractMove> builder)
    {
        builder.ToTable("ContractMoves");
        builder.Property(move => move.Id).ValueGeneratedNever();
        builder.Property(move => move.Move).HasMaxLength(40);
        builder.Property(move => move.From).HasMaxLength(40);
        builder.Property(move => move.To).HasMaxLength(40);
        builder.Property(move => move.Reason).HasMaxLength(1000);
        builder.HasOne<Person>().WithMany().HasForeignKey(move => move.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfContract, nameof(ContractMove.Number)).IsUnique();
    }
}

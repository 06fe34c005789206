using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Stock;

internal sealed class StockConfiguration : IEntityTypeConfiguration<Warehouse>, IEntityTypeConfiguration<Holding>, IEntityTypeConfiguration<Movement>, IEntityTypeConfiguration<Reservation>
{
    public void Configure(EntityTypeBuilder<Warehouse> builder)
    {
        builder.Property(warehouse => warehouse.Id).ValueGeneratedNever();
        builder.Property(warehouse => warehouse.Name).HasMaxLength(80);
        builder.HasIndex(warehouse => warehouse.SearchText).IsUnique();
    }

    /// <summary>The database itself refuses a holding below zero, whoever writes it.</summary>
    public void Configure(EntityTypeBuilder<Holding> builder)
    {
        builder.ToTable(table => table.HasCheckConstraint("CK_Holdings_NotBelowZero", """
            "Bags" >= 0 AND "PackedMicrograms" >= 0 AND "WeighedMicrograms" >= 0 AND "ReservedMicrograms" >= 0
            """));
        builder.Property(holding => holding.Id).ValueGeneratedNever();
        builder.Ignore(holding => holding.Amount).Ignore(holding => holding.Available);
        builder.HasIndex(holding => new { holding.LotId, holding.WarehouseId }).IsUnique();
        builder.HasOne<Lot>().WithMany().HasForeignKey(holding => holding.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Warehouse>().WithMany().HasForeignKey(holding => holding.WarehouseId).OnDelete(DeleteBehavior.Restrict);
    }

    /// <summary>Triggers of the migration "MovementsStand" refuse to change or remove a movement.</summary>
    public void Configure(EntityTypeBuilder<Movement> builder)
    {
        builder.Property(movement => movement.Id).ValueGeneratedNever();
        builder.Property(movement => movement.Document).HasMaxLength(80);
        builder.Property(movement => movement.Reason).HasMaxLength(500);
        builder.Ignore(movement => movement.Amount);
        builder.HasIndex(movement => new { movement.HoldingId, movement.On });
        builder.HasIndex(movement => movement.On);
        builder.HasIndex(movement => movement.ReversesId).IsUnique();
        builder.HasIndex(movement => movement.ArrivalId);
        builder.HasOne<Holding>().WithMany().HasForeignKey(movement => movement.HoldingId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(movement => movement.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Warehouse>().WithMany().HasForeignKey(movement => movement.WarehouseId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Arrival>().WithMany().HasForeignKey(movement => movement.ArrivalId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Purpose>().WithMany().HasForeignKey(movement => movement.PurposeId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Movement>().WithMany().HasForeignKey(movement => movement.ReversesId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(movement => movement.By).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<Reservation> builder)
    {
        builder.Property(reservation => reservation.Id).ValueGeneratedNever();
        builder.Property(reservation => reservation.Use).HasMaxLength(120);
        builder.HasIndex(reservation => reservation.HoldingId);
        builder.HasOne<Holding>().WithMany().HasForeignKey(reservation => reservation.HoldingId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Purpose>().WithMany().HasForeignKey(reservation => reservation.PurposeId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(reservation => reservation.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(reservation => reservation.EndedBy).OnDelete(DeleteBehavior.Restrict);
    }
}

using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Stock;

internal sealed class CountConfiguration : IEntityTypeConfiguration<StockCount>, IEntityTypeConfiguration<CountLine>, IEntityTypeConfiguration<StockHabits>, IEntityTypeConfiguration<ValuationChoice>
{
    public void Configure(EntityTypeBuilder<StockCount> builder)
    {
        builder.Property(count => count.Id).ValueGeneratedNever();
        builder.Property(count => count.DroppedBecause).HasMaxLength(500);
        builder.PrimitiveCollection(count => count.Counters);
        builder.HasMany(count => count.Lines).WithOne().HasForeignKey("StockCountId").IsRequired();
        builder.HasOne<Warehouse>().WithMany().HasForeignKey(count => count.WarehouseId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(count => count.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(count => count.ApprovedBy).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<CountLine> builder)
    {
        builder.ToTable("CountLines");
        builder.Property(line => line.Id).ValueGeneratedNever();
        builder.Property(line => line.Reason).HasMaxLength(300);
        builder.Ignore(line => line.Difference);
        builder.HasOne<Holding>().WithMany().HasForeignKey(line => line.HoldingId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(line => line.CountedBy).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<StockHabits> builder)
    {
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        var usual = new StockHabits();
        builder.Property(habits => habits.PastCropMonths).HasDefaultValue(usual.PastCropMonths).ValueGeneratedNever();
        builder.ComplexProperty(habits => habits.MoistureDrift, drift => drift.Property(one => one.TenThousandths).HasDefaultValue(usual.MoistureDrift.TenThousandths).HasSentinel(long.MinValue));
        builder.HasMany(habits => habits.Valuations).WithOne().HasForeignKey("StockHabitsId").IsRequired();
    }

    public void Configure(EntityTypeBuilder<ValuationChoice> builder)
    {
        builder.ToTable("ValuationChoices");
        builder.Property(choice => choice.Id).ValueGeneratedNever();
    }
}

using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Arrivals;

internal sealed class ArrivalConfiguration : IEntityTypeConfiguration<Arrival>, IEntityTypeConfiguration<EarlierReceipt>, IEntityTypeConfiguration<ArrivalHabits>
{
    private const string OfArrival = "ArrivalId";

    public void Configure(EntityTypeBuilder<Arrival> builder)
    {
        builder.Property(arrival => arrival.Id).ValueGeneratedNever();
        builder.Property(arrival => arrival.Odour).HasMaxLength(100);
        builder.Property(arrival => arrival.Note).HasMaxLength(2000);
        builder.Ignore(arrival => arrival.Condition).Ignore(arrival => arrival.Receipt);
        builder.HasMany(arrival => arrival.Earlier).WithOne().HasForeignKey(OfArrival).IsRequired();
        builder.HasIndex(arrival => arrival.ShipmentLotId).IsUnique();
        builder.HasIndex(arrival => arrival.ReceivedOn);
        builder.HasOne<Shipment>().WithMany().HasForeignKey(arrival => arrival.ShipmentId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<ShipmentLot>().WithMany().HasForeignKey(arrival => arrival.ShipmentLotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(arrival => arrival.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(arrival => arrival.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sample>().WithMany().HasForeignKey(arrival => arrival.ApprovedSampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sample>().WithMany().HasForeignKey(arrival => arrival.ArrivalSampleId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<EarlierReceipt> builder)
    {
        builder.ToTable("EarlierReceipts");
        builder.Property(earlier => earlier.Id).ValueGeneratedNever();
        builder.Property(earlier => earlier.Reason).HasMaxLength(1000);
        builder.Property(earlier => earlier.Was).HasConversion(was => FrozenJson.Write(was), text => FrozenJson.Read<Receipt>(text));
        builder.HasOne<Person>().WithMany().HasForeignKey(earlier => earlier.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfArrival, nameof(EarlierReceipt.Number)).IsUnique();
    }

    /// <summary>A house that stated its habits before there were limits has the usual ones; 0 % is a value like any other.</summary>
    public void Configure(EntityTypeBuilder<ArrivalHabits> builder)
    {
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        var usual = new ArrivalHabits();
        builder.ComplexProperty(habits => habits.LowestMoisture, moisture => moisture.Property(one => one.TenThousandths).HasDefaultValue(usual.LowestMoisture.TenThousandths).HasSentinel(long.MinValue));
        builder.ComplexProperty(habits => habits.HighestMoisture, moisture => moisture.Property(one => one.TenThousandths).HasDefaultValue(usual.HighestMoisture.TenThousandths).HasSentinel(long.MinValue));
    }
}

using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Arrivals;

internal sealed class ArrivalConfiguration : IEntityTypeConfiguration<Arrival>, IEntityTypeConfiguration<ArrivalHabits>
{
    public void Configure(EntityTypeBuilder<Arrival> builder)
    {
        builder.Property(arrival => arrival.Id).ValueGeneratedNever();
        builder.Property(arrival => arrival.Odour).HasMaxLength(100);
        builder.Property(arrival => arrival.Note).HasMaxLength(2000);
        builder.Ignore(arrival => arrival.Condition);
        builder.HasIndex(arrival => arrival.ShipmentLotId).IsUnique();
        builder.HasIndex(arrival => arrival.ReceivedOn);
        builder.HasOne<Shipment>().WithMany().HasForeignKey(arrival => arrival.ShipmentId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<ShipmentLot>().WithMany().HasForeignKey(arrival => arrival.ShipmentLotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(arrival => arrival.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(arrival => arrival.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sample>().WithMany().HasForeignKey(arrival => arrival.ApprovedSampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sample>().WithMany().HasForeignKey(arrival => arrival.ArrivalSampleId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<ArrivalHabits> builder) => builder.Property(habits => habits.Id).ValueGeneratedNever();
}

using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Shipments;

internal sealed class ShipmentConfiguration : IEntityTypeConfiguration<Shipment>, IEntityTypeConfiguration<ShipmentLot>, IEntityTypeConfiguration<ShipmentContainer>
{
    private const string OfShipment = "ShipmentId";

    public void Configure(EntityTypeBuilder<Shipment> builder)
    {
        builder.Property(shipment => shipment.Id).ValueGeneratedNever();
        builder.Property(shipment => shipment.Ref).HasMaxLength(20);
        builder.Property(shipment => shipment.BillOfLading).HasMaxLength(40);
        builder.Property(shipment => shipment.Vessel).HasMaxLength(80);
        builder.Property(shipment => shipment.Voyage).HasMaxLength(40);
        builder.Property(shipment => shipment.PortOfLoading).HasMaxLength(5);
        builder.Property(shipment => shipment.PortOfDestination).HasMaxLength(5);
        builder.HasIndex(shipment => shipment.Ref).IsUnique();
        builder.Ignore(shipment => shipment.Net);
        builder.HasMany(shipment => shipment.Lots).WithOne().HasForeignKey(OfShipment).IsRequired();
        builder.HasMany(shipment => shipment.Containers).WithOne().HasForeignKey(OfShipment).IsRequired();
    }

    public void Configure(EntityTypeBuilder<ShipmentLot> builder)
    {
        builder.ToTable("ShipmentLots");
        builder.Property(lot => lot.Id).ValueGeneratedNever();
        builder.HasOne<Contract>().WithMany().HasForeignKey(lot => lot.ContractId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(lot => lot.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(lot => lot.ContractLotId);
    }

    public void Configure(EntityTypeBuilder<ShipmentContainer> builder)
    {
        builder.ToTable("ShipmentContainers");
        builder.Property(container => container.Id).ValueGeneratedNever();
        builder.Property(container => container.Number).HasMaxLength(11);
        builder.Property(container => container.SealNumber).HasMaxLength(40);
        builder.HasIndex(OfShipment, nameof(ShipmentContainer.Number)).IsUnique();
    }
}

using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Shipments;

internal sealed class ShipmentConfiguration
    : IEntityTypeConfiguration<Shipment>, IEntityTypeConfiguration<ShipmentLot>, IEntityTypeConfiguration<ShipmentContainer>, IEntityTypeConfiguration<ShipmentDocument>, IEntityTypeConfiguration<DocumentRule>
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
        builder.Ignore(shipment => shipment.MissingDocuments);
        builder.HasMany(shipment => shipment.Documents).WithOne().HasForeignKey(OfShipment).IsRequired();
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

    public void Configure(EntityTypeBuilder<ShipmentDocument> builder)
    {
        builder.ToTable("ShipmentDocuments");
        builder.Property(document => document.Id).ValueGeneratedNever();
        builder.Property(document => document.Name).HasMaxLength(80);
        builder.Property(document => document.Reason).HasMaxLength(300);
        builder.HasOne<DocumentRule>().WithMany().HasForeignKey(document => document.RuleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Attachment>().WithMany().HasForeignKey(document => document.AttachmentId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(OfShipment, nameof(ShipmentDocument.Name));
    }

    public void Configure(EntityTypeBuilder<DocumentRule> builder)
    {
        builder.Property(rule => rule.Id).ValueGeneratedNever();
        builder.Property(rule => rule.Name).HasMaxLength(80);
        builder.Property(rule => rule.Certificate).HasMaxLength(40);
        builder.Property(rule => rule.Note).HasMaxLength(500);
    }
}

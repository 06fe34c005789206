using GreenLedger.Data.Shipments;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Web.Api;

/// <param name="IsUnapproved">It shipped without the approval that the contract asks for; it never counts as approved.</param>
/// <param name="DaysLate">On board after the contract's shipment period; null while it has not sailed.</param>
internal sealed record ShippedLotReply(Guid Id, Guid ContractId, string ContractRef, Guid ContractLotId, Guid LotId, int Bags, decimal NetWeightKg, bool IsUnapproved, int? DaysLate)
{
    public static ShippedLotReply Of(ShipmentLot lot, ShipmentRow row)
    {
        var contract = row.Contracts.First(one => one.Id == lot.ContractId);
        return new(lot.Id.Value, lot.ContractId.Value, contract.Ref, lot.ContractLotId.Value, lot.LotId.Value, lot.Bags, lot.Net.Kilograms, lot.IsUnapproved, row.Shipment.DaysLate(contract.ShipUntil));
    }
}

/// <param name="Doubt">What to look at when the check digit of ISO 6346 does not fit.</param>
internal sealed record ContainerReply(string Number, string? Seal, string? Doubt);

/// <param name="On">The day it was asked for or received.</param>
/// <param name="AttachmentId">Its file, under /api/papers/attachments.</param>
internal sealed record DocumentReply(Guid Id, string Name, DocumentState State, bool IsMissing, DateOnly? On, string? Reason, Guid? AttachmentId)
{
    public static DocumentReply Of(ShipmentDocument document) =>
        new(document.Id.Value, document.Name, document.State, document.IsMissing, document.On, document.Reason, document.AttachmentId?.Value);
}

/// <param name="BagsLeft">Of the lots it carries, what their contracts have not shipped on any shipment.</param>
internal sealed record ShipmentReply(
    Guid Id,
    string Ref,
    string? BillOfLading,
    string? Vessel,
    string? Voyage,
    string PortOfLoading,
    string PortOfDestination,
    DateOnly? PlannedDeparture,
    DateOnly? PlannedArrival,
    DateOnly? ShippedOn,
    DateOnly? DischargedOn,
    DateOnly? ClearedOn,
    DateOnly? AvailableOn,
    int? DaysLate,
    int Bags,
    decimal NetWeightKg,
    int BagsLeft,
    decimal NetWeightLeftKg,
    IReadOnlyList<ShippedLotReply> Lots,
    IReadOnlyList<ContainerReply> Containers,
    int DocumentsMissing,
    IReadOnlyList<DocumentReply> Documents)
{
    public static ShipmentReply Of(ShipmentRow row)
    {
        var shipment = row.Shipment;
        return new(
            shipment.Id.Value,
            shipment.Ref,
            shipment.BillOfLading,
            shipment.Vessel,
            shipment.Voyage,
            shipment.PortOfLoading,
            shipment.PortOfDestination,
            shipment.PlannedDeparture,
            shipment.PlannedArrival,
            shipment.ShippedOn,
            shipment.DischargedOn,
            shipment.ClearedOn,
            shipment.AvailableOn,
            row.DaysLate,
            shipment.Lots.Sum(lot => lot.Bags),
            shipment.Net.Kilograms,
            row.BagsLeft,
            row.Left.Kilograms,
            [.. shipment.Lots.Select(lot => ShippedLotReply.Of(lot, row))],
            [.. shipment.Containers.Select(container => new ContainerReply(container.Number, container.SealNumber, container.Doubt))],
            shipment.MissingDocuments,
            [.. shipment.Documents.Select(DocumentReply.Of)]);
    }
}

using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Web.Api;

/// <summary>A lot of a signed contract on a shipment, by the shipping papers; 0 bags take it off.</summary>
internal sealed record ShippedLotRequest(Guid ContractLotId, int Bags, decimal NetWeightKg);

/// <param name="Number">By ISO 6346; one whose check digit does not fit is kept and told.</param>
internal sealed record ContainerRequest(string Number, string? Seal = null);

/// <summary>A shipment by its papers, whole: what is left out is empty.</summary>
/// <param name="PortOfLoading">UN/LOCODE.</param>
/// <param name="PortOfDestination">UN/LOCODE.</param>
/// <param name="ShippedOn">The on-board date of the bill of lading; it moves the goods of the contracts.</param>
/// <param name="DischargedOn">Days for claims run from here.</param>
/// <param name="Reason">What happened, where a lot shipped without the approval that its contract asks for.</param>
/// <param name="AvailableOn">The goods could be weighed and sampled; days for weighing may run from here.</param>
internal sealed record ShipmentRequest(
    string PortOfLoading,
    string PortOfDestination,
    IReadOnlyList<ShippedLotRequest> Lots,
    IReadOnlyList<ContainerRequest>? Containers = null,
    string? BillOfLading = null,
    string? Vessel = null,
    string? Voyage = null,
    DateOnly? PlannedDeparture = null,
    DateOnly? PlannedArrival = null,
    DateOnly? ShippedOn = null,
    DateOnly? DischargedOn = null,
    DateOnly? ClearedOn = null,
    string? Reason = null,
    DateOnly? AvailableOn = null)
{
    public Passage Passage() => new(BillOfLading, Vessel, Voyage, PortOfLoading, PortOfDestination, PlannedDeparture, PlannedArrival, ShippedOn, DischargedOn, ClearedOn, AvailableOn);

    public IReadOnlyList<(string Number, string? Seal)> ContainerLines() => [.. (Containers ?? []).Select(container => (container.Number, container.Seal))];

    public IReadOnlyList<Id<ContractLot>> ContractLots() => [.. Lots.Select(lot => new Id<ContractLot>(lot.ContractLotId))];

    public IEnumerable<LadingLine> Lading() => Lots.Select(lot => new LadingLine(new Id<ContractLot>(lot.ContractLotId), lot.Bags, Weight.FromKilograms(Math.Clamp(lot.NetWeightKg, 0m, 1_000_000_000m))));
}

/// <summary>How far a document of a shipment is.</summary>
/// <param name="On">The day it was asked for or received.</param>
/// <param name="Reason">Why it is not needed.</param>
internal sealed record DocumentRequest(DocumentState State, DateOnly? On = null, string? Reason = null);

/// <summary>A document that no rule of the house asks for.</summary>
internal sealed record AddDocumentRequest(string Name);

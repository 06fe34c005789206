namespace GreenLedger.Domain.Shipments;

/// <summary>A container of a shipment, with its seal. A check digit that does not fit is kept and told.</summary>
public sealed class ShipmentContainer
{
    private ShipmentContainer() => Number = "";

    internal ShipmentContainer(string number, string? seal)
    {
        Id = Id<ShipmentContainer>.New();
        Number = number;
        Seal(seal);
    }

    public Id<ShipmentContainer> Id { get; private set; }

    /// <summary>By ISO 6346, without spaces.</summary>
    public string Number { get; private set; }

    public string? SealNumber { get; private set; }

    /// <summary>What to look at when the check digit does not fit; null when it does.</summary>
    public string? Doubt => ContainerNumber.Of(Number).Doubt;

    internal void Seal(string? number) => SealNumber = Rule.OptionalText(number, "The seal", 40, nameof(SealNumber));
}

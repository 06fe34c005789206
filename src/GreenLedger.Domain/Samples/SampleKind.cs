namespace GreenLedger.Domain.Samples;

/// <summary>What the sample stands for in the trade (ITC Coffee Guide).</summary>
public enum SampleKind
{
    /// <summary>Drawn from one existing lot that is for sale.</summary>
    Offer = 0,

    /// <summary>What the seller expects to be able to supply; drawn from no lot in particular.</summary>
    Type = 1,

    /// <summary>Drawn from the milled and bagged parcel that will ship.</summary>
    PreShipment = 2,

    /// <summary>Drawn after arrival, compared with the approved pre-shipment sample.</summary>
    Arrival = 3,

    /// <summary>Drawn from the buyer's own stock.</summary>
    Stock = 4,
}

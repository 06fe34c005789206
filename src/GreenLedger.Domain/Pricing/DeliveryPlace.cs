namespace GreenLedger.Domain.Pricing;

/// <summary>Where on the way the named place of a delivery rule lies, as far as the split of cost asks.</summary>
public enum DeliveryPlace
{
    /// <summary>The mill or another of the seller's premises.</summary>
    Mill = 0,

    /// <summary>A terminal or inland point in the country of origin.</summary>
    OriginTerminal = 1,
    PortOfLoading = 2,
    PortOfDestination = 3,

    /// <summary>An inland place in the country of destination, the buyer's warehouse among them.</summary>
    Inland = 4,

    /// <summary>A seller's warehouse in the country of destination (spot).</summary>
    SpotWarehouse = 5,
}

public static class DeliveryPlaces
{
    public static string Word(this DeliveryPlace place) => place switch
    {
        DeliveryPlace.Mill => "seller's premises",
        DeliveryPlace.OriginTerminal => "terminal or inland point at origin",
        DeliveryPlace.PortOfLoading => "port of loading",
        DeliveryPlace.PortOfDestination => "port of destination",
        DeliveryPlace.Inland => "warehouse or inland place of destination",
        DeliveryPlace.SpotWarehouse => "seller's warehouse at destination",
        _ => throw new ArgumentOutOfRangeException(nameof(place)),
    };
}

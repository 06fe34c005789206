using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// A quantity of coffee at a price, as far as its cost on the way asks: an outright price or a differential, the
/// delivery rule and its named place, where it grew (ISO 3166-1 alpha-2), the net weight shipped and the bags.
/// </summary>
public sealed record Parcel(
    PricePerWeight? Price,
    Differential? Differential,
    Incoterm? Delivery,
    string? Place,
    string? OriginCountry,
    Weight Quantity,
    int? Bags)
{
    /// <summary>Where the named place lies, when that is known; otherwise it is told from the route's places.</summary>
    public DeliveryPlace? PlaceKind { get; init; }

    /// <summary>As the delivery rule is written; empty when none is stated.</summary>
    internal string DeliveryWord => Delivery?.Word() ?? "";

    /// <summary>The parcel that an offer is, with the country that its lot grew in.</summary>
    public static Parcel Of(Offer offer, string? originCountry) => new(
        offer.Price, offer.Differential, offer.Incoterm, offer.Place, originCountry, offer.Quantity, offer.Bags);
}

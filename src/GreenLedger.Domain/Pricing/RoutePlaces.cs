using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// Compares the place that an offer names with the places of a route, as people write them: "Santos", "santos, Brazil",
/// "BRSSZ". A route may name a place in several ways, with strokes between: "Santos / BRSSZ".
/// </summary>
internal sealed class RoutePlaces(Route route)
{
    private readonly string[] _loading = Names(route.PortOfLoading);
    private readonly string[] _destination = Names(route.PortOfDestination);
    private readonly string[] _warehouse = Names(route.Warehouse);

    /// <summary>
    /// How well the route serves a parcel: 0 when it cannot, more for the right country, most for the named place.
    /// </summary>
    public int Fit(Parcel parcel, Incoterm delivery)
    {
        if (delivery == Incoterm.ExWarehouse)
        {
            return FitFromWarehouse(parcel, Names(parcel.Place));
        }

        var named = Names(parcel.Place).Any(name => Where(delivery).Any(place => IsSame(place, name)));
        if (route.OriginCountry is null)
        {
            return named ? 3 : 1;
        }

        return parcel.OriginCountry is null
            ? (named ? 2 : 0)
            : (string.Equals(route.OriginCountry, parcel.OriginCountry, StringComparison.OrdinalIgnoreCase) ? (named ? 5 : 4) : 0);
    }

    /// <summary>Where the named place lies on this route; null when the route knows no such place.</summary>
    public DeliveryPlace? Find(Incoterm delivery, string? place)
    {
        var names = Names(place);
        return names.Length == 0 ? null
            : Matches(_warehouse, names) ? DeliveryPlace.Inland
            : Matches(_destination, names) ? DeliveryPlace.PortOfDestination
            : !Matches(_loading, names) ? null
            : delivery == Incoterm.Fca ? DeliveryPlace.OriginTerminal : DeliveryPlace.PortOfLoading;
    }

    /// <summary>
    /// Spot coffee lies in the country of destination already: a route that begins at the seller's warehouse serves it,
    /// then one that passes there. Where the coffee grew tells only when no route knows the place.
    /// </summary>
    private int FitFromWarehouse(Parcel parcel, string[] names) =>
        Matches(_loading, names) ? 5
        : Matches(_destination, names) || Matches(_warehouse, names) ? 3
        : route.OriginCountry is null || string.Equals(route.OriginCountry, parcel.OriginCountry, StringComparison.OrdinalIgnoreCase) ? 1 : 0;

    private string[] Where(Incoterm delivery) => delivery switch
    {
        Incoterm.Exw or Incoterm.Fca or Incoterm.Fas or Incoterm.Fob => _loading,
        Incoterm.Cfr or Incoterm.Cif => _destination,
        _ => [.. _destination, .. _warehouse],
    };

    private static bool Matches(string[] places, string[] names) =>
        names.Any(name => places.Any(place => IsSame(place, name)));

    private static bool IsSame(string place, string name) =>
        place == name || Begins(place, name) || Begins(name, place);

    private static bool Begins(string longer, string shorter) =>
        longer.Length > shorter.Length && longer[shorter.Length] == ' ' && longer.StartsWith(shorter, StringComparison.Ordinal);

    private static string[] Names(string? text) =>
        [.. (text ?? "").Split(['/', ';']).Select(name => SearchText.Of(name)).Where(name => name.Length > 0)];
}

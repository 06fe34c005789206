namespace GreenLedger.Domain.Origins;

/// <summary>
/// Area on the WGS 84 ellipsoid of a ring whose edges are straight in degrees. Under each edge the strip down to the equator
/// is integrated exactly in longitude (Gauss and Legendre, five points), which for plots agrees with geodesic edges to a few
/// parts in a million (handbook, trade 7.6).
/// </summary>
public static class EllipsoidArea
{
    private const double A = 6_378_137.0;
    private const double Flattening = 1 / 298.257223563;
    private static readonly double E2 = Flattening * (2 - Flattening);
    private static readonly double E = Math.Sqrt(E2);
    private static readonly double HalfB2 = A * A * (1 - E2) / 2;

    /// <summary>Nodes and weights of the five-point rule on −1 to 1.</summary>
    private static readonly (double Node, double Weight)[] Rule =
    [
        (0, 0.568888888888888889), (0.538469310105683091, 0.478628670499366468), (-0.538469310105683091, 0.478628670499366468),
        (0.906179845938663993, 0.236926885056189088), (-0.906179845938663993, 0.236926885056189088),
    ];

    /// <summary>Square metres, above zero for a ring that runs counter-clockwise.</summary>
    /// <param name="ring">Longitude and latitude in degrees, the last position equal to the first.</param>
    public static double SquareMetres(IReadOnlyList<(double Longitude, double Latitude)> ring)
    {
        ArgumentNullException.ThrowIfNull(ring);
        var sum = 0.0;
        // Against the strip of the first position, so that a small plot far from the equator is no difference of large numbers.
        var ground = Strip(Radians(ring[0].Latitude));
        for (var at = 1; at < ring.Count; at++)
        {
            var (from, to) = (ring[at - 1], ring[at]);
            var (middle, half) = (Radians((from.Latitude + to.Latitude) / 2), Radians((to.Latitude - from.Latitude) / 2));
            sum -= Radians(to.Longitude - from.Longitude) / 2 * Rule.Sum(point => point.Weight * (Strip(middle + half * point.Node) - ground));
        }

        return sum;
    }

    /// <summary>Area between the equator and a latitude, for a radian of longitude.</summary>
    private static double Strip(double latitude)
    {
        var sine = Math.Sin(latitude);
        return HalfB2 * (sine / (1 - E2 * sine * sine) + Math.Log((1 + E * sine) / (1 - E * sine)) / (2 * E));
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}

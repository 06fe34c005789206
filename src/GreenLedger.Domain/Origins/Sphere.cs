using NetTopologySuite.Geometries;

namespace GreenLedger.Domain.Origins;

/// <summary>Distances on a sphere of the Earth's mean radius, 6371.0088 km (IUGG); at most half a percent from those on the ellipsoid.</summary>
public static class Sphere
{
    private const double Radius = 6371.0088;

    /// <summary>Kilometres of a degree of latitude.</summary>
    public const double KilometresPerDegree = Radius * Math.PI / 180;

    /// <summary>Along the great circle, by the haversine formula (R. W. Sinnott, Sky and Telescope 68, 1984).</summary>
    public static double Kilometres(Coordinate from, Coordinate to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var (north, east) = (Half(to.Y - from.Y), Half(to.X - from.X));
        var part = north * north + Math.Cos(from.Y * Math.PI / 180) * Math.Cos(to.Y * Math.PI / 180) * east * east;
        return 2 * Radius * Math.Asin(Math.Min(1, Math.Sqrt(part)));
    }

    private static double Half(double degrees) => Math.Sin(degrees * Math.PI / 360);
}

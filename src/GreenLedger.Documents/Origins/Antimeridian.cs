using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;

namespace GreenLedger.Documents.Origins;

/// <summary>
/// Rings of map data may go on from 180 degrees to -180, and one about a pole has no end there: in the plane both would be bands about
/// the whole Earth. They are laid out without a jump and cut at 180 degrees, as RFC 7946, 3.1.9 asks of polygons.
/// </summary>
internal static class Antimeridian
{
    private const double Round = 360;

    /// <summary>A ring without jumps, longitudes beyond 180 degrees where it needs them; about a pole it is closed over the pole.</summary>
    public static Coordinate[] Unrolled(IReadOnlyList<Coordinate> ring)
    {
        var (laid, turns) = (new List<Coordinate> { ring[0] }, 0);
        foreach (var (before, position) in ring.Zip(ring.Skip(1)))
        {
            turns += (position.X - before.X) switch { > Round / 2 => -1, < -Round / 2 => 1, _ => 0 };
            laid.Add(turns == 0 ? position : new Coordinate(position.X + turns * Round, position.Y));
        }

        if (turns != 0)
        {
            var pole = ring[0].Y < 0 ? -90 : 90;
            laid.AddRange([new Coordinate(laid[^1].X, pole), new Coordinate(laid[0].X, pole), laid[0]]);
        }

        return [.. laid];
    }

    /// <summary>The polygon in parts that lie between -180 and 180 degrees.</summary>
    public static IEnumerable<Polygon> Cut(Polygon polygon)
    {
        var box = polygon.EnvelopeInternal;
        if (box.MinX >= -Round / 2 && box.MaxX <= Round / 2)
        {
            return [polygon];
        }

        var whole = GeometryFixer.Fix(polygon);
        return new[] { -Round, 0, Round }.SelectMany(by =>
        {
            var part = whole.Intersection(GeometryFactory.Default.ToGeometry(new Envelope(by - Round / 2, by + Round / 2, -90, 90)));
            var moved = new AffineTransformation(1, 0, -by, 0, 1, 0).Transform(part);
            return Enumerable.Range(0, moved.NumGeometries).Select(moved.GetGeometryN).OfType<Polygon>();
        });
    }
}

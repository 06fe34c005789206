using System.Globalization;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO;
using NetTopologySuite.Operation.Valid;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// Where a plot lies: points or polygons in WGS 84, longitude before latitude, six decimals (RFC 7946; Regulation (EU) 2023/1115,
/// handbook, trade 7.3 and 7.4). Kept as well-known text.
/// </summary>
public sealed class PlotShape
{
    /// <summary>Above this many hectares a polygon is required (handbook, trade 7.3).</summary>
    public const decimal PolygonAbove = 4m;

    private readonly Geometry _geometry;

    private PlotShape(Geometry geometry, WrittenDecimals? written) => (_geometry, Written) = (geometry, written);

    public Geometry Geometry => _geometry;

    /// <summary>The decimals of its numbers as they were written; null for a shape that was kept, which has six by rounding.</summary>
    public WrittenDecimals? Written { get; }

    public bool IsPoint => _geometry.Dimension == Dimension.Point;

    /// <summary>Of polygons, on the ellipsoid, to a square metre's hundredth part; zero for points.</summary>
    public decimal Hectares => Math.Round((decimal)(Polygons().Sum(polygon => Math.Abs(EllipsoidArea.SquareMetres(Ring(polygon)))) / 10_000), 6, MidpointRounding.AwayFromZero);

    /// <summary>Reads well-known text that this class wrote.</summary>
    public static PlotShape FromText(string text) => new(new WKTReader().Read(text), null);

    public string ToText() => new WKTWriter { Formatted = false, OutputOrdinates = Ordinates.XY }.Write(_geometry);

    /// <summary>A point; latitudes beyond the poles tell that the two were given the wrong way round.</summary>
    /// <exception cref="RuleBrokenException">It lies nowhere on Earth.</exception>
    public static PlotShape Point(decimal longitude, decimal latitude) => Points([(longitude, latitude)]);

    /// <summary>One or several points.</summary>
    public static PlotShape Points(IReadOnlyList<(decimal Longitude, decimal Latitude)> positions)
    {
        ArgumentNullException.ThrowIfNull(positions);
        Rule.Require(positions.Count > 0, "A point has a longitude and a latitude.", nameof(positions));
        var points = positions.Select(one => new Point(Position(one.Longitude, one.Latitude))).ToArray();
        return new PlotShape(points.Length == 1 ? points[0] : new MultiPoint(points), WrittenDecimals.Of(positions));
    }

    /// <summary>One or several polygons, each a ring without holes.</summary>
    /// <exception cref="RuleBrokenException">A ring is open, crosses itself, repeats a position after six decimals, or encloses nothing.</exception>
    public static PlotShape Polygons(IReadOnlyList<IReadOnlyList<(decimal Longitude, decimal Latitude)>> rings)
    {
        ArgumentNullException.ThrowIfNull(rings);
        Rule.Require(rings.Count > 0, "A polygon has a ring of at least four positions.", nameof(rings));
        var polygons = rings.Select(Polygon).ToArray();
        var whole = polygons.Length == 1 ? (Geometry)polygons[0] : new MultiPolygon(polygons);
        Rule.Require(polygons.Length == 1 || whole.IsValid, "Two polygons of this plot overlap: send each piece of land once.", nameof(rings));
        return new PlotShape(whole, WrittenDecimals.Of(rings.SelectMany(ring => ring)));
    }

    /// <summary>How much of this plot the other one covers, in hectares by a plane through both; zero where either is a point.</summary>
    public decimal Overlap(PlotShape other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (IsPoint || other.IsPoint || !_geometry.EnvelopeInternal.Intersects(other._geometry.EnvelopeInternal))
        {
            return 0m;
        }

        var common = _geometry.Intersection(other._geometry);
        return common.Area == 0 ? 0m : Hectares * (decimal)(common.Area / _geometry.Area);
    }

    /// <summary>Whether both are the same place to six decimals.</summary>
    public bool IsSameAs(PlotShape other) => other is not null && _geometry.EqualsTopologically(other._geometry);

    /// <summary>The same with longitude and latitude exchanged; null where that lies nowhere on Earth.</summary>
    public PlotShape? Swapped()
    {
        var exchanged = _geometry.Copy();
        exchanged.Apply(new Exchange());
        exchanged.GeometryChanged();
        return exchanged.Coordinates.All(one => Math.Abs(one.Y) <= 90) ? new PlotShape(exchanged, Written) : null;
    }

    public IReadOnlyList<Point> AllPoints() => _geometry is GeometryCollection many ? [.. many.Geometries.OfType<Point>()] : _geometry is Point one ? [one] : [];

    public IReadOnlyList<Polygon> Polygons() => _geometry is GeometryCollection many ? [.. many.Geometries.OfType<Polygon>()] : _geometry is Polygon one ? [one] : [];

    private static Polygon Polygon(IReadOnlyList<(decimal Longitude, decimal Latitude)> positions)
    {
        var ring = positions.Select(one => Position(one.Longitude, one.Latitude)).ToArray();
        Rule.Require(ring.Length >= 4, "A ring has at least four positions, the last equal to the first.", nameof(positions));
        Rule.Require(ring[0].Equals2D(ring[^1]), "The ring is open: its last position must equal the first.", nameof(positions));
        Rule.Require(ring.Skip(1).DistinctBy(one => (one.X, one.Y)).Count() == ring.Length - 1, "A position stands twice in the ring after six decimals: leave one of them out.", nameof(positions));
        var polygon = new Polygon(new LinearRing(ring));
        Rule.Require(polygon.ConvexHull().Dimension == Dimension.Surface, "The positions lie on a straight line: a polygon encloses an area.", nameof(positions));
        var trouble = new IsValidOp(polygon).ValidationError;
        Rule.Require(trouble is null, string.Create(CultureInfo.InvariantCulture, $"The ring crosses itself near longitude {trouble?.Coordinate.X:0.######}, latitude {trouble?.Coordinate.Y:0.######}: draw it so that it does not."), nameof(positions));
        return polygon;
    }

    private static Coordinate Position(decimal longitude, decimal latitude)
    {
        Rule.Require(latitude is >= -90m and <= 90m, string.Create(CultureInfo.InvariantCulture, $"A latitude of {latitude} lies beyond the poles: longitude comes first, then latitude."), "Latitude");
        Rule.Require(longitude is >= -180m and <= 180m, string.Create(CultureInfo.InvariantCulture, $"A longitude of {longitude} does not exist: it lies between −180 and 180."), "Longitude");
        return new Coordinate((double)Math.Round(longitude, 6, MidpointRounding.AwayFromZero), (double)Math.Round(latitude, 6, MidpointRounding.AwayFromZero));
    }

    private static List<(double Longitude, double Latitude)> Ring(Polygon polygon) => [.. polygon.ExteriorRing.Coordinates.Select(one => (one.X, one.Y))];

    private sealed class Exchange : ICoordinateFilter
    {
        public void Filter(Coordinate coord) => (coord.X, coord.Y) = (coord.Y, coord.X);
    }
}

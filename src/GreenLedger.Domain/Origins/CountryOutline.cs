using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Distance;

namespace GreenLedger.Domain.Origins;

/// <summary>The outline of a country in degrees, as map data has it. What is costly is worked out when it is first asked for.</summary>
public sealed class CountryOutline
{
    private readonly Lazy<Geometry> _shape;
    private readonly Lazy<IndexedPointInAreaLocator> _inside;
    private readonly Lazy<IndexedFacetDistance> _edge;
    private readonly Lock _lock = new();

    /// <param name="number">ISO 3166-1 numeric; null for land that the standard does not name.</param>
    /// <param name="name">As the map data calls it.</param>
    /// <param name="drawn">Polygons; their rings may touch themselves where the data are rounded.</param>
    public CountryOutline(string? number, string name, Geometry drawn)
    {
        ArgumentNullException.ThrowIfNull(drawn);
        (Number, Name, Drawn, Box) = (number, name, drawn, drawn.EnvelopeInternal);
        _shape = new(() => GeometryFixer.Fix(drawn));
        _inside = new(() => new IndexedPointInAreaLocator(drawn));
        _edge = new(() => new IndexedFacetDistance(drawn));
    }

    public string? Number { get; }

    public string Name { get; }

    /// <summary>The least rectangle of longitudes and latitudes around it.</summary>
    public Envelope Box { get; }

    /// <summary>As it was given: good to be drawn, not to be cut.</summary>
    public Geometry Drawn { get; }

    /// <summary>The same land as valid polygons.</summary>
    public Geometry Shape => _shape.Value;

    /// <summary>Whether a position lies inside or on the outline.</summary>
    public bool Holds(Coordinate position)
    {
        lock (_lock)
        {
            return Box.Intersects(position) && _inside.Value.Locate(position) != Location.Exterior;
        }
    }

    /// <summary>
    /// How far a position lies outside, in kilometres on a sphere; zero inside. The nearest place of the outline is sought in degrees, which
    /// between the tropics, where coffee grows, is at most a tenth too far.
    /// </summary>
    public double KilometresOutside(Coordinate position)
    {
        if (Holds(position))
        {
            return 0;
        }

        lock (_lock)
        {
            var nearest = _edge.Value.NearestPoints(new Point(position));
            return Sphere.Kilometres(nearest[0], nearest[1]);
        }
    }
}

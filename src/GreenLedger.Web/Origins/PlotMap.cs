using System.Globalization;
using System.Text;
using GreenLedger.Domain.Origins;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;

namespace GreenLedger.Web.Origins;

/// <summary>A country on the map.</summary>
public sealed record MapLand(string Path, bool IsHere);

/// <summary>A polygon of a plot.</summary>
public sealed record MapShape(string Path, string Name);

/// <summary>A mark: a plot given as a point, or a polygon that is too small to be seen.</summary>
public sealed record MapMark(string X, string Y, string Name, bool IsPoint);

/// <summary>A name written on the map.</summary>
/// <param name="Anchor">Which part of it stands at X, in the words of SVG.</param>
public sealed record MapName(string X, string Y, string Name, string Anchor, bool IsLand);

/// <summary>Countries and plots drawn by the server, as paths in the units of <see cref="MapView"/>.</summary>
public sealed class PlotMap
{
    /// <summary>A polygon drawn smaller than this is shown by a mark.</summary>
    private const double Seen = 10;

    private readonly List<Envelope> _written = [];

    private PlotMap(MapView view, CountryOutlines outlines, string? countryCode, IReadOnlyList<Plot> plots)
    {
        (View, Grid) = (view, MapGrid.Of(view));
        var shown = plots.Select(plot => (plot.Name, plot.IsPoint, Shape: plot.Where())).Where(plot => view.Box.Intersects(plot.Shape.Geometry.EnvelopeInternal)).ToList();
        var here = outlines.Of(countryCode).ToHashSet();
        var lands = outlines.All.Where(outline => outline.Box.Intersects(view.Box)).OrderBy(here.Contains).Select(outline => (outline.Name, Part: Clipped(outline), IsHere: here.Contains(outline))).ToList();
        Lands = [.. lands.Where(land => !land.Part.IsEmpty).Select(land => new MapLand(Path(land.Part), land.IsHere))];
        Shapes = [.. shown.SelectMany(plot => plot.Shape.Polygons().Where(polygon => !IsSmall(polygon)).Select(polygon => new MapShape(Path(polygon), plot.Name)))];
        Marks = [.. shown.SelectMany(plot => Marked(plot.Shape).Select(at => new MapMark(X(at), Y(at), plot.Name, plot.IsPoint))).DistinctBy(mark => (mark.X[..^1], mark.Y[..^1]))];
        Names = [.. shown.Select(plot => NameOf(plot.Name, plot.Shape.Geometry.Centroid.Coordinate, false)).OfType<MapName>(), .. lands.Select(Named).OfType<MapName>()];
    }

    public MapView View { get; }

    public MapGrid Grid { get; }

    /// <summary>Countries in view, the plots' own last.</summary>
    public IReadOnlyList<MapLand> Lands { get; }

    public IReadOnlyList<MapShape> Shapes { get; }

    public IReadOnlyList<MapMark> Marks { get; }

    /// <summary>Names that find room, those of plots before those of countries.</summary>
    public IReadOnlyList<MapName> Names { get; }

    public static PlotMap Of(MapView view, CountryOutlines outlines, string? countryCode, IReadOnlyList<Plot> plots)
    {
        ArgumentNullException.ThrowIfNull(outlines);
        ArgumentNullException.ThrowIfNull(plots);
        return new PlotMap(view, outlines, countryCode, plots);
    }

    /// <summary>All of the country; the Earth where its outline is not known.</summary>
    public static MapView Whole(CountryOutlines outlines, string? countryCode)
    {
        ArgumentNullException.ThrowIfNull(outlines);
        var box = new Envelope();
        foreach (var outline in outlines.Of(countryCode))
        {
            box.ExpandToInclude(outline.Box);
        }

        return box.IsNull ? MapView.World : MapView.Around(box, 100);
    }

    /// <summary>About the plots; null where there is none.</summary>
    public static MapView? Near(IReadOnlyList<Plot> plots)
    {
        ArgumentNullException.ThrowIfNull(plots);
        var box = new Envelope();
        foreach (var plot in plots)
        {
            box.ExpandToInclude(plot.Where().Geometry.EnvelopeInternal);
        }

        return box.IsNull ? null : MapView.Around(box, 1);
    }

    /// <summary>The part in view, and a little more, so that the edge of the cut is not seen.</summary>
    private Geometry Clipped(CountryOutline outline)
    {
        var box = View.Box;
        box.ExpandBy(box.Width / 20);
        return box.Contains(outline.Box) ? outline.Drawn : outline.Shape.Intersection(GeometryFactory.Default.ToGeometry(box));
    }

    private IEnumerable<Coordinate> Marked(PlotShape shape) =>
        shape.IsPoint ? shape.AllPoints().Select(point => point.Coordinate) : shape.Polygons().Where(IsSmall).Select(polygon => polygon.Centroid.Coordinate);

    private bool IsSmall(Polygon polygon) => Math.Max(polygon.EnvelopeInternal.Width / View.Box.Width * MapView.Width, polygon.EnvelopeInternal.Height / View.Box.Height * MapView.Height) < Seen;

    private MapName? Named((string Name, Geometry Part, bool IsHere) land)
    {
        var box = View.Box;
        var largest = Parts(land.Part).MaxBy(part => part.EnvelopeInternal.Intersection(box).Area);
        if (largest is null || largest.EnvelopeInternal.Intersection(box).Area < box.Area / 60)
        {
            return null;
        }

        var seen = box.Contains(largest.EnvelopeInternal) ? largest : GeometryFixer.Fix(largest).Intersection(GeometryFactory.Default.ToGeometry(box));
        return seen.Area > box.Area / 60 ? NameOf(land.Name, seen.InteriorPoint.Coordinate, true) : null;
    }

    /// <summary>A name where it finds room: that of a plot right or left of its place, that of a country over it.</summary>
    private MapName? NameOf(string name, Coordinate at, bool isLand)
    {
        // As large as the letters are on a phone; the edges belong to the degrees and the scale.
        const double letter = 12, high = 24, beside = 10;
        var (x, y, wide) = (View.X(at.X), View.Y(at.Y) + (isLand ? 0 : 6), name.Length * letter);
        (string Anchor, double X, double Left)[] places = isLand ? [("middle", x, x - wide / 2)] : [("start", x + beside, x + beside), ("end", x - beside, x - beside - wide)];
        foreach (var (anchor, from, left) in places)
        {
            var box = new Envelope(left, left + wide, y - high, y);
            if (left >= 0 && left + wide <= MapView.Width && y - high >= 30 && y <= MapView.Height - 50 && !_written.Exists(box.Intersects))
            {
                _written.Add(box);
                return new MapName(Figure(from), Figure(y), name, anchor, isLand);
            }
        }

        return null;
    }

    /// <summary>Rings as a path; what would fall on the same place as the last position is left out.</summary>
    private string Path(Geometry geometry)
    {
        var path = new StringBuilder();
        foreach (var ring in Parts(geometry).SelectMany(polygon => polygon.InteriorRings.Prepend(polygon.ExteriorRing)).Where(ring => ring.EnvelopeInternal.Width / View.Box.Width * MapView.Width > 0.7))
        {
            var (lastX, lastY, isFirst) = (0.0, 0.0, true);
            foreach (var position in ring.Coordinates)
            {
                var (x, y) = (View.X(position.X), View.Y(position.Y));
                if (isFirst || Math.Abs(x - lastX) + Math.Abs(y - lastY) > 0.8)
                {
                    path.Append(isFirst ? 'M' : 'L').Append(Figure(x)).Append(' ').Append(Figure(y));
                    (lastX, lastY, isFirst) = (x, y, false);
                }
            }

            path.Append('Z');
        }

        return path.ToString();
    }

    private static IEnumerable<Polygon> Parts(Geometry geometry) => Enumerable.Range(0, geometry.NumGeometries).Select(geometry.GetGeometryN).OfType<Polygon>();

    private string X(Coordinate at) => Figure(View.X(at.X));

    private string Y(Coordinate at) => Figure(View.Y(at.Y));

    private static string Figure(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}

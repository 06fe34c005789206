using System.Text.Json;
using GreenLedger.Domain.Origins;
using NetTopologySuite.Geometries;

namespace GreenLedger.Documents.Origins;

/// <summary>
/// Reads outlines of countries from TopoJSON (the specification by Bostock and Metcalf, sections 2.1 and 2.2): neighbours share arcs, which
/// may be stored as whole-number steps; a ring joins arcs, and a negative number is an arc backwards.
/// </summary>
public static class TopoJsonCountries
{
    /// <summary>Every polygon of a collection, with the ISO 3166-1 numeric code and the name that the file gives it.</summary>
    /// <param name="stream">A TopoJSON file.</param>
    /// <param name="collection">What the file calls the collection.</param>
    public static IReadOnlyList<CountryOutline> Read(Stream stream, string collection = "countries")
    {
        using var file = JsonDocument.Parse(stream);
        var arcs = Arcs(file.RootElement);
        return
        [
            .. file.RootElement.GetProperty("objects").GetProperty(collection).GetProperty("geometries").EnumerateArray()
                .Where(one => one.GetProperty("type").GetString() is "Polygon" or "MultiPolygon")
                .Select(one => new CountryOutline(Text(one, "id"), NameOf(one), Polygons(one, arcs))).Where(one => !one.Box.IsNull),
        ];
    }

    private static Coordinate[][] Arcs(JsonElement topology)
    {
        var stored = topology.GetProperty("arcs").EnumerateArray();
        if (!topology.TryGetProperty("transform", out var transform))
        {
            return [.. stored.Select(arc => arc.EnumerateArray().Select(Pair).ToArray())];
        }

        var (scale, translate) = (Pair(transform.GetProperty("scale")), Pair(transform.GetProperty("translate")));
        return [.. stored.Select(arc => Summed(arc, scale, translate))];
    }

    private static Coordinate[] Summed(JsonElement arc, Coordinate scale, Coordinate translate)
    {
        var (x, y) = (0.0, 0.0);
        return [.. arc.EnumerateArray().Select(step =>
        {
            (x, y) = (x + step[0].GetDouble(), y + step[1].GetDouble());
            return new Coordinate(x * scale.X + translate.X, y * scale.Y + translate.Y);
        })];
    }

    private static Coordinate Pair(JsonElement pair) => new(pair[0].GetDouble(), pair[1].GetDouble());

    private static MultiPolygon Polygons(JsonElement geometry, Coordinate[][] arcs)
    {
        var parts = geometry.GetProperty("arcs");
        IEnumerable<JsonElement> polygons = geometry.GetProperty("type").GetString() == "Polygon" ? [parts] : parts.EnumerateArray();
        return new MultiPolygon([.. polygons.Select(polygon => Polygon(polygon, arcs)).OfType<Polygon>().SelectMany(Antimeridian.Cut)]);
    }

    /// <summary>Null for an island that the rounding of the file has shrunk to a line.</summary>
    private static Polygon? Polygon(JsonElement rings, Coordinate[][] arcs)
    {
        const int least = 4;
        var read = rings.EnumerateArray().Select(ring => Ring(ring, arcs)).ToList();
        return read[0].Length < least ? null : new Polygon(new LinearRing(read[0]), [.. read.Skip(1).Where(hole => hole.Length >= least).Select(hole => new LinearRing(hole))]);
    }

    private static Coordinate[] Ring(JsonElement numbers, Coordinate[][] arcs)
    {
        var positions = new List<Coordinate>();
        foreach (var number in numbers.EnumerateArray().Select(one => one.GetInt32()))
        {
            var arc = number >= 0 ? arcs[number] : arcs[~number].AsEnumerable().Reverse();
            positions.AddRange(positions.Count == 0 ? arc : arc.Skip(1));
        }

        return Antimeridian.Unrolled(positions);
    }

    private static string NameOf(JsonElement geometry) =>
        geometry.TryGetProperty("properties", out var properties) && properties.ValueKind == JsonValueKind.Object ? Text(properties, "name") ?? "" : "";

    private static string? Text(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}

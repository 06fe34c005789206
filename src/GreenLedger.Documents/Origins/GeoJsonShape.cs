using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Documents.Origins;

/// <summary>Reads a geometry of GeoJSON: points and polygons, longitude before latitude (RFC 7946, 3.1).</summary>
internal static class GeoJsonShape
{
    /// <exception cref="RuleBrokenException">It is another kind of geometry, has a hole, or a position is no pair of numbers.</exception>
    public static PlotShape Of(JsonElement geometry)
    {
        var parts = Parts(geometry);
        var isPoints = parts.ConvertAll(part => KindOf(part) is "Point" or "MultiPoint");
        Rule.Require(isPoints.Distinct().Count() == 1, "The plot is given by points and by polygons: send them as two.", "File");
        return isPoints[0] ? PlotShape.Points([.. parts.SelectMany(Positions)]) : PlotShape.Polygons([.. parts.SelectMany(Rings)]);
    }

    /// <summary>Of a collection each geometry, else the one.</summary>
    private static List<JsonElement> Parts(JsonElement geometry)
    {
        if (KindOf(geometry) != "GeometryCollection")
        {
            return [geometry];
        }

        var found = geometry.TryGetProperty("geometries", out var parts);
        Rule.Require(found && parts.ValueKind == JsonValueKind.Array && parts.GetArrayLength() > 0 && parts.EnumerateArray().All(part => part.ValueKind == JsonValueKind.Object), "The collection holds no geometry.", "File");
        return [.. parts.EnumerateArray()];
    }

    private static string KindOf(JsonElement geometry) => geometry.TryGetProperty("type", out var type) && type.ValueKind == JsonValueKind.String ? type.GetString()! : "";

    private static JsonElement Coordinates(JsonElement geometry)
    {
        var found = geometry.TryGetProperty("coordinates", out var coordinates);
        Rule.Require(found && coordinates.ValueKind == JsonValueKind.Array, "The geometry has no coordinates.", "File");
        return coordinates;
    }

    private static IEnumerable<(decimal, decimal)> Positions(JsonElement points) =>
        KindOf(points) == "Point" ? [Position(Coordinates(points))] : Coordinates(points).EnumerateArray().Select(Position);

    private static IEnumerable<IReadOnlyList<(decimal, decimal)>> Rings(JsonElement geometry) => KindOf(geometry) switch
    {
        "Polygon" => [Ring(Coordinates(geometry))],
        "MultiPolygon" => Coordinates(geometry).EnumerateArray().Select(Ring),
        var kind => throw new RuleBrokenException($"A {(kind.Length > 0 ? kind : "geometry without a type")} is no plot: send points or polygons.", "File"),
    };

    private static List<(decimal, decimal)> Ring(JsonElement polygon)
    {
        Rule.Require(polygon.ValueKind == JsonValueKind.Array && polygon.GetArrayLength() > 0 && polygon[0].ValueKind == JsonValueKind.Array, "A polygon is a list of rings, each a list of positions.", "File");
        Rule.Require(polygon.GetArrayLength() == 1, "The polygon has a hole, which the EU's system does not take: send the land as polygons without holes.", "File");
        return [.. polygon[0].EnumerateArray().Select(Position)];
    }

    private static (decimal Longitude, decimal Latitude) Position(JsonElement position)
    {
        Rule.Require(
            position.ValueKind == JsonValueKind.Array && position.GetArrayLength() >= 2 && position[0].ValueKind == JsonValueKind.Number && position[1].ValueKind == JsonValueKind.Number
            && position[0].TryGetDecimal(out _) && position[1].TryGetDecimal(out _),
            "A position is a longitude and a latitude, both numbers.", "File");
        return (position[0].GetDecimal(), position[1].GetDecimal());
    }
}

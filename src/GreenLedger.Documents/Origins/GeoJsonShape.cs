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
        var kind = geometry.TryGetProperty("type", out var type) && type.ValueKind == JsonValueKind.String ? type.GetString() : "";
        var found = geometry.TryGetProperty("coordinates", out var coordinates);
        Rule.Require(kind == "GeometryCollection" || (found && coordinates.ValueKind == JsonValueKind.Array), "The geometry has no coordinates.", "File");
        return kind switch
        {
            "Point" => PlotShape.Points([Position(coordinates)]),
            "MultiPoint" => PlotShape.Points([.. coordinates.EnumerateArray().Select(Position)]),
            "Polygon" => PlotShape.Polygons([Ring(coordinates)]),
            "MultiPolygon" => PlotShape.Polygons([.. coordinates.EnumerateArray().Select(Ring)]),
            _ => throw new RuleBrokenException($"A {(kind is { Length: > 0 } ? kind : "geometry without a type")} is no plot: send points or polygons.", "File"),
        };
    }

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

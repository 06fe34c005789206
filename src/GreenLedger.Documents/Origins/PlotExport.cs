using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using GreenLedger.Domain.Origins;
using NetTopologySuite.Geometries;

namespace GreenLedger.Documents.Origins;

/// <summary>A plot with the name of its producer, to be exported.</summary>
public sealed record ExportedPlot(string Producer, Plot Plot);

/// <summary>Exported plots, ready to be handed out.</summary>
public sealed record PlotDownload(byte[] Content, string MediaType, string FileName);

/// <summary>
/// Writes plots as the GeoJSON that the EU's system takes: six decimals in full, rings counter-clockwise (RFC 7946, 3.1.6), split
/// where a file would grow past the limit.
/// </summary>
public static class PlotExport
{
    /// <summary>RFC 7946, 12.</summary>
    public const string MediaType = "application/geo+json";

    private static readonly byte[] Head = "{\"type\":\"FeatureCollection\",\"features\":["u8.ToArray();
    private static readonly byte[] Foot = "\n]}"u8.ToArray();

    /// <param name="plots">In the order they stand in the files.</param>
    /// <param name="mostBytes">The limit of one file.</param>
    /// <returns>One file, or several that are each within the limit.</returns>
    public static IReadOnlyList<byte[]> Write(IEnumerable<ExportedPlot> plots, int mostBytes = PlotFile.MostBytes)
    {
        ArgumentNullException.ThrowIfNull(plots);
        var files = new List<byte[]>();
        var features = new List<byte[]>();
        var size = Head.Length + Foot.Length;
        foreach (var feature in plots.Select(plot => Encoding.UTF8.GetBytes(FeatureOf(plot))))
        {
            if (features.Count > 0 && size + feature.Length + 2 > mostBytes)
            {
                files.Add(Joined(features));
                features.Clear();
                size = Head.Length + Foot.Length;
            }

            features.Add(feature);
            size += feature.Length + 2;
        }

        files.Add(Joined(features));
        return files;
    }

    /// <summary>One GeoJSON file; a ZIP of several where the limit makes several.</summary>
    /// <param name="plots">In the order they stand in the files.</param>
    /// <param name="mostBytes">The limit of one GeoJSON file.</param>
    public static PlotDownload Download(IEnumerable<ExportedPlot> plots, int mostBytes = PlotFile.MostBytes)
    {
        var files = Write(plots, mostBytes);
        if (files.Count == 1)
        {
            return new PlotDownload(files[0], MediaType, "plots.geojson");
        }

        using var packed = new MemoryStream();
        using (var archive = new ZipArchive(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (at, file) in files.Index())
            {
                using var entry = archive.CreateEntry($"plots-{at + 1}-of-{files.Count}.geojson").Open();
                entry.Write(file);
            }
        }

        return new PlotDownload(packed.ToArray(), "application/zip", "plots.zip");
    }

    private static byte[] Joined(List<byte[]> features)
    {
        using var file = new MemoryStream();
        file.Write(Head);
        foreach (var (at, feature) in features.Index())
        {
            file.Write(at == 0 ? "\n"u8 : ",\n"u8);
            file.Write(feature);
        }

        file.Write(Foot);
        return file.ToArray();
    }

    private static string FeatureOf(ExportedPlot one)
    {
        var shape = one.Plot.Where();
        var area = one.Plot.IsPoint ? $",\"Area\":{one.Plot.Hectares.ToString("0.####", CultureInfo.InvariantCulture)}" : "";
        return $"{{\"type\":\"Feature\",\"properties\":{{\"ProducerName\":{Quoted(one.Producer)},\"ProducerCountry\":{Quoted(one.Plot.CountryCode)},\"ProductionPlace\":{Quoted(one.Plot.Name)}{area}}},\"geometry\":{GeometryOf(shape)}}}";
    }

    private static string GeometryOf(PlotShape shape)
    {
        var (points, rings) = (shape.AllPoints().Select(point => Position(point.Coordinate)).ToList(), shape.Polygons().Select(Ring).ToList());
        return (points.Count, rings.Count) switch
        {
            (1, _) => $"{{\"type\":\"Point\",\"coordinates\":{points[0]}}}",
            ( > 1, _) => $"{{\"type\":\"MultiPoint\",\"coordinates\":[{string.Join(',', points)}]}}",
            (_, 1) => $"{{\"type\":\"Polygon\",\"coordinates\":[{rings[0]}]}}",
            _ => $"{{\"type\":\"MultiPolygon\",\"coordinates\":[{string.Join(',', rings.Select(ring => $"[{ring}]"))}]}}",
        };
    }

    private static string Ring(Polygon polygon)
    {
        var positions = polygon.ExteriorRing.Coordinates;
        var isCounterClockwise = NetTopologySuite.Algorithm.Orientation.IsCCW(positions);
        return $"[{string.Join(',', (isCounterClockwise ? positions : positions.Reverse()).Select(Position))}]";
    }

    private static string Position(Coordinate position) => string.Create(CultureInfo.InvariantCulture, $"[{position.X:F6},{position.Y:F6}]");

    private static string Quoted(string text) => JsonSerializer.Serialize(text);
}

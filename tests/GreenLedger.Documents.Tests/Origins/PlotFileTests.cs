using System.IO.Compression;
using System.Text;
using System.Text.Json;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using NetTopologySuite.Features;
using NetTopologySuite.IO.Converters;

namespace GreenLedger.Documents.Tests.Origins;

public sealed class PlotFileTests
{
    private static readonly JsonSerializerOptions Reader = new() { Converters = { new GeoJsonConverterFactory() } };

    /// <summary>Handbook, trade 7.4: the published shape of the file.</summary>
    private const string Published = """
        {"type":"FeatureCollection","features":[
         {"type":"Feature","properties":{"ProducerName":"Finca 1","ProducerCountry":"CO","ProductionPlace":"Lote 3","Area":2.5},"geometry":{"type":"Point","coordinates":[-75.899000,2.001000]}},
         {"type":"Feature","properties":{"ProducerName":"Finca 2","ProducerCountry":"CO","ProductionPlace":"Lote 7"},"geometry":{"type":"Polygon","coordinates":[[[-75.900000,2.000000],[-75.898000,2.000000],[-75.898000,2.002000],[-75.900000,2.002000],[-75.900000,2.000000]]]}}]}
        """;

    [Fact]
    public void The_published_example_is_read_whole()
    {
        var file = Read(Published);

        Assert.Empty(file.Problems);
        Assert.Equal([("Finca 1", "CO", "Lote 3", 2.5m), ("Finca 2", "CO", "Lote 7", null)], file.Lines.Select(line => (line.Producer!, line.Country!, line.Name!, line.Hectares)));
        Assert.Equal([true, false], file.Lines.Select(line => line.Shape.IsPoint));
    }

    /// <summary>Handbook, trade 7.4: collections are taken, and positions are of WGS 84 (RFC 7946, 4, knows no other).</summary>
    [Fact]
    public void A_collection_is_one_plot_of_points_or_of_polygons_and_another_coordinate_system_is_refused()
    {
        const string square = """{"type":"Polygon","coordinates":[[[-75.9,2.0],[-75.898,2.0],[-75.898,2.002],[-75.9,2.002],[-75.9,2.0]]]}""";
        const string beside = """{"type":"Polygon","coordinates":[[[-75.89,2.0],[-75.888,2.0],[-75.888,2.002],[-75.89,2.002],[-75.89,2.0]]]}""";
        static string Of(string parts) => """{"type":"Feature","properties":{},"geometry":{"type":"GeometryCollection","geometries":[PARTS]}}""".Replace("PARTS", parts, StringComparison.Ordinal);

        var both = Assert.Single(Read(Of($"{square},{beside}")).Lines).Shape;
        var mixed = Assert.Single(Read(Of(square + """,{"type":"Point","coordinates":[-75.9,2.0]}""")).Problems);
        var utm = Assert.Throws<RuleBrokenException>(() => Read(Published.Replace("\"features\"", "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::32618\"}},\"features\"", StringComparison.Ordinal)));
        var same = Read(Published.Replace("\"features\"", "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:OGC:1.3:CRS84\"}},\"features\"", StringComparison.Ordinal));

        // Polygon A of handbook, trade 7.6, twice: 2 × 4.920707 ha.
        Assert.Equal(9.841414, (double)both.Hectares, 5);
        Assert.Contains("by points and by polygons", mixed.Message, StringComparison.Ordinal);
        Assert.Contains("another coordinate system", utm.Message, StringComparison.Ordinal);
        Assert.Empty(same.Problems);
    }

    [Theory]
    [InlineData("""{"type":"LineString","coordinates":[[1,2],[3,4]]}""", "send points or polygons")]
    [InlineData("""{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1]]]}""", "at least four positions")]
    [InlineData("""{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,1]]]}""", "is open")]
    [InlineData("""{"type":"Polygon","coordinates":[[[0,0],[3,0],[3,3],[0,3],[0,0]],[[1,1],[2,1],[2,2],[1,2],[1,1]]]}""", "has a hole")]
    [InlineData("""{"type":"Polygon","coordinates":[[[0,0],[1,1],[1,0],[0,1],[0,0]]]}""", "crosses itself")]
    [InlineData("""{"type":"Point","coordinates":["1","2"]}""", "both numbers")]
    [InlineData("""{"type":"Point"}""", "no coordinates")]
    [InlineData("""{"type":"Point","coordinates":[1,91]}""", "beyond the poles")]
    public void What_the_EUs_system_refuses_is_refused_with_a_sentence(string geometry, string why)
    {
        // Handbook, trade 7.4 and check value 60.
        var file = Read($$"""{"type":"FeatureCollection","features":[{"type":"Feature","properties":{},"geometry":{{geometry}}}]}""");

        Assert.Empty(file.Lines);
        Assert.Contains(why, Assert.Single(file.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_area_in_quotation_marks_and_a_property_in_another_case_are_noticed()
    {
        // Handbook, trade, check values 59 and 62.
        var quoted = Read("""{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"Area":"3"},"geometry":{"type":"Point","coordinates":[1,2]}}]}""");
        var cased = Read("""{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"productionplace":"Lote 3"},"geometry":{"type":"Point","coordinates":[1,2]}}]}""");

        Assert.Contains("without quotation marks", Assert.Single(quoted.Problems).Message, StringComparison.Ordinal);
        Assert.Contains("written ProductionPlace", Assert.Single(cased.Problems).Message, StringComparison.Ordinal);
        Assert.Null(Assert.Single(cased.Lines).Name);
    }

    [Theory]
    [InlineData("name;longitude;latitude;hectares\nLote 3;-75.899123;2.001234;1.5\nLote 4;-75.9;2.1;\n")]
    [InlineData("Name,Longitude,Latitude,Hectares\r\nLote 3,-75.899123,2.001234,1.5\r\nLote 4,-75.9,2.1,\r\n")]
    public void Points_are_read_from_CSV(string text)
    {
        var file = Read(text);

        Assert.Empty(file.Problems);
        Assert.Equal([("Lote 3", 1.5m), ("Lote 4", null)], file.Lines.Select(line => (line.Name!, line.Hectares)));
    }

    /// <summary>JSON numbers and cells of CSV keep the decimals that were written (handbook, trade 7.3): zeros at the end count.</summary>
    [Theory]
    [InlineData("""{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[-46.57,-20.23]}}""", 2, 2)]
    [InlineData("""{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[-46.570000,-20.23000]}}""", 5, 6)]
    [InlineData("""{"type":"Feature","properties":{},"geometry":{"type":"Polygon","coordinates":[[[-75.9,2.000000],[-75.898000,2.000000],[-75.898000,2.002000],[-75.9,2.000000]]]}}""", 1, 6)]
    [InlineData("name,longitude,latitude\nLote 3,-46.570,-20.230000\n", 3, 6)]
    public void Decimals_are_counted_as_they_are_written(string text, int fewest, int most) =>
        Assert.Equal(new WrittenDecimals(fewest, most), Assert.Single(Read(text).Lines).Shape.Written);

    [Theory]
    [InlineData("{\"type\":\"FeatureCollection\"")]
    [InlineData("a,b\n1,2\n")]
    [InlineData("{\"type\":\"Point\",\"coordinates\":[1,2]}")]
    public void What_is_no_file_of_plots_is_refused(string text) => Assert.Throws<RuleBrokenException>(() => Read(text));

    /// <summary>Read back by a GeoJSON reader that is not ours.</summary>
    [Fact]
    public void What_is_written_is_read_back_by_another_reader()
    {
        var clockwise = PlotShape.Polygons([[(-75.9m, 2m), (-75.9m, 2.002m), (-75.898m, 2.002m), (-75.898m, 2m), (-75.9m, 2m)]]);
        Plot[] plots = [PlotOf("Lote \"3\"", PlotShape.Point(-75.899m, 2.001m), 2.5m), PlotOf("Lote 7", clockwise, null), PlotOf("Ñandú", PlotShape.Points([(1m, 2m), (3m, 4m)]), null)];

        var written = Assert.Single(PlotExport.Write(plots.Select(plot => new ExportedPlot("Finca 1", plot))));

        var features = JsonSerializer.Deserialize<FeatureCollection>(written, Reader)!;
        Assert.Equal(["Point", "Polygon", "MultiPoint"], features.Select(feature => feature.Geometry.GeometryType));
        Assert.Equal(["Lote \"3\"", "Lote 7", "Ñandú"], features.Select(feature => (string)feature.Attributes["ProductionPlace"]));
        Assert.True(NetTopologySuite.Algorithm.Orientation.IsCCW(features[1].Geometry.Coordinates));
        Assert.Contains("[-75.900000,2.000000]", Encoding.UTF8.GetString(written), StringComparison.Ordinal);
        Assert.Empty(PlotFile.Read(written).Problems);
        Assert.All(plots.Zip(PlotFile.Read(written).Lines), pair => Assert.True(pair.Second.Shape.IsSameAs(pair.First.Where())));
        Assert.Equal(plots.Length, PlotFile.Read(written).Lines.Count);
    }

    [Fact]
    public void A_file_that_would_grow_past_the_limit_is_split()
    {
        var plots = Enumerable.Range(0, 100).Select(at => new ExportedPlot("Finca", PlotOf($"Lote {at}", PlotShape.Point(at, at / 2m), 1m))).ToList();

        var files = PlotExport.Write(plots, 4_000);

        Assert.True(files.Count > 3);
        Assert.All(files, file => Assert.InRange(file.Length, 1, 4_000));
        Assert.Equal(Enumerable.Range(0, 100).Select(at => $"Lote {at}"), files.SelectMany(file => PlotFile.Read(file).Lines).Select(line => line.Name!));
    }

    [Fact]
    public void Several_files_are_handed_out_packed_and_one_as_it_is()
    {
        var plots = Enumerable.Range(0, 100).Select(at => new ExportedPlot("Finca", PlotOf($"Lote {at}", PlotShape.Point(at, at / 2m), 1m))).ToList();

        var one = PlotExport.Download(plots);
        var several = PlotExport.Download(plots, 4_000);

        Assert.Equal(("plots.geojson", "application/geo+json"), (one.FileName, one.MediaType));
        Assert.Equal(100, PlotFile.Read(one.Content).Lines.Count);
        Assert.Equal(("plots.zip", "application/zip"), (several.FileName, several.MediaType));
        using var archive = new ZipArchive(new MemoryStream(several.Content));
        Assert.Equal(PlotExport.Write(plots, 4_000).Count, archive.Entries.Count);
        Assert.Equal(100, archive.Entries.Sum(entry => PlotFile.Read(Bytes(entry)).Lines.Count));
    }

    private static byte[] Bytes(ZipArchiveEntry entry)
    {
        using var read = new MemoryStream();
        using var packed = entry.Open();
        packed.CopyTo(read);
        return read.ToArray();
    }

    private static Plot PlotOf(string name, PlotShape shape, decimal? hectares) => new(Id<Producer>.New(), name, "CO", shape, hectares);

    private static PlotFile Read(string text) => PlotFile.Read(Encoding.UTF8.GetBytes(text));
}

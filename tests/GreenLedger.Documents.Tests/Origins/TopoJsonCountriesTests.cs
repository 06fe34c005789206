using System.Text;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Documents.Tests.Origins;

public sealed class TopoJsonCountriesTests
{
    /// <summary>The TopoJSON Format Specification, 1.1: its example, whose polygon is the arc 1 backwards.</summary>
    private const string Example = """
        {"type":"Topology","objects":{"example":{"type":"GeometryCollection","geometries":[
          {"type":"Point","properties":{"prop0":"value0"},"coordinates":[102,0.5]},
          {"type":"LineString","properties":{"prop0":"value0","prop1":0},"arcs":[0]},
          {"type":"Polygon","properties":{"prop0":"value0","prop1":{"this":"that"}},"arcs":[[-2]]}]}},
         "arcs":[[[102,0],[103,1],[104,0],[105,1]],[[100,0],[101,0],[101,1],[100,1],[100,0]]]}
        """;

    /// <summary>The same topology, quantized, as the specification prints it.</summary>
    private const string Quantized = """
        {"type":"Topology","transform":{"scale":[0.0005000500050005,0.00010001000100010001],"translate":[100,0]},
         "objects":{"example":{"type":"GeometryCollection","geometries":[
          {"type":"Point","properties":{"prop0":"value0"},"coordinates":[4000,5000]},
          {"type":"LineString","properties":{"prop0":"value0","prop1":0},"arcs":[0]},
          {"type":"Polygon","properties":{"prop0":"value0","prop1":{"this":"that"}},"arcs":[[1]]}]}},
         "arcs":[[[4000,0],[1999,9999],[2000,-9999],[2000,9999]],[[0,0],[0,9999],[2000,0],[0,-9999],[-2000,0]]]}
        """;

    /// <summary>Two neighbours that share arc 1, one of them backwards; the second has an island, and one that is a line.</summary>
    private const string Neighbours = """
        {"type":"Topology","objects":{"countries":{"type":"GeometryCollection","geometries":[
          {"type":"Polygon","id":"170","properties":{"name":"West"},"arcs":[[0,1]]},
          {"type":"MultiPolygon","id":"604","properties":{"name":"East"},"arcs":[[[2,-2]],[[3]],[[4]]]}]}},
         "arcs":[[[1,1],[0,1],[0,0],[1,0]],[[1,0],[1,1]],[[1,0],[2,0],[2,1],[1,1]],[[3,0],[4,0],[4,1],[3,0]],[[5,5],[5,5],[5,5]]]}
        """;

    [Theory]
    [InlineData(Example)]
    [InlineData(Quantized)]
    public void The_polygon_of_the_specifications_example_is_decoded(string file)
    {
        var outline = Assert.Single(Read(file, "example"));

        // By the specification's first example: the square from 100, 0 to 101, 1; quantized it is true to a step of 0.0005 degrees.
        var box = outline.Box;
        Assert.Equal((100.0, 101.0, 0.0, 1.0), (Math.Round(box.MinX, 3), Math.Round(box.MaxX, 3), Math.Round(box.MinY, 3), Math.Round(box.MaxY, 3)));
        Assert.Equal(1.0, outline.Shape.Area, 3);
        Assert.Equal(5, outline.Shape.NumPoints);
    }

    [Fact]
    public void Neighbours_share_an_arc_and_islands_that_are_lines_are_left_out()
    {
        var (west, east) = Read(Neighbours, "countries") is [var first, var second] ? (first, second) : throw new InvalidOperationException();

        Assert.Equal([("170", "West"), ("604", "East")], new[] { west, east }.Select(one => (one.Number!, one.Name)));
        // Worked by hand: a square of one square degree; another, and a triangle of half of one.
        Assert.Equal((1.0, 1.5), (west.Shape.Area, east.Shape.Area));
        Assert.Equal(2, east.Shape.NumGeometries);
        Assert.True(west.Shape.Touches(east.Shape));
    }

    private static IReadOnlyList<CountryOutline> Read(string file, string collection) => TopoJsonCountries.Read(new MemoryStream(Encoding.UTF8.GetBytes(file)), collection);
}

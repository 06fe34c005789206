using GreenLedger.Domain.Origins;
using NetTopologySuite.Geometries;

namespace GreenLedger.Domain.Tests.Origins;

/// <summary>Where a plot lies beside its country; the countries here are squares of our own.</summary>
public sealed class PlotOutlineTests
{
    /// <summary>Colombia as the square from -76, 1 to -74, 3; Peru as the one south of it.</summary>
    private static readonly CountryOutlines Outlines = new([new("170", "Colombia", Square(-76, 1)), new("604", "Peru", Square(-76, -1))]);

    [Theory]
    [InlineData(-75.0, 2.0, 0.0)]
    // Worked by hand: at the equator's scale a degree of latitude is 6371.0088 km times pi over 180, 111.195 km; at latitude 2 one of longitude is that times cos 2 degrees, 111.127 km.
    [InlineData(-75.0, 3.1, 11.11951)]
    [InlineData(-76.1, 2.0, 11.11273)]
    public void The_distance_from_a_country_is_in_kilometres(double longitude, double latitude, double kilometres) =>
        Assert.Equal(kilometres, Outlines.KilometresOutside(PlotShape.Point((decimal)longitude, (decimal)latitude), "CO")!.Value, 3);

    [Fact]
    public void The_corner_that_lies_farthest_out_counts()
    {
        var shape = PlotShape.Polygons([[(-75m, 2.99m), (-74.9m, 2.99m), (-74.9m, 3.1m), (-75m, 2.99m)]]);

        Assert.Equal(11.11951, Outlines.KilometresOutside(shape, "CO")!.Value, 3);
    }

    [Theory]
    [InlineData(-75.0, 3.04, false)] // 4.4 km north of the border.
    [InlineData(-75.0, 3.05, true)] // 5.6 km.
    [InlineData(2.0, -75.0, true)]
    public void A_plot_is_doubted_from_five_kilometres_on(double longitude, double latitude, bool isDoubted)
    {
        var plot = PlotAt(longitude, latitude, "CO");

        Assert.Equal(isDoubted, PlotDoubts.Of([plot], "CO", Outlines).Count == 1);
    }

    [Fact]
    public void The_doubt_says_how_far_and_which_country_it_is()
    {
        var doubt = Assert.Single(PlotDoubts.Of([PlotAt(-75.5, 0.5, "CO")], "CO", Outlines));

        // Half a degree of latitude: 55.6 km.
        Assert.Equal("Lote 4 is said to lie in CO, and lies about 56 km outside of it, at longitude -75.5, latitude 0.5. It lies in Peru by the map. Check the country, and that the longitude stands first.", doubt);
    }

    /// <summary>At longitude 2, latitude -75 nothing grows; exchanged it lies in the square that is Colombia here.</summary>
    [Fact]
    public void A_plot_that_would_lie_in_its_country_with_both_exchanged_is_told_so()
    {
        var doubt = Assert.Single(PlotDoubts.Of([PlotAt(2, -75, "CO")], "CO", Outlines));

        Assert.Equal("Longitude and latitude of Lote 4 look swapped: it is said to lie in CO and does so at longitude -75, latitude 2, not at longitude 2, latitude -75 as it stands. Longitude comes first.", doubt);
    }

    [Theory]
    [InlineData("BR")]
    [InlineData("XX")]
    public void A_country_without_an_outline_is_not_judged(string code) => Assert.Empty(PlotDoubts.Of([PlotAt(2, -75, code)], code, Outlines));

    [Theory]
    [InlineData("-75.9, 2", true)]
    [InlineData("-75.9,2\n-75.898\t2\n-75.898; 2.002\n\n−75.9 2.002\r\n-75.9, 2.0", false)]
    public void Corners_are_read_as_people_write_them(string text, bool isPoint)
    {
        var shape = PlotCorners.Shape(text);

        Assert.Equal(isPoint, shape.IsPoint);
        // Polygon A of handbook, trade 7.6: 4.920707 ha.
        Assert.Equal(isPoint ? 0m : 4.920707m, Math.Round(shape.Hectares, 6));
    }

    [Theory]
    [InlineData("", "Draw the plot on the map")]
    [InlineData("-75.9, 2\n-75.8 x", "Line 2, '-75.8 x', is no position")]
    [InlineData("-75,9, 2,0", "is no position")]
    [InlineData("-75.9, 2\n-75.898, 2\n-75.898, 2.002\n-75.9, 2.002", "is open")]
    [InlineData("-75.9, 2\n-75.898, 2.002\n-75.898, 2\n-75.9, 2.002\n-75.9, 2", "crosses itself")]
    [InlineData("12.5, 108", "longitude comes first")]
    public void Corners_that_are_no_plot_are_refused_beside_their_field(string text, string why)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => PlotCorners.Shape(text));

        Assert.Contains(why, refused.Message, StringComparison.Ordinal);
        Assert.Equal("Corners", refused.Field);
    }

    [Fact]
    public void Kilometres_are_along_the_great_circle() =>
        // Worked by hand: a quarter of the way round a sphere of 6371.0088 km is its radius times half of pi, 10,007.557 km.
        Assert.Equal(10_007.557, Sphere.Kilometres(new Coordinate(0, 0), new Coordinate(0, 90)), 3);

    private static Plot PlotAt(double longitude, double latitude, string country) =>
        new(Id<Producer>.New(), "Lote 4", country, PlotShape.Point((decimal)longitude + 0.000000m, (decimal)latitude + 0.000000m), null);

    private static Geometry Square(double west, double south) => GeometryFactory.Default.ToGeometry(new Envelope(west, west + 2, south, south + 2));
}

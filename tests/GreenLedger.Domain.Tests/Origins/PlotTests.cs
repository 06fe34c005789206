using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Tests.Origins;

public sealed class PlotTests
{
    /// <summary>Handbook, trade 7.6: hectares on the ellipsoid by two geodesic programs, relative tolerance a millionth.</summary>
    public static TheoryData<string, double> Areas => new()
    {
        { "-75.9 2, -75.898 2, -75.898 2.002, -75.9 2.002", 4.920707 },
        { "38.5 6.7, 38.5012 6.6998, 38.5017 6.7009, 38.5006 6.7018, 38.4996 6.7011", 3.252441 },
        { "-46.5 -20.003, -46.496 -20.003, -46.496 -20, -46.5 -20", 13.901728 },
        { "37 0, 37.001 0, 37.001 0.001, 37 0.001", 1.230907 },
        { "-90 15, -89.99814 15, -89.99814 15.001807, -90 15.001807", 3.999705 },
        { "-90 15, -89.99814 15, -89.99814 15.001809, -90 15.001809", 4.004132 },
        { "108 12.5, 108.003 12.5, 108 12.503", 5.411157 } // edges straight in degrees; 5.411178 with geodesic ones,
    };

    [Theory, MemberData(nameof(Areas))]
    public void A_polygon_has_its_area_on_the_ellipsoid(string ring, double hectares) =>
        Assert.InRange((double)Polygon(ring).Hectares / hectares, 1 - 1.0e-6, 1 + 1.0e-6);

    [Fact]
    public void A_square_degree_at_the_equator_has_its_area_along_parallels()
    {
        // Handbook, trade 7.6, polygon G: 1,230,846.389 ha along parallels.
        (double, double)[] ring = [(0, 0), (1, 0), (1, 1), (0, 1), (0, 0)];

        Assert.Equal(1_230_846.389, EllipsoidArea.SquareMetres(ring) / 10_000, 3);
        Assert.Equal(-1_230_846.389, EllipsoidArea.SquareMetres([.. ring.Reverse()]) / 10_000, 3);
    }

    [Theory]
    [InlineData("0 0, 0.001 0, 0.001 0.001, 0 0.001", "is open", false)]
    [InlineData("0 0, 0.001 0.001, 0.001 0, 0 0.001", "crosses itself", true)]
    [InlineData("0 0, 0.001 0.001, 0.002 0.002", "straight line", true)]
    public void A_ring_that_encloses_nothing_sure_is_refused(string ring, string why, bool closes)
    {
        var positions = Positions(ring, closes);

        var refused = Assert.Throws<RuleBrokenException>(() => PlotShape.Polygons([positions]));

        Assert.Contains(why, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_positions_that_are_one_after_six_decimals_are_refused()
    {
        // Handbook, trade, check value 61.
        (decimal, decimal)[] ring =
        [
            (144.2567071234m, -5.8227391234m), (144.2567074567m, -5.8227394567m), (144.258m, -5.823m), (144.257m, -5.821m), (144.2567071234m, -5.8227391234m),
        ];

        Assert.Contains("stands twice", Assert.Throws<RuleBrokenException>(() => PlotShape.Polygons([ring])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Latitude_before_longitude_is_noticed_beyond_the_poles() =>
        Assert.Contains("longitude comes first", Assert.Throws<RuleBrokenException>(() => PlotShape.Point(12.5m, 108m)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(4.0, true)]
    [InlineData(4.01, false)]
    public void A_point_stands_for_four_hectares_at_most(double hectares, bool isTaken)
    {
        // Handbook, trade, check values 58 and 59.
        var plot = () => new Plot(Id<Producer>.New(), "Lote 3", "CO", PlotShape.Point(-75.899m, 2.001m), (decimal)hectares);

        if (isTaken)
        {
            Assert.Equal(4.0m, plot().Hectares);
        }
        else
        {
            Assert.Contains("polygon is required", Assert.Throws<RuleBrokenException>(plot).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_point_without_an_area_counts_as_four_hectares() => Assert.Equal(4m, PlotOf("A", PlotShape.Point(-75.899m, 2.001m)).Hectares);

    [Fact]
    public void Plots_that_overlap_lie_twice_or_in_another_country_are_doubted()
    {
        Plot[] plots =
        [
            PlotOf("East", Polygon("-75.9 2, -75.898 2, -75.898 2.002, -75.9 2.002")),
            PlotOf("West", Polygon("-75.899 2, -75.897 2, -75.897 2.002, -75.899 2.002")),
            PlotOf("Copy", Polygon("-75.9 2.002, -75.9 2, -75.898 2, -75.898 2.002")),
        ];

        var doubts = PlotDoubts.Of(plots, "PE", CountryOutlines.None);

        Assert.Equal(3, doubts.Count(doubt => doubt.Contains("is said to lie in CO, its producer in PE", StringComparison.Ordinal)));
        // Half of a plot of 4.920707 ha (handbook, trade 7.6, polygon A).
        Assert.Contains("East and West overlap by 2.4604 ha.", doubts);
        Assert.Contains("East and Copy are the same place.", doubts);
    }

    /// <summary>Handbook, trade 7.3: at least six decimals; steps worked by hand from 6371.0088 km times pi over 180, 111,195 m a degree.</summary>
    [Theory]
    [InlineData("-46.57", "-20.23", "Lote 3 has a coordinate of 2 decimals, steps of about 1,112 m on the ground. The rules ask for six decimals: check that the source holds no more.")]
    [InlineData("-46.570000", "-20", "Lote 3 has a coordinate of no decimals, steps of about 111,195 m on the ground. The rules ask for six decimals: check that the source holds no more.")]
    [InlineData("-46.570001", "-20.2311", "Lote 3 has coordinates of fewer than six decimals beside others of six, the shortest of 4 decimals, steps of about 11 m on the ground: zeros at their end may have been left out. Check that the source holds no more.")]
    [InlineData("-46.57000", "-20.23000", "Lote 3 has a coordinate of 5 decimals, steps of about 1.1 m on the ground. The rules ask for six decimals: check that the source holds no more.")]
    [InlineData("-46.570000", "-20.230000", null)]
    [InlineData("-46.5700001", "-20.2300001", null)]
    public void A_coordinate_of_fewer_than_six_decimals_as_written_is_doubted(string longitude, string latitude, string? doubt)
    {
        var plot = PlotOf("Lote 3", PlotCorners.Shape($"{longitude}, {latitude}"));

        Assert.Equal(doubt is null ? [] : [doubt], PlotDoubts.Of([plot], "CO", CountryOutlines.None));
    }

    [Fact]
    public void Zeros_that_may_have_been_left_out_are_told_once_for_all_plots()
    {
        var plots = Enumerable.Range(1, 7).Select(at => PlotOf($"Lote {at}", PlotShape.Point(-75.123456m, at + 0.12345m))).ToList();

        var doubt = Assert.Single(PlotDoubts.Each(plots, "CO", CountryOutlines.None));

        Assert.StartsWith("Lote 1, Lote 2, Lote 3, Lote 4, Lote 5 and 2 more have coordinates of fewer than six decimals", doubt.Said, StringComparison.Ordinal);
        Assert.Equal(plots, doubt.About);
    }

    [Fact]
    public void Land_that_two_producers_claim_is_told_with_the_other_ones_name()
    {
        var own = PlotOf("Lote 3", Polygon("-75.9 2, -75.898 2, -75.898 2.002, -75.9 2.002"));
        (Plot, string)[] others =
        [
            (PlotOf("East", Polygon("-75.899 2, -75.897 2, -75.897 2.002, -75.899 2.002")), "Finca Norte"),
            (PlotOf("Copy", Polygon("-75.9 2.002, -75.9 2, -75.898 2, -75.898 2.002")), "Finca Sur"),
            (PlotOf("Far", Polygon("-75.8 2, -75.798 2, -75.798 2.002")), "Finca Sur"),
        ];

        var doubts = PlotDoubts.Beside([own], others);

        // Half of a plot of 4.920707 ha (handbook, trade 7.6, polygon A).
        Assert.Equal(["Lote 3 is the same place as Copy of Finca Sur: two producers claim it.", "Lote 3 overlaps East of Finca Norte by 2.4604 ha: two producers claim that land."], doubts.Select(doubt => doubt.Said));
        Assert.All(doubts, doubt => Assert.False(doubt.IsSamePlace));
    }

    [Fact]
    public void A_shape_comes_back_from_its_text()
    {
        var shape = PlotShape.Polygons([Positions("-75.9 2, -75.898 2, -75.898 2.002, -75.9 2.002", true), Positions("-75.9 3, -75.898 3, -75.898 3.002", true)]);

        var back = PlotShape.FromText(shape.ToText());

        Assert.True(back.IsSameAs(shape));
        Assert.Equal(shape.Hectares, back.Hectares);
    }

    private static Plot PlotOf(string name, PlotShape shape) => new(Id<Producer>.New(), name, "CO", shape, null);

    private static PlotShape Polygon(string ring) => PlotShape.Polygons([Positions(ring, true)]);

    private static List<(decimal, decimal)> Positions(string ring, bool closes)
    {
        var read = ring.Split(", ").Select(one => one.Split(' ')).Select(one => (decimal.Parse(one[0], System.Globalization.CultureInfo.InvariantCulture), decimal.Parse(one[1], System.Globalization.CultureInfo.InvariantCulture))).ToList();
        return closes ? [.. read, read[0]] : read;
    }
}

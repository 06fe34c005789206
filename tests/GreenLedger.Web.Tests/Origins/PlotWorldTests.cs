using System.Globalization;
using System.Text.RegularExpressions;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;

namespace GreenLedger.Web.Tests.Origins;

/// <summary>
/// With the outlines that come with the program, against the places of zone.tab in the tz database 2025b (public domain): country by
/// ISO 3166-1, and latitude and longitude in degrees and minutes, so true to about a kilometre.
/// </summary>
public sealed partial class PlotWorldTests
{
    private static readonly CountryOutlines Outlines = new WorldMap().Outlines;

    /// <summary>A place of each country that a new ledger begins with; of the United States the one where coffee grows.</summary>
    public static TheoryData<string, string> Places => new()
    {
        { "BI", "-0323+02922" }, { "BO", "-1630-06809" }, { "BR", "-2332-04637" }, { "CD", "-0418+01518" }, { "CI", "+0519-00402" }, { "CM", "+0403+00942" }, { "CO", "+0436-07405" },
        { "CR", "+0956-08405" }, { "EC", "-0210-07950" }, { "ET", "+0902+03842" }, { "GT", "+1438-09031" }, { "HN", "+1406-08713" }, { "ID", "-0610+10648" }, { "IN", "+2232+08822" },
        { "KE", "-0117+03649" }, { "LA", "+1758+10236" }, { "MX", "+1924-09909" }, { "NI", "+1209-08617" }, { "PA", "+0858-07932" }, { "PE", "-1203-07703" }, { "PG", "-0930+14710" },
        { "RW", "-0157+03004" }, { "SV", "+1342-08912" }, { "TZ", "-0648+03917" }, { "UG", "+0019+03225" }, { "US", "+211825-1575130" }, { "VN", "+1045+10640" },
        // Sana'a, from memory: the place that zone.tab has for Yemen lies in the Gulf of Aden, 15 km off the coast.
        { "YE", "+1521+04412" },
    };

    [Theory, MemberData(nameof(Places))]
    public void A_known_place_lies_in_its_country_and_not_with_its_numbers_the_wrong_way_round(string country, string place)
    {
        var (longitude, latitude) = Read(place);

        Assert.InRange(Outside(longitude, latitude, country), 0, CountryOutlines.ToleranceKilometres);
        if (longitude is >= -90 and <= 90)
        {
            Assert.True(Outside(latitude, longitude, country) > CountryOutlines.ToleranceKilometres);
        }
    }

    /// <summary>Capitals that face each other over the Congo, and one at a border: nearer to it than the outlines are true to, so neither is doubted.</summary>
    [Theory]
    [InlineData("-0416+01517", "CD")] // Brazzaville
    [InlineData("-0418+01518", "CG")] // Kinshasa
    [InlineData("+0608+00113", "GH")] // Lomé
    public void Beside_a_border_nothing_is_doubted(string place, string neighbour)
    {
        var (longitude, latitude) = Read(place);

        Assert.InRange(Outside(longitude, latitude, neighbour), 0, CountryOutlines.ToleranceKilometres);
    }

    [Theory]
    [InlineData("+0019+03225", "KE")] // Kampala
    [InlineData("+1406-08713", "NI")] // Tegucigalpa
    [InlineData("+1342-08912", "GT")] // San Salvador
    [InlineData("-0157+03004", "UG")] // Kigali
    public void A_place_in_a_neighbour_is_doubted(string place, string neighbour)
    {
        var (longitude, latitude) = Read(place);

        Assert.True(Outside(longitude, latitude, neighbour) > CountryOutlines.ToleranceKilometres);
    }

    /// <summary>Countries on both sides of 180 degrees, and one about a pole: their places by zone.tab, and the same latitude where they are not.</summary>
    [Theory]
    [InlineData("FJ", "-1808+17825", -60)] // Suva
    [InlineData("RU", "+6445+17729", -20)] // Anadyr
    [InlineData("AQ", "-7750+16636", null)] // McMurdo
    public void A_country_across_180_degrees_is_no_band_about_the_Earth(string country, string place, int? elsewhere)
    {
        var (longitude, latitude) = Read(place);

        Assert.InRange(Outside(longitude, latitude, country), 0, CountryOutlines.ToleranceKilometres);
        Assert.True(elsewhere is null || Outside(elsewhere.Value, latitude, country) > 1000);
        Assert.All(Outlines.Of(country), outline => Assert.InRange(outline.Box.Width, 0, 360));
        Assert.True(country != "FJ" || Outlines.Of(country).All(outline => outline.Drawn.Area < 5), "Fiji has 18,000 km², about 1.5 square degrees (from memory).");
    }

    [Fact]
    public void Every_origin_of_a_new_ledger_has_an_outline() => Assert.All(StandardCountries.All(), country => Assert.NotEmpty(Outlines.Of(country.Code)));

    [Fact]
    public void The_map_of_a_country_shows_it_whole_with_its_net_and_scale()
    {
        var view = PlotMap.Whole(Outlines, "CO");

        var map = PlotMap.Of(view, Outlines, "CO", []);

        Assert.All(Outlines.Of("CO"), outline => Assert.True(view.Box.Contains(outline.Box)));
        Assert.True(Assert.Single(map.Lands, land => land.IsHere).Path.Length > 1000);
        Assert.Contains("Venezuela", map.Names.Select(name => name.Name));
        Assert.NotEmpty(map.Grid.Lines);
        // What the bar says in kilometres is as long as it is drawn.
        var kilometres = double.Parse(map.Grid.ScaleWords.Split(' ')[0], NumberStyles.AllowThousands, CultureInfo.InvariantCulture);
        Assert.Equal(kilometres / view.Kilometres, map.Grid.ScaleLength / MapView.Width, 9);
    }

    [Fact]
    public void Both_ways_have_one_scale_in_the_middle()
    {
        var view = MapView.Read("-46.5,-20", "2")!;

        // By the great circle, which knows nothing of the drawing: the width is 2 km, the height three quarters of it.
        Assert.Equal(2.0, Sphere.Kilometres(new(view.Box.MinX, -20), new(view.Box.MaxX, -20)), 3);
        Assert.Equal(1.5, Sphere.Kilometres(new(-46.5, view.Box.MinY), new(-46.5, view.Box.MaxY)), 3);
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("here", "3")]
    [InlineData("-75.9,2", "wide")]
    public void An_address_that_says_no_view_is_not_read(string? at, string? across) => Assert.Null(MapView.Read(at, across));

    private static double Outside(double longitude, double latitude, string country) => Outlines.KilometresOutside(PlotShape.Point((decimal)longitude, (decimal)latitude), country)!.Value;

    private static (double Longitude, double Latitude) Read(string place)
    {
        var parts = Parts().Match(place);
        return (Degrees(parts.Groups[2].Value, 3), Degrees(parts.Groups[1].Value, 2));
    }

    /// <summary>±DDMM or ±DDMMSS, with three digits of degrees in a longitude.</summary>
    private static double Degrees(string text, int digits)
    {
        var (degrees, minutes, seconds) = (text[1..(digits + 1)], text[(digits + 1)..(digits + 3)], text[(digits + 3)..]);
        var size = double.Parse(degrees, CultureInfo.InvariantCulture) + double.Parse(minutes, CultureInfo.InvariantCulture) / 60 + (seconds.Length == 0 ? 0 : double.Parse(seconds, CultureInfo.InvariantCulture) / 3600);
        return text[0] == '-' ? -size : size;
    }

    [GeneratedRegex(@"^([+-]\d+)([+-]\d+)$")]
    private static partial Regex Parts();
}

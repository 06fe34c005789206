using System.Globalization;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// Outlines of the world's countries, to see whether a plot lies where it is said to. They are coarse: near a border they decide
/// nothing, and where a border runs is not for this program to say.
/// </summary>
public sealed class CountryOutlines
{
    /// <summary>
    /// How far outside of its country's outline a place may lie before it is doubted, in kilometres. The outlines are drawn at 1:10 million,
    /// where half a millimetre of the sheet, about what a drawn line is true to, is 5 km on the ground.
    /// </summary>
    public const double ToleranceKilometres = 5;

    private readonly ILookup<string, CountryOutline> _byNumber;

    /// <param name="outlines">Of several with one number all count.</param>
    public CountryOutlines(IEnumerable<CountryOutline> outlines)
    {
        All = [.. outlines];
        _byNumber = All.Where(one => one.Number is not null).ToLookup(one => one.Number!);
    }

    /// <summary>None: nothing is doubted.</summary>
    public static CountryOutlines None { get; } = new([]);

    public IReadOnlyList<CountryOutline> All { get; }

    /// <summary>The outlines of a country; none where the map data or the standard has none.</summary>
    /// <param name="code">ISO 3166-1 alpha-2.</param>
    public IEnumerable<CountryOutline> Of(string? code) => code is not null && CountryNumbers.Of(code) is { } number ? _byNumber[number] : [];

    /// <summary>How far the part of a shape that lies farthest out lies outside of a country, in kilometres; null where the country has no outline here.</summary>
    public double? KilometresOutside(PlotShape shape, string code)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var country = Of(code).ToList();
        return country.Count == 0 ? null : shape.Geometry.Coordinates.Max(position => country.Min(outline => outline.KilometresOutside(position)));
    }

    /// <summary>What is doubtful about where a plot is said to lie; null where nothing is, or where it cannot be told.</summary>
    public string? Doubt(Plot plot)
    {
        ArgumentNullException.ThrowIfNull(plot);
        var shape = plot.Where();
        if (KilometresOutside(shape, plot.CountryCode) is not { } kilometres || kilometres <= ToleranceKilometres)
        {
            return null;
        }

        var middle = shape.Geometry.Centroid.Coordinate;
        if (shape.Swapped() is { } swapped && KilometresOutside(swapped, plot.CountryCode) <= ToleranceKilometres)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"Longitude and latitude of {plot.Name} look swapped: it is said to lie in {plot.CountryCode} and does so at longitude {middle.Y:0.######}, latitude {middle.X:0.######}, not at longitude {middle.X:0.######}, latitude {middle.Y:0.######} as it stands. Longitude comes first.");
        }

        var there = All.FirstOrDefault(outline => outline.Holds(middle))?.Name;
        var where = there is null ? "" : $" It lies in {there} by the map.";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{plot.Name} is said to lie in {plot.CountryCode}, and lies about {Math.Ceiling(kilometres):#,0} km outside of it, at longitude {middle.X:0.######}, latitude {middle.Y:0.######}.{where} Check the country, and that the longitude stands first.");
    }
}

using System.Globalization;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// A piece of land on which a producer grows coffee, by points or polygons. What it is called and where its producer says it
/// lies are kept as sent; whether it may stand for a lot under Regulation (EU) 2023/1115 is for the competent authority.
/// </summary>
public sealed class Plot
{
    private const decimal UnstatedHectares = 4m;

    private Plot() => Name = CountryCode = Shape = "";

    /// <exception cref="RuleBrokenException">It has no name or country, or a point stands for more than 4 ha.</exception>
    public Plot(Id<Producer> producerId, string name, string countryCode, PlotShape shape, decimal? statedHectares)
        : this()
    {
        Id = Id<Plot>.New();
        ProducerId = producerId;
        Describe(name, countryCode, shape, statedHectares);
    }

    public Id<Plot> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Producer> ProducerId { get; private set; }

    /// <summary>The place of production, as the producer calls it.</summary>
    public string Name { get; private set; }

    /// <summary>ISO 3166-1.</summary>
    public string CountryCode { get; private set; }

    /// <summary>As well-known text, six decimals.</summary>
    public string Shape { get; private set; }

    public bool IsPoint { get; private set; }

    /// <summary>In hundredths of a square metre: of a polygon on the ellipsoid, of a point as stated, 4 ha where nothing is.</summary>
    public long AreaSquareDecimetres { get; private set; }

    /// <summary>The fewest decimals that a number of its positions had as it was written; null where nobody counted them.</summary>
    public int? FewestDecimals { get; private set; }

    /// <summary>The most decimals that a number of its positions had as it was written; null where nobody counted them.</summary>
    public int? MostDecimals { get; private set; }

    /// <summary>Null where nobody counted them.</summary>
    public WrittenDecimals? Written => FewestDecimals is { } fewest && MostDecimals is { } most ? new WrittenDecimals(fewest, most) : null;

    public decimal Hectares => AreaSquareDecimetres / 1_000_000m;

    /// <summary>Puts right what it is called or where it lies.</summary>
    public void Describe(string name, string countryCode, PlotShape shape, decimal? statedHectares)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Name = Rule.Text(name, "The name of the plot", 200, nameof(Name));
        Rule.Require(countryCode is { Length: 2 } && countryCode.All(char.IsAsciiLetterUpper), "The country is written as two capital letters, such as CO for Colombia.", nameof(CountryCode));
        CountryCode = countryCode;
        if (shape.IsPoint)
        {
            Rule.Require(
                statedHectares is null or (>= 0.0001m and <= PlotShape.PolygonAbove),
                string.Create(CultureInfo.InvariantCulture, $"A point stands for 0.0001 to 4 ha, not for {statedHectares} ha: above 4 ha a polygon is required."), nameof(Hectares));
        }

        var hectares = shape.IsPoint ? statedHectares ?? UnstatedHectares : shape.Hectares;
        (Shape, IsPoint) = (shape.ToText(), shape.IsPoint);
        (FewestDecimals, MostDecimals) = (shape.Written?.Fewest, shape.Written?.Most);
        AreaSquareDecimetres = decimal.ToInt64(Math.Round(hectares * 1_000_000m, 0, MidpointRounding.AwayFromZero));
    }

    public PlotShape Where() => PlotShape.FromText(Shape);
}

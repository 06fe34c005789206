using System.Globalization;
using NetTopologySuite.Index.Strtree;

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
        AreaSquareDecimetres = decimal.ToInt64(Math.Round(hectares * 1_000_000m, 0, MidpointRounding.AwayFromZero));
    }

    public PlotShape Where() => PlotShape.FromText(Shape);
}

/// <summary>What is doubtful about plots that stand together, in sentences; nothing here refuses them.</summary>
public static class PlotDoubts
{
    /// <summary>Of each kind; more than anybody reads at once.</summary>
    private const int MostDoubts = 50;

    /// <param name="plots">Those that stand together, such as all of one producer.</param>
    /// <param name="producerCountry">Where the producer is; null where nobody said.</param>
    /// <param name="outlines">Where countries lie.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<Plot> plots, string? producerCountry, CountryOutlines outlines)
    {
        ArgumentNullException.ThrowIfNull(plots);
        ArgumentNullException.ThrowIfNull(outlines);
        var foreign = plots.Where(plot => producerCountry is not null && plot.CountryCode != producerCountry)
            .Select(plot => $"{plot.Name} is said to lie in {plot.CountryCode}, its producer in {producerCountry}.");
        return [.. foreign.Take(MostDoubts), .. plots.Select(outlines.Doubt).OfType<string>().Take(MostDoubts), .. Together(plots).Take(MostDoubts)];
    }

    /// <summary>Plots that are the same place or overlap.</summary>
    private static IEnumerable<string> Together(IReadOnlyList<Plot> plots)
    {
        var shapes = plots.Select(plot => plot.Where()).ToList();
        var near = new STRtree<int>();
        foreach (var (at, shape) in shapes.Index())
        {
            near.Insert(shape.Geometry.EnvelopeInternal, at);
        }

        for (var one = 0; one < plots.Count; one++)
        {
            foreach (var other in near.Query(shapes[one].Geometry.EnvelopeInternal).Where(other => other > one).Order())
            {
                if (shapes[one].IsSameAs(shapes[other]))
                {
                    yield return $"{plots[one].Name} and {plots[other].Name} are the same place.";
                }
                else if (shapes[one].Overlap(shapes[other]) is > 0.0001m and var hectares)
                {
                    yield return string.Create(CultureInfo.InvariantCulture, $"{plots[one].Name} and {plots[other].Name} overlap by {hectares:0.0000} ha.");
                }
            }
        }
    }
}

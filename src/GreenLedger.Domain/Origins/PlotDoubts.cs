using System.Globalization;
using NetTopologySuite.Index.Strtree;

namespace GreenLedger.Domain.Origins;

/// <summary>What is doubtful about one plot, or about several together.</summary>
/// <param name="About">The plots that it is told of.</param>
/// <param name="Said">In a sentence.</param>
/// <param name="IsSamePlace">Whether it tells that they are one place.</param>
public sealed record PlotDoubt(IReadOnlyList<Plot> About, string Said, bool IsSamePlace = false);

/// <summary>What is doubtful about plots that stand together, in sentences; nothing here refuses them.</summary>
public static class PlotDoubts
{
    /// <summary>Hectares that hardly any plot of coffee has more than (from memory).</summary>
    private const decimal LargestFarm = 5_000m;

    /// <summary>Of each kind; more than anybody reads at once.</summary>
    private const int MostDoubts = 50;

    /// <summary>Of each kind where each is told beside its plot; thousands of plots one over the other would make millions.</summary>
    private const int MostEach = 20_000;

    /// <summary>As many plots as one sentence names.</summary>
    private const int MostNamed = 5;

    /// <param name="plots">Those that stand together, such as all of one producer.</param>
    /// <param name="producerCountry">Where the producer is; null where nobody said.</param>
    /// <param name="outlines">Where countries lie.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<Plot> plots, string? producerCountry, CountryOutlines outlines)
    {
        ArgumentNullException.ThrowIfNull(plots);
        ArgumentNullException.ThrowIfNull(outlines);
        return [.. Kinds(plots, producerCountry, outlines).SelectMany(kind => kind.Take(MostDoubts)).Select(doubt => doubt.Said)];
    }

    /// <summary>Every doubt with the plots that it is about, for a list that tells each beside its plot.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    public static IReadOnlyList<PlotDoubt> Each(IReadOnlyList<Plot> plots, string? producerCountry, CountryOutlines outlines)
    {
        ArgumentNullException.ThrowIfNull(plots);
        ArgumentNullException.ThrowIfNull(outlines);
        return [.. Kinds(plots, producerCountry, outlines).SelectMany(kind => kind.Take(MostEach))];
    }

    /// <summary>Plots that are the same place as one of another producer, or overlap it: the same land may be claimed twice.</summary>
    /// <param name="plots">Those that are told of.</param>
    /// <param name="others">Plots of other producers, each with the producer's name.</param>
    public static IReadOnlyList<PlotDoubt> Beside(IReadOnlyList<Plot> plots, IReadOnlyList<(Plot Plot, string Producer)> others)
    {
        ArgumentNullException.ThrowIfNull(plots);
        ArgumentNullException.ThrowIfNull(others);
        var near = new STRtree<(PlotShape Shape, string Named)>();
        foreach (var (plot, producer) in others)
        {
            var shape = plot.Where();
            near.Insert(shape.Geometry.EnvelopeInternal, (shape, $"{plot.Name} of {producer}"));
        }

        return [.. plots.SelectMany(plot => Shared(plot, near)).Take(MostEach)];
    }

    private static IEnumerable<PlotDoubt> Shared(Plot plot, STRtree<(PlotShape Shape, string Named)> near)
    {
        var shape = plot.Where();
        foreach (var (other, named) in near.Query(shape.Geometry.EnvelopeInternal).OrderBy(one => one.Named, StringComparer.Ordinal))
        {
            if (shape.IsSameAs(other))
            {
                yield return new PlotDoubt([plot], $"{plot.Name} is the same place as {named}: two producers claim it.");
            }
            else if (shape.Overlap(other) is > 0.0001m and var hectares)
            {
                yield return new PlotDoubt([plot], string.Create(CultureInfo.InvariantCulture, $"{plot.Name} overlaps {named} by {hectares:0.0000} ha: two producers claim that land."));
            }
        }
    }

    private static IEnumerable<PlotDoubt>[] Kinds(IReadOnlyList<Plot> plots, string? producerCountry, CountryOutlines outlines) =>
    [
        plots.Where(plot => producerCountry is not null && plot.CountryCode != producerCountry)
            .Select(plot => new PlotDoubt([plot], $"{plot.Name} is said to lie in {plot.CountryCode}, its producer in {producerCountry}.")),
        plots.Select(plot => outlines.Doubt(plot) is { } said ? new PlotDoubt([plot], said) : null).OfType<PlotDoubt>(),
        plots.Where(plot => plot.Hectares > LargestFarm)
            .Select(plot => new PlotDoubt([plot], string.Create(CultureInfo.InvariantCulture, $"{plot.Name} has {plot.Hectares:#,0.##} ha, more than {LargestFarm:#,0}: check its corners, and whether it crosses the 180th meridian, where it has to be cut in two."))),
        Rounded(plots),
        Together(plots),
    ];

    /// <summary>Places that were written with fewer decimals than the rules ask for.</summary>
    private static IEnumerable<PlotDoubt> Rounded(IReadOnlyList<Plot> plots)
    {
        foreach (var plot in plots.Where(plot => plot.Written is { IsEnough: false, MayBeZerosLeftOut: false }))
        {
            yield return new PlotDoubt([plot], $"{plot.Name} has a coordinate of {plot.Written!.Value.Said}. The rules ask for six decimals: check that the source holds no more.");
        }

        var shorter = plots.Where(plot => plot.Written is { MayBeZerosLeftOut: true }).ToList();
        if (shorter.Count > 0)
        {
            var least = shorter.MinBy(plot => plot.Written!.Value.Fewest)!.Written!.Value;
            yield return new PlotDoubt(shorter, $"{Named(shorter)} {(shorter.Count == 1 ? "has" : "have")} coordinates of fewer than six decimals beside others of six, the shortest of {least.Said}: zeros at their end may have been left out. Check that the source holds no more.");
        }
    }

    private static string Named(List<Plot> plots)
    {
        var names = plots.Take(MostNamed).Select(plot => plot.Name).ToList();
        return (plots.Count, names.Count) switch
        {
            (1, _) => names[0],
            (var all, var some) when all > some => string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", names)} and {all - some:#,0} more"),
            _ => $"{string.Join(", ", names[..^1])} and {names[^1]}",
        };
    }

    /// <summary>Plots that are the same place or overlap. What is the same place as one before it is told of that one alone: of others it shares the same.</summary>
    private static IEnumerable<PlotDoubt> Together(IReadOnlyList<Plot> plots)
    {
        var shapes = plots.Select(plot => plot.Where()).ToList();
        var (near, isCopy) = (new STRtree<int>(), new bool[plots.Count]);
        foreach (var (at, shape) in shapes.Index())
        {
            near.Insert(shape.Geometry.EnvelopeInternal, at);
        }

        for (var one = 0; one < plots.Count; one++)
        {
            var around = isCopy[one] ? [] : near.Query(shapes[one].Geometry.EnvelopeInternal);
            foreach (var other in around.Where(other => other > one && !isCopy[other]).Order())
            {
                if (shapes[one].IsSameAs(shapes[other]))
                {
                    isCopy[other] = true;
                    yield return new PlotDoubt([plots[one], plots[other]], $"{plots[one].Name} and {plots[other].Name} are the same place.", true);
                }
                else if (shapes[one].Overlap(shapes[other]) is > 0.0001m and var hectares)
                {
                    yield return new PlotDoubt([plots[one], plots[other]], string.Create(CultureInfo.InvariantCulture, $"{plots[one].Name} and {plots[other].Name} overlap by {hectares:0.0000} ha."));
                }
            }
        }
    }
}

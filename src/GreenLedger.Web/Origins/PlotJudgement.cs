using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Web.Origins;

/// <summary>What a plot that is being drawn amounts to, before it is kept.</summary>
/// <param name="Said">How far it is, or its area.</param>
/// <param name="Trouble">Why it cannot be taken; null where it can, or where it is still being drawn.</param>
/// <param name="Doubts">What is doubtful about it beside the plots that are there.</param>
public sealed record PlotJudgement(string Said, string? Trouble, IReadOnlyList<string> Doubts)
{
    /// <param name="corners">As <see cref="PlotCorners"/> reads them.</param>
    /// <param name="draw">Makes the plot of a shape, and refuses what is no plot.</param>
    /// <param name="others">The producer's plots.</param>
    public static PlotJudgement Of(string? corners, Func<PlotShape, Plot> draw, IReadOnlyList<Plot> others, string? producerCountry, CountryOutlines outlines)
    {
        ArgumentNullException.ThrowIfNull(draw);
        if (string.IsNullOrWhiteSpace(corners))
        {
            return new PlotJudgement("Nothing drawn yet.", null, []);
        }

        try
        {
            var positions = PlotCorners.Positions(corners);
            if (positions.Count > 1 && positions[0] != positions[^1])
            {
                return new PlotJudgement($"{positions.Count} corners so far. When all are drawn, close the ring: its last line equals the first.", null, []);
            }

            var plot = draw(PlotCorners.Shape(corners));
            var doubts = PlotDoubts.Of([plot, .. others], producerCountry, outlines).Except(PlotDoubts.Of(others, producerCountry, outlines));
            return new PlotJudgement(SizeOf(plot, positions.Count - 1), null, [.. doubts]);
        }
        catch (RuleBrokenException refused)
        {
            return new PlotJudgement("", refused.Message, []);
        }
    }

    private static string SizeOf(Plot plot, int corners) => plot.IsPoint
        ? string.Create(CultureInfo.InvariantCulture, $"A point, which counts as {plot.Hectares:0.####} ha.")
        : string.Create(CultureInfo.InvariantCulture, $"A polygon of {corners} corners: {plot.Hectares:#,0.0000} ha on the ellipsoid.");
}

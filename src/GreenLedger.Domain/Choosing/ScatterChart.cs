using System.Globalization;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Choosing;

/// <summary>The shape that tells a process before its colour does.</summary>
public enum MarkShape
{
    Circle = 0,
    Square = 1,
    Triangle = 2,
    Diamond = 3,
    Cross = 4,
    Star = 5,
    Ring = 6,
}

/// <summary>A process in the chart: its word, its shape and, second, its colour.</summary>
/// <param name="Colour">From the palette of Okabe and Ito, as <c>#RRGGBB</c>.</param>
public sealed record ChartSeries(string Word, MarkShape Shape, string Colour);

/// <summary>One lot in the chart.</summary>
/// <param name="Series">The place of its process among the chart's series.</param>
/// <param name="Cost">Of a kilogram, in the chart's currency: the horizontal place.</param>
/// <param name="Score">In points: the vertical place.</param>
public sealed record ChartPoint(Id<Offer> OfferId, Id<Lot> LotId, string Ref, string Name, int Rank, int Series, double Cost, double Score, double Low, double High, bool IsOnFront, HoldsFor HoldsFor);

/// <summary>
/// The picture of score against landed cost, with the efficient front: the one description that the page and the PDF
/// both draw from.
/// </summary>
public sealed record ScatterChart(
    string Title,
    string CostTitle,
    string ScoreTitle,
    IReadOnlyList<ChartSeries> Series,
    IReadOnlyList<ChartPoint> Points,
    IReadOnlyList<(double Cost, double Score)> Front,
    int LeftOut)
{
    /// <summary>More marks than this cannot be told apart; the best by rank are drawn, and every lot of the front.</summary>
    public const int MostPoints = 400;

    /// <summary>Okabe and Ito (2008), without yellow, which is lost on paper.</summary>
    private static readonly string[] Palette = ["#0072B2", "#D55E00", "#009E73", "#CC79A7", "#E69F00", "#56B4E9", "#000000"];

    public static ScatterChart Of(Shortlist shortlist)
    {
        ArgumentNullException.ThrowIfNull(shortlist);
        var drawn = shortlist.Ranked.Where((entry, place) => place < MostPoints || entry.IsOnFront).ToList();
        var words = drawn.CountBy(entry => Word(entry.Candidate)).OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => pair.Key).ToList();
        var series = words.Take(Palette.Length).Select((word, i) => new ChartSeries(words.Count > Palette.Length && i == Palette.Length - 1 ? "other" : word, (MarkShape)i, Palette[i])).ToList();
        return new ScatterChart(
            "Score against landed cost",
            string.Create(CultureInfo.InvariantCulture, $"Landed cost, {shortlist.Currency}/kg"),
            "Score, points",
            series,
            [.. drawn.Select(entry => Point(entry, Math.Min(words.IndexOf(Word(entry.Candidate)), Palette.Length - 1)))],
            [.. shortlist.Front.Select(entry => ((double)entry.Candidate.CostPerKilogram!.Value, (double)entry.Score!.Value.Score.Points))],
            shortlist.Ranked.Count - drawn.Count);
    }

    private static ChartPoint Point(ShortlistEntry entry, int series)
    {
        var (lot, score) = (entry.Candidate, entry.Score!.Value);
        return new ChartPoint(
            lot.OfferId,
            lot.LotId,
            lot.Ref,
            lot.Name,
            entry.Rank,
            series,
            (double)lot.CostPerKilogram!.Value,
            (double)score.Score.Points,
            (double)score.Low.Points,
            (double)score.High.Points,
            entry.IsOnFront,
            score.HoldsFor);
    }

    private static string Word(Candidate candidate) => candidate.Process ?? "not stated";
}

using System.Globalization;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Choosing;

/// <summary>How a shortlist's figures are written for a person.</summary>
internal static class ChoosingFigures
{
    /// <summary>An amount of the shortlist's currency for one kilogram: <c>8.42 EUR/kg</c>.</summary>
    public static string Cost(decimal perKilogram, Currency currency) => Cost(perKilogram) + " " + currency.Code + "/kg";

    /// <summary>The 95 % interval of a score and for whom it holds: <c>84.12 to 86.30, these cuppers</c>. What the seller states holds for nobody here.</summary>
    public static string Interval(LotScore score) =>
        $"{Display.Figures.Score(score.Low.Points)} to {Display.Figures.Score(score.High.Points)}" + (score.Origin == ScoreOrigin.Cupped ? ", " + score.HoldsFor.Word() : "");

    public static string Cost(decimal perKilogram) => perKilogram.ToString("#,##0.00", CultureInfo.InvariantCulture);

    public static string CostPerPoint(double? amount) =>
        amount is { } known ? known.ToString("#,##0.0000", CultureInfo.InvariantCulture) : "–";

    /// <summary>A chance from 0 to 1: <c>34.2 %</c>. One too small for its decimal is not written as none.</summary>
    public static string Chance(double chance) => chance is > 0 and < 0.0005 ? "< 0.1 %" : Percent(chance, "0.0");

    /// <summary>A cost against the predicted one: <c>−7.4 %</c>.</summary>
    public static string Difference(double difference) => Percent(difference, "+0.0;−0.0;0.0");

    /// <summary>What a weight comes to when all are divided by their sum.</summary>
    public static string Share(decimal weight, Weights weights) => Percent((double)(weight / weights.Sum), "0");

    /// <summary>All weights above 0: <c>score 60 %, landed cost 40 %</c>.</summary>
    public static string Weighing(Weights weights) => string.Join(
        ", ",
        new[] { ("score", weights.Score), ("landed cost", weights.Cost), ("cost per point", weights.CostPerPoint), ("process", weights.Process) }
            .Where(term => term.Item2 > 0).Select(term => $"{term.Item1} {Share(term.Item2, weights)}"));

    public static string Share(double share) => Percent(share, "0.0");

    public static string RSquared(double explained) => explained.ToString("0.00", CultureInfo.InvariantCulture);

    public static string Weighted(double total) => total.ToString("0.0000", CultureInfo.InvariantCulture);

    /// <summary>For an input: no zeros behind.</summary>
    public static string Plain(decimal? figure) => figure?.ToString("0.############", CultureInfo.InvariantCulture) ?? "";

    /// <summary>The sign that stands beside a process's word; the chart draws the same shape.</summary>
    public static string Sign(this MarkShape shape) => shape switch
    {
        MarkShape.Circle => "●",
        MarkShape.Square => "■",
        MarkShape.Triangle => "▲",
        MarkShape.Diamond => "◆",
        MarkShape.Cross => "✚",
        MarkShape.Star => "★",
        MarkShape.Ring => "○",
        _ => throw new ArgumentOutOfRangeException(nameof(shape)),
    };

    private static string Percent(double share, string format) => (share * 100).ToString(format, CultureInfo.InvariantCulture) + "\u00a0%"; // does not break before the sign
}

using System.Globalization;
using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Stock;

/// <summary>A panel's score of what was drawn in the warehouse, on a day.</summary>
/// <param name="Points">On one form for all.</param>
public sealed record AgedScore(Id<Offers.Lot> LotId, DateOnly On, double Points);

/// <summary>
/// How scores of the same lots change with time in this house: one slope for all lots, each lot with a level of its own, by
/// least squares (analysis of covariance with parallel lines; common practice, no source). A lot cupped once says nothing about it.
/// </summary>
/// <param name="PerMonth">Points a month; below zero where coffee loses.</param>
/// <param name="Error">Standard error of the slope.</param>
/// <param name="Freedom">Scores less lots less one.</param>
public sealed record AgeTrend(double PerMonth, double Error, int Freedom, int Lots, int Scores)
{
    /// <summary>Days in a month, on average (Gregorian calendar: 365.2425 ÷ 12).</summary>
    public const double DaysOfMonth = 365.2425 / 12;

    /// <summary>Half the width of the 95 % interval.</summary>
    public double Reach => StudentT.InvCDF(0, 1, Freedom, 0.975) * Error;

    public double Lower => PerMonth - Reach;

    public double Upper => PerMonth + Reach;

    /// <summary>Whether the interval leaves zero out.</summary>
    public bool IsTold => Lower > 0 || Upper < 0;

    /// <summary>Null where no lot was cupped on two days, or too few scores are left to tell the error.</summary>
    public static AgeTrend? Of(IEnumerable<AgedScore> scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var lots = scores.GroupBy(score => score.LotId).Select(lot => lot.ToList()).Where(lot => lot.Select(score => score.On).Distinct().Count() > 1).ToList();
        var points = lots.SelectMany(Centred).ToList();
        var freedom = points.Count - lots.Count - 1;
        if (freedom < 1)
        {
            return null;
        }

        var across = points.Sum(point => point.Months * point.Months);
        var slope = points.Sum(point => point.Months * point.Points) / across;
        var left = points.Sum(point => (point.Points - slope * point.Months) * (point.Points - slope * point.Months));
        return new AgeTrend(slope, Math.Sqrt(left / freedom / across), freedom, lots.Count, points.Count);
    }

    /// <summary>For a person: how much, how sure, on what.</summary>
    public string Words()
    {
        var on = string.Create(CultureInfo.InvariantCulture, $"{Scores:#,0} scores of {Lots:#,0} {(Lots == 1 ? "lot" : "lots")}");
        return IsTold
            ? string.Create(CultureInfo.InvariantCulture, $"Scores {(PerMonth < 0 ? "fall" : "rise")} by {Math.Abs(PerMonth):0.00} points a month (95 % interval {Lower:+0.00;−0.00;0.00} to {Upper:+0.00;−0.00;0.00}), by {on}.")
            : string.Create(CultureInfo.InvariantCulture, $"No change with age can be told yet: {PerMonth:+0.00;−0.00;0.00} points a month (95 % interval {Lower:+0.00;−0.00;0.00} to {Upper:+0.00;−0.00;0.00}), by {on}.");
    }

    private static IEnumerable<(double Months, double Points)> Centred(List<AgedScore> lot)
    {
        var (day, level) = (lot.Average(score => (double)score.On.DayNumber), lot.Average(score => score.Points));
        return lot.Select(score => ((score.On.DayNumber - day) / DaysOfMonth, score.Points - level));
    }
}

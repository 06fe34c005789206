using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// The ranked lots whose chances are drawn. Drawing all of a hundred thousand would tell nothing more: for any
/// threshold, a lot is among the first three only if it passes the threshold itself or if the third of the leaders falls
/// below it. The threshold is the lowest third place in <see cref="TrialDraws"/> draws of the leaders alone, so the
/// leaders fall below it about once in so many draws; the chance of each other lot to pass it follows from its own
/// score and error, without drawing. The lots left out have together a chance of about <see cref="LeftOutChance"/>.
/// </summary>
public sealed class Contenders
{
    /// <summary>Lots are left out as long as their chances add up to no more than this.</summary>
    public const double Neglected = 0.001;

    /// <summary>At most so many lots are drawn; <see cref="LeftOutChance"/> then says what the rest may add up to.</summary>
    public const int Most = 500;

    /// <summary>The leaders, first by rank. A list no longer than this is drawn whole.</summary>
    public const int Leaders = 60;

    /// <summary>At least so many are drawn, however unlikely the last of them.</summary>
    public const int Fewest = 10;

    public const int TrialDraws = 1000;

    private Contenders(IReadOnlyList<ShortlistEntry> entries, int leftOut, double leftOutChance)
    {
        Entries = entries;
        LeftOut = leftOut;
        LeftOutChance = leftOutChance;
    }

    /// <summary>In order of rank.</summary>
    public IReadOnlyList<ShortlistEntry> Entries { get; }

    public int LeftOut { get; }

    /// <summary>What the chances of all lots left out, to be among the first three, add up to at most; 0 when none is.</summary>
    public double LeftOutChance { get; }

    internal static Contenders All(IReadOnlyList<ShortlistEntry> ranked) => new(ranked, 0, 0);

    /// <param name="threshold">The weighted score that the third of the leaders hardly ever falls below.</param>
    internal static Contenders Above(
        double threshold, IReadOnlyList<ShortlistEntry> ranked, WeightedScore weighted, (double Score, double Cost) reference)
    {
        var tails = new Tails(weighted, reference);
        var chances = new double[ranked.Count];
        var places = new int[ranked.Count];
        for (var i = 0; i < chances.Length; i++)
        {
            chances[i] = tails.ChanceToPass(ranked[i], threshold);
            places[i] = i;
        }

        Array.Sort(chances, places);
        var (cut, sum) = (0, 0.0);
        while (cut < places.Length - Fewest && (sum + chances[cut] <= Neglected || places.Length - cut > Most))
        {
            sum += chances[cut++];
        }

        var kept = places[cut..];
        Array.Sort(kept);
        return new Contenders([.. kept.Select(place => ranked[place])], cut, cut == 0 ? 0 : Math.Min(1, sum + 1.0 / TrialDraws));
    }

    /// <summary>
    /// Chances of one lot's weighted score, which never falls when its score rises. Where steps up are counted, the
    /// reference's own doubt is left aside: it moves all lots but one the same way.
    /// </summary>
    private sealed class Tails(WeightedScore weighted, (double Score, double Cost) reference)
    {
        private const int Halvings = 40;

        public double ChanceToPass(ShortlistEntry entry, double threshold)
        {
            var score = entry.Score!.Value;
            var points = (double)score.Score.Points;
            var needed = weighted.IsLinear ? Straight(entry, points, threshold) : Halved(entry, threshold);
            if (score.AnyCupperError <= 0 || double.IsInfinity(needed))
            {
                return needed <= points ? 1 : 0;
            }

            var distance = (needed - points) / score.AnyCupperError;
            return score.DegreesOfFreedom is { } freedom
                ? StudentT.CDF(0, 1, freedom, -distance)
                : Normal.CDF(0, 1, -distance);
        }

        private double Straight(ShortlistEntry entry, double points, double threshold)
        {
            var missing = threshold - entry.Terms.Total;
            return weighted.PerPoint > 0 ? points + missing / weighted.PerPoint
                : missing <= 0 ? double.NegativeInfinity
                : double.PositiveInfinity;
        }

        private double Halved(ShortlistEntry entry, double threshold)
        {
            var (low, high) = (-1000.0, 1000.0);
            if (Total(entry, high) < threshold)
            {
                return double.PositiveInfinity;
            }

            for (var i = 0; i < Halvings; i++)
            {
                var middle = (low + high) / 2;
                (low, high) = Total(entry, middle) >= threshold ? (low, middle) : (middle, high);
            }

            return low;
        }

        private double Total(ShortlistEntry entry, double points) =>
            weighted.Of(points, (double)entry.Candidate.CostPerKilogram!.Value, weighted.Preference(entry.Candidate), reference).Total;
    }
}

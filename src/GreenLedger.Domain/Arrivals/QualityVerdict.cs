using System.Diagnostics.CodeAnalysis;
using GreenLedger.Domain.Measures;
using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Arrivals;

/// <summary>What an arrival is beside what was agreed.</summary>
public enum ArrivalOutcome
{
    /// <summary>It is what was approved, within the tolerance.</summary>
    Matches = 0,

    /// <summary>It falls short of what was approved by more than the tolerance.</summary>
    [SuppressMessage("Naming", "CA1720", Justification = "The trade's word.")]
    Short = 1,

    /// <summary>The evidence shows neither.</summary>
    Undecided = 2,
}

/// <summary>
/// The arrival's cup against the approved sample's. <em>Matches</em> and <em>short</em> each need 95 % confidence, one-sided:
/// neither side bears the other's doubt, and what shows neither is undecided.
/// </summary>
/// <param name="Difference">What the panels found.</param>
/// <param name="Tolerance">How far below the approved sample the arrival may cup, in points.</param>
/// <param name="Lower">One-sided 95 % lower bound of arrival less approved; null where the error is not known.</param>
/// <param name="Upper">One-sided 95 % upper bound.</param>
/// <param name="MatchesP">One-sided p of the test that the arrival lies above −tolerance: at most 0.05 where it matches.</param>
/// <param name="ShortP">One-sided p of the test that it lies below −tolerance: at most 0.05 where it is short.</param>
public sealed record QualityVerdict(
    CupDifference Difference, Score Tolerance, double? Lower, double? Upper, double? MatchesP, double? ShortP)
{
    /// <summary>More cuppers than this are no panel.</summary>
    public const int LargestPanel = 60;

    private const double Confidence = 0.95;
    private const double Likely = 0.80;

    public ArrivalOutcome Outcome =>
        Lower > -(double)Tolerance.Points ? ArrivalOutcome.Matches
        : Upper < -(double)Tolerance.Points ? ArrivalOutcome.Short
        : ArrivalOutcome.Undecided;

    /// <summary>
    /// How many cuppers tasting both in a fresh session would decide, four times in five, if the difference stays as it was found:
    /// the least n with (t₀.₉₅ + t₀.₈₀) × deviation ÷ √n within the distance to the tolerance. Null where it is decided, where no
    /// error is known to plan with, or where more than <see cref="LargestPanel"/> would be needed.
    /// </summary>
    public int? CuppersNeeded
    {
        get
        {
            var distance = Math.Abs(Difference.Points + (double)Tolerance.Points);
            return Outcome == ArrivalOutcome.Undecided && Difference.PairDeviation is { } deviation
                ? Enumerable.Range(2, LargestPanel - 1).Cast<int?>().FirstOrDefault(cuppers => Reach(cuppers!.Value) * deviation / Math.Sqrt(cuppers.Value) <= distance)
                : null;

            static double Reach(int cuppers) => Quantile(Confidence, cuppers - 1) + Quantile(Likely, cuppers - 1);
        }
    }

    /// <summary>Sheets of that session: each cupper writes one for each coffee.</summary>
    public int? SheetsNeeded => 2 * CuppersNeeded;

    /// <summary>The verdict in sentences, the finding first.</summary>
    public IReadOnlyList<string> Sentences => QualityWords.Of(this);

    /// <exception cref="RuleBrokenException">The tolerance is negative or beyond 10 points.</exception>
    public static QualityVerdict Of(CupDifference difference, Score tolerance)
    {
        ArgumentNullException.ThrowIfNull(difference);
        Rule.Require(tolerance.Points is >= 0m and <= 10m, "The tolerance lies between 0 and 10 points.", nameof(Tolerance));
        if (difference is not { StandardError: { } error, DegreesOfFreedom: { } freedom })
        {
            return new QualityVerdict(difference, tolerance, null, null, null, null);
        }

        var reach = Quantile(Confidence, freedom) * error;
        var below = StudentT.CDF(0, 1, freedom, (difference.Points + (double)tolerance.Points) / error);
        return new QualityVerdict(difference, tolerance, difference.Points - reach, difference.Points + reach, 1 - below, below);
    }

    private static double Quantile(double share, double freedom) => StudentT.InvCDF(0, 1, freedom, share);
}

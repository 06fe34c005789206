using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Arrivals;

/// <summary>
/// The scores of one session. Samples and cuppers are counted from 0 as in <see cref="SessionScores"/>; a cupper's repeats of one
/// coffee are averaged first, since they are one opinion.
/// </summary>
/// <param name="Scores">All sheets of the session: those of other coffees help to know its error.</param>
/// <param name="Coffee">The sample in question.</param>
/// <param name="Reference">The house reference, where it was cupped.</param>
public sealed record SessionPanel(IReadOnlyList<PanelScore> Scores, int Coffee, int? Reference = null);

/// <summary>Works out how far an arrival cupped from the approved sample: in one session, or in two.</summary>
public static class CupComparison
{
    /// <summary>
    /// The points between neighbouring marks of the common forms. Rounding to it leaves a variance of step² ÷ 12 in each sheet
    /// (Sheppard 1898, from memory), below which no error is taken, so that cuppers who happen to agree do not look exact.
    /// </summary>
    public const double Step = 0.25;

    private const double LeastVariance = Step * Step / 12;

    /// <summary>
    /// Both coffees blind in one session, compared by the additive fit of all its sheets. With these two coffees alone that is
    /// the paired t test of the cuppers who tasted both (handbook quality.md section 4.8).
    /// </summary>
    /// <exception cref="RuleBrokenException">One of the two has no sheet.</exception>
    public static CupDifference OneSession(IReadOnlyList<PanelScore> scores, int approved, int arrival)
    {
        var gap = Gap.Within(scores, approved, arrival);
        return new CupDifference(
            Meeting.OneSession, gap.From.Mean, gap.To.Mean, gap.Points, gap.Error, gap.Error is null ? null : gap.DegreesOfFreedom, gap.PairDeviation,
            gap.From.Cuppers, gap.To.Cuppers, null, gap.Unknown);
    }

    /// <summary>
    /// Two sessions. Where the house reference was cupped in both, each coffee is compared with it in its own session and the two
    /// differences with each other, so that whatever moved a whole session drops out and the error of finding that out stays in. Else
    /// Welch's test of the cuppers' scores, with the variance between sessions that the house states added.
    /// </summary>
    /// <param name="betweenSessions">
    /// One standard deviation, in points, of the difference between one coffee's levels in two sessions; null where the house does
    /// not know it.
    /// </param>
    /// <exception cref="RuleBrokenException">One of the two has no sheet.</exception>
    public static CupDifference TwoSessions(SessionPanel approved, SessionPanel arrival, double? betweenSessions)
    {
        ArgumentNullException.ThrowIfNull(approved);
        ArgumentNullException.ThrowIfNull(arrival);
        return ByReference(approved, arrival) ?? BySetting(approved, arrival, betweenSessions);
    }

    /// <summary>Null where the reference was not cupped in both, or one of them is too small to show its error.</summary>
    private static CupDifference? ByReference(SessionPanel approved, SessionPanel arrival)
    {
        if (approved.Reference is not { } first || arrival.Reference is not { } second)
        {
            return null;
        }

        var before = Gap.Within(approved.Scores, first, approved.Coffee);
        var after = Gap.Within(arrival.Scores, second, arrival.Coffee);
        if (before.Error is not { } one || after.Error is not { } other)
        {
            return null;
        }

        var (error, freedom) = Welch((one * one, before.DegreesOfFreedom), (other * other, after.DegreesOfFreedom), 0);
        return new CupDifference(
            Meeting.HeldByReference, before.To.Mean, after.To.Mean, after.Points - before.Points, error, freedom,
            Math.Sqrt((before.PairVariance * before.DegreesOfFreedom + after.PairVariance * after.DegreesOfFreedom) / (before.DegreesOfFreedom + after.DegreesOfFreedom)),
            before.To.Cuppers, after.To.Cuppers, after.To.Mean - before.To.Mean - (after.Points - before.Points), null);
    }

    private static CupDifference BySetting(SessionPanel approved, SessionPanel arrival, double? betweenSessions)
    {
        var before = Opinions.Of(approved.Scores, approved.Coffee);
        var after = Opinions.Of(arrival.Scores, arrival.Coffee);
        var known = before.Cuppers > 1 && after.Cuppers > 1;
        var pair = known ? Math.Sqrt(before.Variance + after.Variance) : (double?)null;
        var found = new CupDifference(
            betweenSessions is null ? Meeting.NotHeld : Meeting.HeldBySetting, before.Mean, after.Mean, after.Mean - before.Mean, null, null, pair,
            before.Cuppers, after.Cuppers, betweenSessions, null);
        if (!known)
        {
            return found with { Unknown = "One cupper's score of a coffee does not show how far another's would lie: it needs two cuppers in each session, or both coffees in one." };
        }

        if (betweenSessions is not { } between)
        {
            return found with { Unknown = "The two were cupped in different sessions without the house reference in both, and the house has not stated how far its sessions stand apart: a change of the coffee cannot be told from a change of the session." };
        }

        var (error, freedom) = Welch((before.Variance / before.Cuppers, before.Cuppers - 1), (after.Variance / after.Cuppers, after.Cuppers - 1), between * between);
        return found with { StandardError = error, DegreesOfFreedom = freedom };
    }

    /// <summary>Error and Satterthwaite's degrees of freedom of a difference of two means; the stated variance counts as known.</summary>
    private static (double Error, double DegreesOfFreedom) Welch((double Variance, int Freedom) one, (double Variance, int Freedom) other, double stated)
    {
        var sum = one.Variance + other.Variance + stated;
        return (Math.Sqrt(sum), sum * sum / (one.Variance * one.Variance / one.Freedom + other.Variance * other.Variance / other.Freedom));
    }

    /// <summary>One coffee's scores, one for each cupper.</summary>
    private readonly record struct Opinions(int Cuppers, double Mean, double Variance)
    {
        public static Opinions Of(IReadOnlyList<PanelScore> scores, int coffee)
        {
            ArgumentNullException.ThrowIfNull(scores);
            var own = scores.Where(score => score.Sample == coffee).GroupBy(score => score.Cupper).Select(sheets => sheets.Average(sheet => sheet.Points)).ToList();
            Rule.Require(own.Count > 0, "Each of the two coffees needs at least one sheet.", "Sheets");
            var mean = own.Average();
            var squares = own.Sum(points => (points - mean) * (points - mean));
            return new Opinions(own.Count, mean, own.Count == 1 ? double.NaN : Math.Max(LeastVariance, squares / (own.Count - 1)));
        }
    }

    /// <summary>Two coffees of one session.</summary>
    private sealed record Gap(Opinions From, Opinions To, double Points, double? Error, int DegreesOfFreedom, double PairVariance, string? Unknown)
    {
        public double? PairDeviation => Error is null ? null : Math.Sqrt(PairVariance);

        public static Gap Within(IReadOnlyList<PanelScore> scores, int from, int to)
        {
            var (first, second) = (Opinions.Of(scores, from), Opinions.Of(scores, to));
            var opinions = scores.GroupBy(score => (score.Sample, score.Cupper))
                .Select(sheets => new PanelScore(sheets.Key.Sample, sheets.Key.Cupper, sheets.Average(sheet => sheet.Points))).ToList();
            var fit = AdditiveFit.Of(opinions, opinions.Max(score => score.Sample) + 1, opinions.Max(score => score.Cupper) + 1);
            if (fit.PartOf(from) != fit.PartOf(to))
            {
                return new Gap(first, second, second.Mean - first.Mean, null, 0, 0, "No cupper tasted both coffees, nor does any chain of cuppers connect them.");
            }

            var points = fit.Adjusted[to] - fit.Adjusted[from];
            if (fit.DegreesOfFreedom == 0)
            {
                return new Gap(first, second, points, null, 0, 0, "One cupper's difference does not show how far another's would lie: it needs two cuppers who taste both.");
            }

            var variance = Math.Max(LeastVariance, fit.ResidualSumOfSquares / fit.DegreesOfFreedom);
            return new Gap(first, second, points, Math.Sqrt(variance * fit.UnitDifferenceVariance(from, to)), fit.DegreesOfFreedom, 2 * variance, null);
        }
    }
}

using System.Globalization;

namespace GreenLedger.Domain.Arrivals;

/// <summary>Says a verdict on the cup in sentences that both sides can check: what was found, how sure it is, and how it was found.</summary>
internal static class QualityWords
{
    public static IReadOnlyList<string> Of(QualityVerdict verdict) =>
        verdict.Outcome == ArrivalOutcome.Undecided
            ? [Finding(verdict), .. Sureness(verdict), How(verdict.Difference), "An undecided arrival counts neither as approved nor as short.", Next(verdict)]
            : [Finding(verdict), .. Sureness(verdict), How(verdict.Difference)];

    private static string Finding(QualityVerdict verdict)
    {
        var found = $"it cupped {Apart(verdict.Difference.Points)} the approved sample";
        return verdict.Outcome switch
        {
            ArrivalOutcome.Matches => $"The arrival matches: {found}.",
            ArrivalOutcome.Short => $"The arrival is short: {found}.",
            _ => $"Undecided: {found}.",
        };
    }

    private static IEnumerable<string> Sureness(QualityVerdict verdict)
    {
        var tolerance = Points((double)verdict.Tolerance.Points);
        return verdict switch
        {
            { Difference.Unknown: { } reason } => [reason],
            { Outcome: ArrivalOutcome.Matches, Lower: < 0 } => [$"With 95 % confidence it lies less than {Points(-verdict.Lower.Value)} below, within the tolerance of {tolerance}."],
            { Outcome: ArrivalOutcome.Matches } => ["With 95 % confidence it lies no lower than the approved sample."],
            { Outcome: ArrivalOutcome.Short } => [$"With 95 % confidence it lies more than {Points(-verdict.Upper!.Value)} below, beyond the tolerance of {tolerance}."],
            _ => [$"It may lie anywhere from {Apart(verdict.Lower!.Value)} to {Apart(verdict.Upper!.Value)} it, and the tolerance of {tolerance} lies in between."],
        };
    }

    private static string How(CupDifference difference)
    {
        var (before, after) = (Score(difference.Approved), Score(difference.Arrival));
        return difference.Meeting switch
        {
            Meeting.OneSession => $"Both were cupped blind in one session: {before} the approved sample, {after} the arrival, {Cuppers(difference)}.",
            Meeting.HeldByReference => $"They were cupped in two sessions: {before} the approved sample, {after} the arrival, {Cuppers(difference)}. The house reference, cupped in both, puts the second session {Apart(difference.Shift!.Value)} the first; that is taken off.",
            Meeting.HeldBySetting => $"They were cupped in two sessions: {before} the approved sample, {after} the arrival, {Cuppers(difference)}. That sessions differ by {Points(difference.Shift!.Value)} (one standard deviation, as the house states it) is counted in.",
            Meeting.PastResults => $"Past results that were taken in are compared: {before} the approved sample, {after} the arrival.",
            _ => $"They were cupped in two sessions: {before} the approved sample, {after} the arrival, {Cuppers(difference)}.",
        };
    }

    private static string Next(QualityVerdict verdict) => verdict switch
    {
        { CuppersNeeded: { } cuppers } => $"If the difference stays as it was found, a fresh blind session in which {cuppers} cuppers taste both, {verdict.SheetsNeeded} sheets, would likely decide it (four times in five). Agree on that session beforehand and let it decide alone.",
        { Difference.PairDeviation: null } => "Cup both blind in one session, with at least three cuppers who taste both.",
        _ => $"It lies so near the tolerance that not even {QualityVerdict.LargestPanel} cuppers would likely decide it: settle it in talk.",
    };

    private static string Cuppers(CupDifference difference) => difference.ApprovedCuppers == difference.ArrivalCuppers
        ? $"{Count(difference.ApprovedCuppers)} each"
        : $"{Count(difference.ApprovedCuppers)} and {difference.ArrivalCuppers}";

    private static string Count(int cuppers) => cuppers == 1 ? "1 cupper" : $"{cuppers} cuppers";

    private static string Apart(double points) => Math.Round(points, 2, MidpointRounding.AwayFromZero) switch
    {
        0 => "level with",
        > 0 => $"{Points(points)} above",
        _ => $"{Points(-points)} below",
    };

    private static string Points(double points) => Score(points) + " points";

    private static string Score(double points) => points.ToString("0.00", CultureInfo.InvariantCulture);
}

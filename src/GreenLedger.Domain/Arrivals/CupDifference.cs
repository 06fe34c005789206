namespace GreenLedger.Domain.Arrivals;

/// <summary>How the approved sample and the arrival met.</summary>
public enum Meeting
{
    /// <summary>Both blind in one session: the same people, water and day.</summary>
    OneSession = 0,

    /// <summary>In two sessions; the house reference, cupped in both, shows how far the two stood apart.</summary>
    HeldByReference = 1,

    /// <summary>In two sessions; how far sessions stand apart is the house's setting.</summary>
    HeldBySetting = 2,

    /// <summary>In two sessions, and nothing says how far those stand apart.</summary>
    NotHeld = 3,

    /// <summary>At least one of the two scores is a past result that was taken in: a figure without the sheets that would show how sure it is.</summary>
    PastResults = 4,
}

/// <summary>
/// How far the arrival cupped from the approved sample, in points, with the error of that difference. Positive where the
/// arrival is better.
/// </summary>
/// <param name="Meeting">How the two coffees met.</param>
/// <param name="Approved">The approved sample's mean score over the cuppers who count.</param>
/// <param name="Arrival">The arrival's.</param>
/// <param name="Points">Arrival less approved: in two sessions with a reference, after taking off how far those stood apart.</param>
/// <param name="StandardError">One standard error of the difference; null where it cannot be known, and <paramref name="Unknown"/> says why.</param>
/// <param name="DegreesOfFreedom">Of the error: whole in one session, by Welch and Satterthwaite in two.</param>
/// <param name="PairDeviation">One standard deviation of a single cupper's difference between the two coffees.</param>
/// <param name="ApprovedCuppers">Cuppers of the approved sample.</param>
/// <param name="ArrivalCuppers">Cuppers of the arrival.</param>
/// <param name="Shift">How far the second session stood above the first, by the reference or, one standard deviation, by the house's setting.</param>
/// <param name="Unknown">Why the error is not known, in a sentence.</param>
public sealed record CupDifference(
    Meeting Meeting,
    double Approved,
    double Arrival,
    double Points,
    double? StandardError,
    double? DegreesOfFreedom,
    double? PairDeviation,
    int ApprovedCuppers,
    int ArrivalCuppers,
    double? Shift,
    string? Unknown);

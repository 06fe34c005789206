using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>How the house judges arrivals where a contract says nothing else. One row; both figures are habits, without a published rule.</summary>
public sealed class ArrivalHabits
{
    public Id<ArrivalHabits> Id { get; private set; } = Id<ArrivalHabits>.New();

    public int Version { get; private set; }

    /// <summary>How far below the approved sample an arrival may cup, in points (common practice, handbook quality.md section 3).</summary>
    public Score Tolerance { get; private set; } = Score.Of(1m);

    /// <summary>
    /// One standard deviation of the difference between one coffee's levels in two sessions, in points; null while the house
    /// does not know it. It stands in where no house reference was cupped in both sessions.
    /// </summary>
    public Score? BetweenSessions { get; private set; }

    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Judge(Score tolerance, Score? betweenSessions)
    {
        Rule.Require(tolerance.Points is >= 0m and <= 10m, "The tolerance lies between 0 and 10 points.", nameof(Tolerance));
        Rule.Require(betweenSessions is null or { Points: >= 0m and <= 10m }, "What lies between sessions is 0 to 10 points; leave it empty if you do not know it.", nameof(BetweenSessions));
        (Tolerance, BetweenSessions) = (tolerance, betweenSessions);
    }
}

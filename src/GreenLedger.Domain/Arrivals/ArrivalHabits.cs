using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>How the house judges arrivals where a contract says nothing else. One row; its figures are habits where no source stands beside them.</summary>
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

    /// <summary>By mass; the export target of ICO Resolution 420 (handbook, quality.md 2.4) until the house states its own.</summary>
    public Percent LowestMoisture { get; private set; } = Percent.Of(8m);

    /// <summary>By mass, from the same source.</summary>
    public Percent HighestMoisture { get; private set; } = Percent.Of(12.5m);

    /// <summary>Null where the house asks for none; below 0.70 for washed specialty coffee (handbook, quality.md 2.1).</summary>
    public WaterActivity? WaterActivityBelow { get; private set; } = WaterActivity.Of(0.70m);

    /// <summary>Of the screen that the grade states, by mass; null where the house asks for none.</summary>
    public Percent? LeastOnStatedScreen { get; private set; }

    /// <summary>States the limits that are looked at where a contract names none.</summary>
    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Limit(Percent lowestMoisture, Percent highestMoisture, WaterActivity? waterActivityBelow, Percent? leastOnStatedScreen)
    {
        Rule.Require(lowestMoisture.Points is >= 0m and <= 30m, "Moisture lies between 0 and 30 %.", nameof(LowestMoisture));
        Rule.Require(highestMoisture.Points is > 0m and <= 30m && highestMoisture > lowestMoisture, "The highest moisture lies above the lowest and at most at 30 %.", nameof(HighestMoisture));
        Rule.Require(leastOnStatedScreen is null or { Points: > 0m and <= 100m }, "The share lies above 0 and at most at 100 %.", nameof(LeastOnStatedScreen));
        (LowestMoisture, HighestMoisture, WaterActivityBelow, LeastOnStatedScreen) = (lowestMoisture, highestMoisture, waterActivityBelow, leastOnStatedScreen);
    }

    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Judge(Score tolerance, Score? betweenSessions)
    {
        Rule.Require(tolerance.Points is >= 0m and <= 10m, "The tolerance lies between 0 and 10 points.", nameof(Tolerance));
        Rule.Require(betweenSessions is null or { Points: >= 0m and <= 10m }, "What lies between sessions is 0 to 10 points; leave it empty if you do not know it.", nameof(BetweenSessions));
        (Tolerance, BetweenSessions) = (tolerance, betweenSessions);
    }
}

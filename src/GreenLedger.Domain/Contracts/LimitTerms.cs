using System.Globalization;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>Figures that the coffee is to keep, as agreed. What is null was not agreed, and the house's own figure is looked at instead.</summary>
/// <param name="CupTolerance">How far below the approved sample the arrival may cup, in points.</param>
/// <param name="LowestMoisture">By mass.</param>
/// <param name="HighestMoisture">By mass.</param>
/// <param name="WaterActivityBelow">The arrival lies below it.</param>
/// <param name="Category1">Full defects at most, in the sample that the scheme names.</param>
/// <param name="Category2">Full defects at most.</param>
/// <param name="Screen">The screen, in 64ths of an inch, on and above which the least share lies.</param>
/// <param name="LeastOnScreen">By mass.</param>
/// <param name="CountedBy">The code of the defect table that the full defects are counted by; null where the contract names none.</param>
/// <param name="OwnTable">What that table was called when this was agreed, where it is one of the house; null for a published one.</param>
public sealed record LimitTerms(
    Score? CupTolerance = null,
    Percent? LowestMoisture = null,
    Percent? HighestMoisture = null,
    WaterActivity? WaterActivityBelow = null,
    decimal? Category1 = null,
    decimal? Category2 = null,
    int? Screen = null,
    Percent? LeastOnScreen = null,
    string? CountedBy = null,
    string? OwnTable = null)
{
    private string? Table => OwnTable ?? DefectScheme.PublishedOf(CountedBy)?.Name;

    public bool IsEmpty() => this == new LimitTerms();

    /// <summary>With the name of the defect table as these standards have it, where it is one of the house.</summary>
    public LimitTerms Naming(GradingStandards standards)
    {
        ArgumentNullException.ThrowIfNull(standards);
        return this with { OwnTable = standards.OwnNameOf(CountedBy) };
    }

    /// <summary>In words, one for each figure that is agreed.</summary>
    public IEnumerable<string> Words()
    {
        if (CupTolerance is { } tolerance)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"the arrival cups at most {tolerance.Points:0.00} points below the approved sample");
        }

        if (LowestMoisture is not null || HighestMoisture is not null)
        {
            yield return "moisture " + (LowestMoisture, HighestMoisture) switch
            {
                ({ } low, { } high) => $"{low} to {high}",
                ({ } low, null) => $"at least {low}",
                (_, var high) => $"at most {high}",
            };
        }

        if (WaterActivityBelow is { } activity)
        {
            yield return $"water activity below {activity}";
        }

        foreach (var (count, category) in new[] { (Category1, 1), (Category2, 2) })
        {
            if (count is { } most)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"at most {most:0.##} full defects of category {category}{(Table is { } table ? $" by {table}" : "")}");
            }
        }

        if (LeastOnScreen is { } share)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"at least {share} on screen {Screen} and above");
        }
    }

    /// <exception cref="RuleBrokenException">A figure cannot be.</exception>
    internal LimitTerms Checked()
    {
        Rule.Require(CupTolerance is null or { Points: >= 0m and <= 10m }, "The tolerance of the cup lies between 0 and 10 points.", nameof(CupTolerance));
        Rule.Require(LowestMoisture is null or { Points: >= 0m and <= 30m }, "Moisture lies between 0 and 30 %.", nameof(LowestMoisture));
        Rule.Require(HighestMoisture is null or { Points: > 0m and <= 30m }, "Moisture lies between 0 and 30 %.", nameof(HighestMoisture));
        Rule.Require(LowestMoisture is not { } low || HighestMoisture is not { } high || low < high, "The lowest moisture lies below the highest.", nameof(HighestMoisture));
        Rule.Require(Category1 is null or (>= 0m and <= 1000m), "Full defects lie between 0 and 1,000.", nameof(Category1));
        Rule.Require(Category2 is null or (>= 0m and <= 1000m), "Full defects lie between 0 and 1,000.", nameof(Category2));
        Rule.Require(CountedBy is null || OwnTable is not null || DefectScheme.PublishedOf(CountedBy)?.Code == CountedBy, $"There is no defect table '{CountedBy}' here.", nameof(CountedBy));
        Rule.Require(CountedBy is null || Category1 is not null || Category2 is not null, "Say how many full defects are agreed, or leave the table out.", nameof(CountedBy));
        Rule.Require(Screen is null == LeastOnScreen is null, "Name the screen with the share that lies on it, or leave both out.", Screen is null ? nameof(Screen) : nameof(LeastOnScreen));
        Rule.Require(Screen is null or (>= 8 and <= 20), "Screens run from 8 to 20.", nameof(Screen));
        Rule.Require(LeastOnScreen is null or { Points: > 0m and <= 100m }, "The share lies above 0 and at most at 100 %.", nameof(LeastOnScreen));
        return this;
    }
}

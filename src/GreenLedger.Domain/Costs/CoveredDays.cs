namespace GreenLedger.Domain.Costs;

/// <summary>The days for which storage is billed, the first and the last included.</summary>
public sealed record CoveredDays(DateOnly From, DateOnly Until)
{
    private const int MostYears = 10;

    public int Days => Until.DayNumber - From.DayNumber + 1;

    /// <summary>How many of the days lie before a day.</summary>
    public int Before(DateOnly on) => Math.Clamp(on.DayNumber - From.DayNumber, 0, Days);

    /// <summary>Both days, or none of them; for storage only.</summary>
    /// <exception cref="RuleBrokenException">One of the two is missing, they run backwards or lie far apart.</exception>
    public static CoveredDays? Of(DateOnly? from, DateOnly? until)
    {
        if (from is null && until is null)
        {
            return null;
        }

        Rule.Day(from, nameof(CostPosting.CoversFrom));
        Rule.Day(until, nameof(CostPosting.CoversUntil));
        Rule.Require(from is not null, "Give the first day that the storage is billed for, or leave both days empty.", nameof(CostPosting.CoversFrom));
        Rule.Require(until is not null, "Give the last day that the storage is billed for, or leave both days empty.", nameof(CostPosting.CoversUntil));
        Rule.Require(from <= until, "The last day that is billed lies before the first.", nameof(CostPosting.CoversUntil));
        Rule.Require(until < from.Value.AddYears(MostYears), $"A bill covers less than {MostYears} years: check the days.", nameof(CostPosting.CoversUntil));
        return new CoveredDays(from.Value, until.Value);
    }
}

namespace GreenLedger.Domain.Summaries;

/// <summary>A span of whole days, both ends in it. Make one with <see cref="Of"/>.</summary>
public sealed record Period(DateOnly From, DateOnly Until)
{
    /// <summary>Longer than this is more than anybody compares.</summary>
    public const int MostYears = 10;

    public int Days => Until.DayNumber - From.DayNumber + 1;

    /// <summary>
    /// The period before, of the same length: as many whole months where this one is of whole months, else as many days.
    /// </summary>
    public Period Before => IsOfWholeMonths
        ? new Period(From.AddMonths(-Months), From.AddDays(-1))
        : new Period(From.AddDays(-Days), From.AddDays(-1));

    private bool IsOfWholeMonths => From.Day == 1 && Until.AddDays(1).Day == 1;

    private int Months => (Until.AddDays(1).Year - From.Year) * 12 + Until.AddDays(1).Month - From.Month;

    /// <exception cref="RuleBrokenException">It ends before it begins, or is longer than <see cref="MostYears"/> years.</exception>
    public static Period Of(DateOnly from, DateOnly until)
    {
        Rule.Require(from <= until, "The period ends before it begins: please check both days.", nameof(Until));
        Rule.Require(from.Year is >= 1990 and <= 2099 && until.Year is >= 1990 and <= 2099, "The days of a period lie between 1990 and 2099.", nameof(From));
        Rule.Require(until < from.AddYears(MostYears), $"A period has at most {MostYears} years: please choose a shorter one.", nameof(Until));
        return new Period(from, until);
    }

    /// <summary>From New Year to the last day of a day's year.</summary>
    public static Period YearOf(DateOnly day) => new(new DateOnly(day.Year, 1, 1), new DateOnly(day.Year, 12, 31));

    public bool Holds(DateOnly day) => day >= From && day <= Until;
}

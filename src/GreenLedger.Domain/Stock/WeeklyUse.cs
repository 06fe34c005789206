using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>A weight released to roasting on a day.</summary>
public readonly record struct Released(DateOnly On, Weight Weight);

/// <summary>What was used of a lot or for a purpose in a week, from releases.</summary>
/// <param name="Mean">Of the weeks counted.</param>
/// <param name="Spread">Their standard deviation, by one less than their number; null with fewer than two.</param>
/// <param name="Weeks">How many weeks were counted; 0 where nothing was released.</param>
/// <param name="ByWeek">The weeks counted, the latest first.</param>
public sealed record WeeklyUse(Weight Mean, Weight? Spread, int Weeks, IReadOnlyList<Weight> ByWeek)
{
    public static WeeklyUse None { get; } = new(Weight.Zero, null, 0, []);

    /// <summary>
    /// The mean over whole weeks that end with the last day, and its spread. Weeks without a release count as zero, but none before
    /// the first release of all: a coffee that has served for three weeks is averaged over three.
    /// </summary>
    /// <param name="releases">Standing ones: what was taken back is not among them.</param>
    /// <param name="last">The last day that counts.</param>
    /// <param name="most">Weeks at the most (handbook, trade 9.3: 8 to 12 is common practice).</param>
    public static WeeklyUse Of(IEnumerable<Released> releases, DateOnly last, int most)
    {
        var counted = releases.Where(release => release.On <= last).ToList();
        if (counted.Count == 0 || most < 1)
        {
            return None;
        }

        var weeks = Math.Min(most, Back(counted.Min(release => release.On), last) + 1);
        var used = new Weight[weeks];
        foreach (var release in counted.Where(release => Back(release.On, last) < weeks))
        {
            used[Back(release.On, last)] += release.Weight;
        }

        var mean = used.Average(week => week.Kilograms);
        var spread = weeks < 2 ? (Weight?)null : Weight.FromKilograms((decimal)Math.Sqrt(used.Sum(week => Math.Pow((double)(week.Kilograms - mean), 2)) / (weeks - 1)));
        return new WeeklyUse(Weight.FromKilograms(mean), spread, weeks, used);
    }

    private static int Back(DateOnly day, DateOnly last) => (last.DayNumber - day.DayNumber) / 7;
}

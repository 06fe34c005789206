using GreenLedger.Domain.Arrivals;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class ClaimDeadlineTests
{
    // Handbook, trade, check value 36: discharged on 3 March 2026.
    [Theory]
    [InlineData("Weighing", "2026-03-24")]
    [InlineData("Claim on quality", "2026-03-31")]
    [InlineData("Other claims", "2026-04-17")]
    public void European_deadlines_run_from_discharge(string what, string lastDay)
    {
        var rule = ClaimRule.European.Single(rule => rule.What == what);

        var deadline = ClaimDeadline.Of(rule, new Dictionary<ClaimEvent, DateOnly> { [ClaimEvent.Discharge] = Day("2026-03-03") });

        Assert.Equal(Day(lastDay), deadline.LastDay);
        Assert.True(deadline.IsFirm);
    }

    [Fact]
    public void The_later_of_discharge_and_clearance_starts_the_North_American_time()
    {
        var rule = ClaimRule.NorthAmerican.Single(rule => rule.Events.Count == 2);
        var happened = new Dictionary<ClaimEvent, DateOnly> { [ClaimEvent.Discharge] = Day("2026-03-03") };

        var before = ClaimDeadline.Of(rule, happened);
        var after = ClaimDeadline.Of(rule, new Dictionary<ClaimEvent, DateOnly>(happened) { [ClaimEvent.Clearance] = Day("2026-03-09") });

        // Handbook, trade, check value 37: by 24 March; until clearance is known, 15 days from discharge are safe.
        Assert.Equal((Day("2026-03-18"), false), (before.LastDay, before.IsFirm));
        Assert.Equal((Day("2026-03-24"), true), (after.LastDay, after.IsFirm));
    }

    // The Gregorian calendar: 2028 and 2024 are leap years, 2027 and 2100 are not.
    [Theory]
    [InlineData("2028-02-01", 28, "2028-02-29")]
    [InlineData("2027-02-01", 28, "2027-03-01")]
    [InlineData("2028-01-31", 29, "2028-02-29")]
    [InlineData("2027-12-31", 45, "2028-02-14")]
    [InlineData("2028-02-29", 21, "2028-03-21")]
    [InlineData("2100-02-28", 1, "2100-03-01")]
    [InlineData("2026-04-30", 0, "2026-04-30")]
    public void Calendar_days_run_over_month_ends_and_leap_years(string discharged, int days, string lastDay)
    {
        var rule = new ClaimRule("Claim", [ClaimEvent.Discharge], days);

        var deadline = ClaimDeadline.Of(rule, new Dictionary<ClaimEvent, DateOnly> { [ClaimEvent.Discharge] = Day(discharged) });

        Assert.Equal(Day(lastDay), deadline.LastDay);
    }

    [Fact]
    public void The_last_day_is_in_time_and_the_next_is_not()
    {
        var deadline = ClaimDeadline.Of(ClaimRule.European[0], new Dictionary<ClaimEvent, DateOnly> { [ClaimEvent.Discharge] = Day("2026-03-03") });

        Assert.Equal((0, false), (deadline.DaysLeft(Day("2026-03-24")), deadline.IsPast(Day("2026-03-24"))));
        Assert.Equal((-1, true), (deadline.DaysLeft(Day("2026-03-25")), deadline.IsPast(Day("2026-03-25"))));
    }

    [Fact]
    public void Time_that_has_not_started_never_ends()
    {
        var deadline = ClaimDeadline.Of(ClaimRule.European[0], new Dictionary<ClaimEvent, DateOnly>());

        Assert.Equal((null, null), ((DateOnly?, int?))(deadline.LastDay, deadline.DaysLeft(Day("2026-03-24"))));
        Assert.False(deadline.IsPast(Day("2099-01-01")));
    }

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", null);
}

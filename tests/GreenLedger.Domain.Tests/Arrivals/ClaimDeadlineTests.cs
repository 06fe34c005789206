using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Shipments;

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

    // Handbook, trade 4.1: the North American form has the goods weighed within 15 days of availability; day 0 is the day of the
    // event. Month ends and leap years by the Gregorian calendar: 2028 has a 29 February, 2027 has none.
    [Theory]
    [InlineData("2026-03-09", "2026-03-24")]
    [InlineData("2028-02-14", "2028-02-29")]
    [InlineData("2027-02-14", "2027-03-01")]
    [InlineData("2028-02-29", "2028-03-15")]
    [InlineData("2026-12-31", "2027-01-15")]
    public void Where_the_contract_says_so_the_goods_are_weighed_within_days_of_their_availability(string available, string lastDay)
    {
        var weighing = Deadlines(WeighingStart.Availability, "2026-03-03", available).Single(one => one.Rule.What == ClaimTimes.Weighing);

        Assert.Equal((Day(lastDay), true, "availability of the goods"), (weighing.LastDay, weighing.IsFirm, weighing.Rule.From));
    }

    [Fact]
    public void Until_availability_is_known_days_from_discharge_are_safe_and_nothing_is_late()
    {
        var open = Deadlines(WeighingStart.Availability, "2026-03-03", null).Single(one => one.Rule.What == ClaimTimes.Weighing);
        var time = ClaimTimes.Of(Form(WeighingStart.Availability), Shipped("2026-03-03", null), [ClaimGround.Weight], Day("2026-03-30"), Day("2026-03-30"))[0];

        Assert.Equal((Day("2026-03-18"), false), (open.LastDay, open.IsFirm)); // 15 days from 3 March, worked by hand
        Assert.Equal((null, false, "availability of the goods"), (time.LastDay, time.IsLate(), time.From));
    }

    [Fact]
    public void Availability_moves_no_deadline_of_a_contract_that_counts_from_discharge()
    {
        var deadlines = Deadlines(WeighingStart.Discharge, "2026-03-03", "2026-03-09");

        // Handbook, trade 4.1: quality 15 days from discharge or clearance; here no clearance is asked for.
        Assert.Equal([Day("2026-03-18"), Day("2026-03-18")], deadlines.Take(2).Select(one => one.LastDay));
        Assert.All(deadlines, one => Assert.True(one.IsFirm));
    }

    // Handbook, trade 4.1, both columns.
    [Fact]
    public void The_forms_of_a_new_ledger_name_the_events_of_the_handbook()
    {
        var forms = StandardForms.All();

        Assert.Equal(
            [(21, WeighingStart.Discharge, 28, false, 45), (15, WeighingStart.Availability, 15, true, 365)],
            forms.Select(form => (form.WeighWithinDays!.Value, form.WeighFrom, form.QualityClaimDays!.Value, form.QualityFromClearance, form.OtherClaimDays!.Value)));
    }

    [Fact]
    public void Goods_are_not_there_to_be_weighed_before_they_are_on_board() =>
        Assert.Equal("It cannot have been there to be weighed before it was on board.", Assert.Throws<RuleBrokenException>(() => Shipped("2026-03-03", "2026-02-02")).Message);

    private static IReadOnlyList<ClaimDeadline> Deadlines(WeighingStart from, string discharged, string? available) => ClaimTimes.Deadlines(Form(from), Shipped(discharged, available));

    private static FormTerms Form(WeighingStart from) => new("GCA", "New York", 15, 15, 365, WeighFrom: from);

    private static Shipment Shipped(string discharged, string? available) => new(
        "S26-001", new Passage(null, null, null, "COCTG", "USNYC", null, null, Day("2026-02-03"), Day(discharged), null, available is null ? null : Day(available)));

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", null);
}

using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Tests.Stock;

public sealed class PurposeCoverTests
{
    private static readonly DateOnly Today = new(2026, 11, 26);

    [Fact]
    public void Use_of_a_week_is_averaged_over_the_weeks_since_the_first_release()
    {
        // Worked by hand: weeks of 30, 0 and 60 kg: mean 30, spread √((0² + 30² + 30²)/2) = 30.
        var use = WeeklyUse.Of([new(Today, Kg(20m)), new(Today.AddDays(-6), Kg(10m)), new(Today.AddDays(-14), Kg(60m)), new(Today.AddDays(1), Kg(999m))], Today, 12);

        Assert.Equal(3, use.Weeks);
        Assert.Equal(Kg(30m), use.Mean);
        Assert.Equal(30m, Math.Round(use.Spread!.Value.Kilograms, 6));
        Assert.Equal([Kg(30m), Weight.Zero, Kg(60m)], use.ByWeek);
    }

    [Fact]
    public void No_more_weeks_are_averaged_than_the_house_says()
    {
        var use = WeeklyUse.Of([new(Today, Kg(20m)), new(Today.AddDays(-70), Kg(500m))], Today, 2);

        // Worked by hand: the 500 kg lie ten weeks back; 20 and 0 kg are left.
        Assert.Equal((2, Kg(10m)), (use.Weeks, use.Mean));
    }

    [Fact]
    public void One_week_has_no_spread() => Assert.Null(WeeklyUse.Of([new(Today, Kg(20m))], Today, 12).Spread);

    /// <summary>Handbook, trade 9.3: position is on hand, afloat and contracted, less reserved; 1,200 kg a week planned, lead 14 weeks, its spread 2: with no spread of use the safety stock is 1.645 × 1,200 × 2 = 3,948.</summary>
    [Fact]
    public void The_houses_figures_say_when_it_is_time_to_buy()
    {
        var stock = new PurposeStock(Kg(10_400m), Kg(2_000m), [new Expected("P26-001", Today.AddDays(10), Kg(12_348m), true)], WeeklyUse.None, Kg(1_200m));

        var cover = PurposeCover.Of(stock, new StockHabits());

        Assert.Equal(7.0m, cover.Weeks);
        Assert.False(cover.IsMeasured);
        Assert.Equal(Kg(20_748m), cover.Position);
        Assert.Equal(20_748m, Math.Round(cover.Reorder.Point.Kilograms, 3));
        Assert.True(cover.IsTimeToBuy);
    }

    /// <summary>Worked by hand: 100 kg a week; 150 kg last ten days and a half, and 70 kg that come in the third week five days of it, less than four of which are lacked before.</summary>
    [Fact]
    public void It_says_when_it_runs_out_and_takes_weeks_together_in_which_nothing_changes()
    {
        var cover = PurposeCover.Of(new PurposeStock(Kg(150m), Weight.Zero, [new Expected("P26-001", Today.AddDays(15), Kg(70m), true)], WeeklyUse.None, Kg(100m)), new StockHabits());

        var alike = AlikeWeeks.Of(cover.Outlook(Today));

        Assert.Equal((Today.AddDays(10), Today.AddDays(10)), (cover.RunsOutOn(Today), cover.StockRunsOutOn(Today)));
        // 50 left, 50 missing, 30 missing of a week with 70, and then 49 weeks that miss 100 each.
        Assert.Equal([(1, 50m, 0m), (1, 0m, 50m), (1, 0m, 30m), (49, 0m, 100m)], alike.Select(weeks => (weeks.Count, weeks.Week.Left.Kilograms, weeks.Week.Missing.Kilograms)));
        Assert.Equal(52, alike.Sum(weeks => weeks.Count));
        Assert.Equal(Today.AddDays(7 * 51), alike[^1].LastFrom);
    }

    [Fact]
    public void What_lasts_longer_than_a_year_does_not_run_out()
    {
        var cover = PurposeCover.Of(new PurposeStock(Kg(5_300m), Weight.Zero, [], WeeklyUse.None, Kg(100m)), new StockHabits());

        Assert.Null(cover.RunsOutOn(Today));
        Assert.Null(cover.StockRunsOutOn(Today));
    }

    [Fact]
    public void The_lead_time_of_the_house_acts()
    {
        var (stock, habits) = (new PurposeStock(Kg(8_400m), Weight.Zero, [], WeeklyUse.None, Kg(1_200m)), new StockHabits());
        habits.Keep(true, 12, 14, 0, 1.645m, Percent.Of(15m), Weight.FromGrams(18m));

        // Worked by hand: two weeks at 1,200 kg, and nothing that varies.
        Assert.Equal(Kg(2_400m), PurposeCover.Of(stock, habits).Reorder.Point);
    }

    [Fact]
    public void A_purpose_that_uses_nothing_lasts_for_ever_and_is_never_due()
    {
        var cover = PurposeCover.Of(new PurposeStock(Weight.Zero, Weight.Zero, [], WeeklyUse.None, Weight.Zero), new StockHabits());

        Assert.Null(cover.Weeks);
        Assert.False(cover.IsTimeToBuy);
    }

    [Fact]
    public void The_year_ahead_says_what_is_left_and_what_is_missing()
    {
        var stock = new PurposeStock(Kg(250m), Weight.Zero, [new Expected("late", Today.AddDays(-3), Kg(10m), true), new Expected("P26-002", Today.AddDays(21), Kg(500m), false)], WeeklyUse.None, Kg(100m));

        var weeks = PurposeCover.Of(stock, new StockHabits()).Outlook(Today);

        // Worked by hand: 250 + 10 − 100 = 160; 60; −40, so 40 are missing; then 500 − 100 = 400.
        Assert.Equal(52, weeks.Count);
        Assert.Equal([Kg(160m), Kg(60m), Weight.Zero, Kg(400m)], weeks.Take(4).Select(week => week.Left));
        Assert.Equal(Kg(40m), weeks[2].Missing);
        Assert.Equal(4.0m, weeks[3].Cover);
        Assert.Equal(0.0m, weeks[3].CoverFromStock);
    }

    [Fact]
    public void Harvest_over_new_year_and_its_shipments_are_told_month_by_month()
    {
        // Handbook, trade 5.2: the main harvest of Kenya is November to February. Shipments worked by hand from the house's figures:
        // three months after November is February, four after February is June.
        var kenya = new Country("KE", "Kenya");
        kenya.StateHarvest(10, 11, 2);

        var year = Assert.Single(HarvestCalendar.Of([kenya, new Country("XX", "Nowhere stated")], Today, new StockHabits()));

        Assert.Equal([true, true, true, true, false], year.Months.Take(5).Select(month => month.IsHarvest));
        Assert.Equal([false, false, false, true, true, true, true, true, false], year.Months.Take(9).Select(month => month.Ships));
        Assert.False(year.Months[11].IsHarvest);
    }

    [Fact]
    public void A_component_has_a_blend_and_a_share()
    {
        var terms = new PurposeTerms("Base", null, null, null, Kg(10m), "Elder espresso");

        Assert.Throws<RuleBrokenException>(() => new Purpose(terms));
        Assert.Throws<RuleBrokenException>(() => new Purpose(terms with { Blend = null, Share = Percent.Of(40m) }));
        Assert.Equal(Percent.Of(40m), new Purpose(terms with { Share = Percent.Of(40m) }).Share);
    }

    [Fact]
    public void Only_a_release_names_a_purpose()
    {
        var holding = new Holding(Id<Domain.Offers.Lot>.New(), Id<Warehouse>.New());
        var note = new MovementNote(Today, null, "Found", Id<Purpose>.New());

        Assert.Throws<RuleBrokenException>(() => holding.Add(MovementKind.Gain, new StockAmount(1, Kg(60m), Kg(60m)), note, default, new DateTimeOffset(2026, 11, 26, 12, 0, 0, TimeSpan.Zero)));
    }

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}

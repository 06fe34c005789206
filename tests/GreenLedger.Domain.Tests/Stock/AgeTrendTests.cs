using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Tests.Stock;

public sealed class AgeTrendTests
{
    private static readonly DateOnly Start = new(2025, 1, 1);

    /// <summary>Days and trunk sizes of five orange trees, data set <c>Orange</c> of R 4.2.2: five levels, one slope.</summary>
    private static readonly int[] Days = [118, 484, 664, 1004, 1231, 1372, 1582];

    private static readonly double[][] Trees =
    [
        [30, 58, 87, 115, 120, 142, 145], [33, 69, 111, 156, 172, 203, 203], [30, 51, 75, 108, 115, 139, 140], [32, 62, 112, 167, 179, 209, 214], [30, 49, 81, 125, 142, 174, 177],
    ];

    /// <summary>R 4.2.2: <c>lm(circumference ~ age + Tree, Orange)</c>: slope 0.106770325068761 a day, standard error 0.00532099610825812, 29 degrees of freedom, 95 % from 0.0958876661024792 to 0.1176529840350437.</summary>
    [Fact]
    public void One_slope_over_lots_of_different_levels_is_that_of_R()
    {
        var trend = AgeTrend.Of(Trees.SelectMany(tree => Scores(Days, tree)))!;

        Assert.Equal((29, 5, 35), (trend.Freedom, trend.Lots, trend.Scores));
        Assert.Equal(0.106770325068761, trend.PerMonth / AgeTrend.DaysOfMonth, 12);
        Assert.Equal(0.00532099610825812, trend.Error / AgeTrend.DaysOfMonth, 12);
        Assert.Equal((0.0958876661024792, 0.1176529840350437), (trend.Lower / AgeTrend.DaysOfMonth, trend.Upper / AgeTrend.DaysOfMonth), (one, other) => Math.Abs(one.Item1 - other.Item1) < 1e-8 && Math.Abs(one.Item2 - other.Item2) < 1e-8);
    }

    [Fact]
    public void A_lot_cupped_once_says_nothing_about_age()
    {
        var trend = AgeTrend.Of(Trees.SelectMany(tree => Scores(Days, tree)).Concat(Scores([400], [88])))!;

        Assert.Equal((5, 0.106770325068761), (trend.Lots, Math.Round(trend.PerMonth / AgeTrend.DaysOfMonth, 15)), (one, other) => one.Item1 == other.Item1 && Math.Abs(one.Item2 - other.Item2) < 1e-12);
        Assert.Null(AgeTrend.Of(Scores([0], [88]).Concat(Scores([90], [86]))));
    }

    [Fact]
    public void Too_few_scores_to_know_the_error_give_no_trend() => Assert.Null(AgeTrend.Of(Scores([0, 90], [88, 86])));

    /// <summary>By hand: 88, 86.9, 86.1 and 85 at steps of 30 days fall by 4.9 ÷ 5 = 0.98 a step, 0.9943 a month of 30.436875 days.</summary>
    [Fact]
    public void A_trend_whose_interval_holds_zero_is_said_to_tell_nothing()
    {
        var scores = Scores([0, 30, 60, 90], [85, 84, 86, 85]);

        Assert.StartsWith("No change with age can be told yet", AgeTrend.Of(scores)!.Words(), StringComparison.Ordinal);
        Assert.StartsWith("Scores fall by 0.99 points a month", AgeTrend.Of(Scores([0, 30, 60, 90], [88, 86.9, 86.1, 85]))!.Words(), StringComparison.Ordinal);
    }

    /// <summary>Handbook trade.md 5.2: Brazil's crop year begins in April and its harvest is from May to September; Colombia's in October, October to February. The end is the last day of that month.</summary>
    [Theory]
    [InlineData(4, 5, 9, "2026/27", "2026-09-30")]
    [InlineData(10, 10, 2, "2026/27", "2027-02-28")]
    [InlineData(10, 10, 2, "2023/24", "2024-02-29")]
    [InlineData(4, 3, 7, "2026/27", "2026-07-31")]
    [InlineData(4, 5, 9, "2026", "2026-09-30")]
    public void A_harvest_ends_within_its_crop_year(int start, int from, int to, string crop, string end)
    {
        var country = new Country("BR", "Brazil");
        country.StateHarvest(start, from, to);

        Assert.Equal(DateOnly.Parse(end, System.Globalization.CultureInfo.InvariantCulture), country.HarvestEnd(crop));
        Assert.Null(country.HarvestEnd(null));
    }

    /// <summary>Handbook trade.md 9.3: current crop until 12 months after the harvest ended; bands of 0–3, 4–6, 7–9, 10–12 and more months.</summary>
    [Theory]
    [InlineData("2026-09-30", 0, "0–3 months", false)]
    [InlineData("2026-10-29", 0, "0–3 months", false)]
    [InlineData("2027-01-30", 4, "4–6 months", false)]
    [InlineData("2027-09-29", 11, "10–12 months", false)]
    [InlineData("2027-09-30", 12, "10–12 months", true)]
    [InlineData("2027-10-30", 13, "more than 12 months", true)]
    public void A_crop_is_past_a_year_after_its_harvest(string on, int months, string band, bool isPast)
    {
        var today = DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture);
        var lot = Lot(new DateOnly(2026, 9, 30));

        Assert.Equal((months, band, isPast), (lot.MonthsOn(today), AgedLot.BandOf(lot.MonthsOn(today)), lot.IsPastCrop(new StockHabits(), today)));
    }

    /// <summary>The house's usual allowance of one percentage point: common practice, no source.</summary>
    [Theory]
    [InlineData(11.0, 12.0, false)]
    [InlineData(11.0, 12.1, true)]
    [InlineData(11.0, 9.9, true)]
    public void Moisture_is_pointed_out_when_it_moved_by_more_than_the_house_allows(decimal first, decimal newest, bool isPointedOut) =>
        Assert.Equal(isPointedOut, Lot(null, first, newest).HasDrifted(new StockHabits()));

    private static AgedLot Lot(DateOnly? harvestEnd, params decimal[] moistures) => new(
        Id<Lot>.New(), "A", "A", Weight.FromKilograms(60m), harvestEnd, new DateOnly(2026, 12, 1), [], [.. moistures.Select((one, at) => new MoistureOn(Start.AddDays(30 * at), Percent.Of(one)))]);

    private static IEnumerable<AgedScore> Scores(int[] days, double[] points)
    {
        var lot = Id<Lot>.New();
        return [.. days.Zip(points, (day, one) => new AgedScore(lot, Start.AddDays(day), one))];
    }
}

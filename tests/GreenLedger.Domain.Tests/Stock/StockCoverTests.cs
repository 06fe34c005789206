using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Tests.Stock;

/// <summary>Expected figures: handbook, trade 9.3 and check values 71 and 72.</summary>
public sealed class StockCoverTests
{
    [Fact]
    public void Stock_of_8_400_kg_covers_seven_weeks_at_1_200_kg_a_week() =>
        Assert.Equal(7.0m, StockCover.Weeks(Kg(8_400m), Kg(1_200m)));

    [Fact]
    public void Without_use_it_lasts_for_ever() => Assert.Null(StockCover.Weeks(Kg(8_400m), Weight.Zero));

    [Fact]
    public void The_reorder_point_guards_against_the_spread_of_use_and_of_lead_time()
    {
        var point = StockCover.Reorder(Kg(1_200m), Kg(180m), 14m, 2m, 1.645m);

        Assert.Equal(4_100.5m, Math.Round(point.SafetyStock.Kilograms, 1));
        Assert.Equal(20_900.5m, Math.Round(point.Point.Kilograms, 1));
        Assert.Equal(349, point.Bags(Kg(60m)));
    }

    [Fact]
    public void With_a_sure_lead_time_the_safety_stock_is_smaller()
    {
        var point = StockCover.Reorder(Kg(1_200m), Kg(180m), 14m, 0m, 1.645m);

        Assert.Equal(1_107.9m, Math.Round(point.SafetyStock.Kilograms, 1));
        Assert.Equal(17_907.9m, Math.Round(point.Point.Kilograms, 1));
    }

    [Fact]
    public void A_roasted_kilogram_and_a_cup_cost_more_than_the_green()
    {
        // Handbook, trade 3.3 example F: 6.4783 EUR/kg at 15 % loss; 18 g.
        var habits = new StockHabits();

        Assert.Equal(7.6215m, Math.Round(habits.Roasted(6.4783m), 4));
        Assert.Equal(0.1372m, Math.Round(habits.Cup(6.4783m), 4));
    }

    [Theory]
    [InlineData(12, 7.3617)]
    [InlineData(18, 7.9004)]
    public void A_darker_roast_costs_more_green(int loss, decimal cost)
    {
        // Handbook, trade 3.3 example F.
        var habits = new StockHabits();
        habits.Keep(true, 12, 98, 14, 1.645m, Percent.Of(loss), Weight.FromGrams(18m));

        Assert.Equal(cost, Math.Round(habits.Roasted(6.4783m), 4));
    }

    [Fact]
    public void The_way_of_valuing_is_never_changed_backwards()
    {
        var (habits, today) = (new StockHabits(), new DateOnly(2026, 11, 26));

        Assert.Throws<RuleBrokenException>(() => habits.Value(ValuationMethod.WeightedAverage, today.AddDays(-1), today));
        habits.Value(ValuationMethod.WeightedAverage, today.AddDays(5), today);
        Assert.Throws<RuleBrokenException>(() => habits.Value(ValuationMethod.FirstInFirstOut, today.AddDays(5), today));

        Assert.Equal(ValuationMethod.EachLot, habits.MethodOn(today.AddDays(4)));
        Assert.Equal(ValuationMethod.WeightedAverage, habits.MethodOn(today.AddDays(5)));
    }

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}

using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Tests.Stock;

public sealed class StockValueTests
{
    /// <summary>Handbook, trade 9.1 example H, after IAS 2.25: 3,000 kg at 6.20, then 2,000 kg at 6.80; 3,500 kg issued.</summary>
    private static readonly StockStep[] ExampleH = [In(3_000m, 18_600m), In(2_000m, 13_600m), Out(3_500m)];

    [Theory]
    [InlineData(ValuationMethod.FirstInFirstOut, 22_000.00, 10_200.00)]
    [InlineData(ValuationMethod.WeightedAverage, 22_540.00, 9_660.00)]
    public void An_issue_takes_its_cost_by_the_method(ValuationMethod method, decimal issued, decimal left)
    {
        var value = StockValue.Of(ExampleH, method, Currency.Eur);

        Assert.Equal(Eur(issued), value.IssuedCost);
        Assert.Equal(Eur(left), value.LeftCost);
        Assert.Equal(Weight.FromKilograms(1_500m), value.Left);
    }

    [Fact]
    public void What_was_issued_and_what_is_left_are_what_was_received()
    {
        foreach (var method in Enum.GetValues<ValuationMethod>())
        {
            var chance = new Random(7);
            var steps = new List<StockStep>();
            var (there, received) = (0m, 0m);
            for (var step = 0; step < 200; step++)
            {
                var (weight, cost) = (chance.Next(1, 90_000) / 100m, chance.Next(1, 900_000) / 100m);
                if (weight <= there)
                {
                    steps.Add(Out(weight));
                    there -= weight;
                }
                else
                {
                    steps.Add(In(weight, cost));
                    (there, received) = (there + weight, received + cost);
                }
            }

            var value = StockValue.Of(steps, method, Currency.Eur);

            Assert.Equal(Eur(received), value.IssuedCost + value.LeftCost);
            Assert.Equal(there, value.Left.Kilograms);
        }
    }

    [Fact]
    public void More_than_was_there_cannot_be_issued() =>
        Assert.Throws<RuleBrokenException>(() => StockValue.Of([In(10m, 60m), Out(10.001m)], ValuationMethod.FirstInFirstOut, Currency.Eur));

    private static StockStep In(decimal kilograms, decimal cost) => new(Weight.FromKilograms(kilograms), Eur(cost));

    private static StockStep Out(decimal kilograms) => new(Weight.FromKilograms(-kilograms), null);

    private static Money Eur(decimal amount) => Money.Of(amount, Currency.Eur);

    /// <summary>The 15 % that a house begins with are a guess of ours (common practice, no source): no event tells them.</summary>
    [Fact]
    public void A_roast_loss_is_stated_when_somebody_kept_it_and_not_when_they_chose_how_stock_is_valued()
    {
        var habits = new StockHabits();
        var day = new DateOnly(2026, 11, 27);

        habits.Value(ValuationMethod.WeightedAverage, day, day);
        var before = habits.IsRoastLossStated;
        habits.Keep(true, 12, 98, 14, 1.645m, habits.RoastLoss, habits.Dose);

        Assert.Equal((false, true), (before, habits.IsRoastLossStated));
    }
}

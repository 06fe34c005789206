using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;

namespace GreenLedger.SeedDemo.Choosing;

/// <summary>
/// The three things that the house buys for: the base of its espresso, single origins for filter, and robusta for a
/// canteen blend. Limits and weights are the house's own, invented.
/// </summary>
internal sealed class BuyersRules
{
    private readonly IReadOnlyDictionary<string, ProcessMethod> _methods;

    public BuyersRules(IReadOnlyDictionary<string, ProcessMethod> methods, Id<Person> by, DateTimeOffset at)
    {
        _methods = methods;
        Espresso = new BuyingRules("Espresso base", EspressoTerms(9.00m), by, at);
        Filter = new BuyingRules("Filter, single origin", FilterTerms(85.00m, ranksStated: false), by, at);
        Robusta = new BuyingRules("Robusta for canteens", RobustaTerms(), by, at);
    }

    public BuyingRules Espresso { get; }

    public BuyingRules Filter { get; }

    public BuyingRules Robusta { get; }

    public IReadOnlyList<BuyingRules> All => [Espresso, Filter, Robusta];

    /// <summary>When the market came down after its first high year, the house asked for more and paid less, and began
    /// to look at lots that only their sellers had scored.</summary>
    public void Tighten(Id<Person> by, DateTimeOffset at)
    {
        Espresso.Edit(Espresso.Name, EspressoTerms(8.20m), by, at);
        Filter.Edit(Filter.Name, FilterTerms(85.50m, ranksStated: true), by, at.AddMinutes(12));
    }

    private RuleTerms EspressoTerms(decimal highestCost) => new()
    {
        FormId = CuppingForm.HundredPointId,
        Currency = Currency.Eur,
        Gates = new Gates
        {
            LeastScore = Score.Of(81.5m),
            HighestCostPerKilogram = highestCost,
            LeastMoisture = Percent.Of(8m),
            HighestMoisture = Percent.Of(12.5m),
            HighestCategory1 = FullDefects.Of(1m),
            HighestCategory2 = FullDefects.Of(8m),
            LeastQuantity = Weight.FromKilograms(1_000m),
        },
        Weights = new Weights { Score = 40m, Cost = 50m, Process = 10m },
        Anchors = new Anchors { LowScore = Score.Of(80m), HighScore = Score.Of(88m), LowCost = 4.50m, HighCost = 10m },
        Processes = [Prefer("natural", 1.0m), Prefer("pulped natural", 0.9m), Prefer("washed", 0.6m), Prefer("honey", 0.6m), Prefer("wet-hulled", 0.5m), Refuse("anaerobic natural"), Refuse("anaerobic washed")],
        Sessions = SessionRule.InverseVariance,
    };

    private RuleTerms FilterTerms(decimal leastScore, bool ranksStated) => new()
    {
        FormId = CuppingForm.HundredPointId,
        Currency = Currency.Eur,
        Gates = new Gates
        {
            LeastScore = Score.Of(leastScore),
            LeastLowerBound = Score.Of(leastScore - 1.5m),
            HighestCostPerKilogram = 18m,
            LeastMoisture = Percent.Of(9m),
            HighestMoisture = Percent.Of(12m),
            HighestWaterActivity = WaterActivity.Of(0.62m),
            HighestCategory1 = FullDefects.Of(0m),
            HighestCategory2 = FullDefects.Of(5m),
        },
        Weights = new Weights { Score = 70m, Cost = 20m, CostPerPoint = 5m, Process = 5m },
        Anchors = new Anchors
        {
            LowScore = Score.Of(84m),
            HighScore = Score.Of(92m),
            LowCost = 6m,
            HighCost = 20m,
            LowCostPerPoint = 0.8m,
            HighCostPerPoint = 3m,
        },
        Processes = [Prefer("washed", 1.0m), Prefer("honey", 0.8m), Prefer("red honey", 0.8m), Prefer("natural", 0.7m), Prefer("anaerobic natural", 0.3m), Prefer("anaerobic washed", 0.4m)],
        CostPerPoint = CostPerPointRule.PricePerPointAbove,
        RanksStatedScores = ranksStated,
        StatedDoubt = Score.Of(1.75m),
        Sessions = SessionRule.Latest,
    };

    private RuleTerms RobustaTerms() => new()
    {
        FormId = CuppingForm.AffectiveId,
        Currency = Currency.Eur,
        Gates = new Gates
        {
            LeastScore = Score.Of(75m),
            HighestCostPerKilogram = 6.50m,
            HighestMoisture = Percent.Of(13m),
            LeastQuantity = Weight.FromKilograms(600m),
        },
        Weights = new Weights { Score = 30m, Cost = 70m },
        Anchors = new Anchors { LowScore = Score.Of(72m), HighScore = Score.Of(82m), LowCost = 3.20m, HighCost = 6.50m },
        Processes = [Refuse("wet-hulled")],
    };

    private ProcessChoice Prefer(string method, decimal preference) => new(_methods[method].Id, method, true, preference);

    private ProcessChoice Refuse(string method) => new(_methods[method].Id, method, false, 0m);
}

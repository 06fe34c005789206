using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Samples;

namespace GreenLedger.SeedDemo.Grading;

/// <summary>Grades most samples the day after they came: most are sound, a few are too wet or too rough.</summary>
internal sealed class GradingTable(Cast cast, DateOnly today, Draw draw)
{
    internal const string Meter = "Bench meter, checked against ISO 6673";

    public IEnumerable<GreenGrade> Grade(IEnumerable<Bag> bags) =>
        bags.Where(bag => bag.ReceivedOn < today.AddDays(-1) && draw.Chance(0.88)).Select(Grade);

    private GreenGrade Grade(Bag bag)
    {
        var coffee = bag.Coffee.Coffee;
        var weight = bag.Weight < GreenGrade.UsualSample ? bag.Weight : GreenGrade.UsualSample;
        var grade = new GreenGrade(bag.Sample.Id, bag.Sample.LotId, bag.ReceivedOn.AddDays(1), draw.Of(cast.Cuppers.Take(4).ToList()).Id, weight);
        var isWet = draw.Chance(coffee.Family == ProcessFamily.WetHulled ? 0.14 : 0.035);
        var moisture = isWet ? draw.Between(12.6, 13.8) : Math.Clamp(draw.Normal(10.8, 0.5), 9.2, 12.3);
        var activity = Math.Clamp(0.555 + ((moisture - 10.8) * 0.035) + draw.Normal(0, 0.018), 0.42, 0.74);
        grade.Measure(
            Percent.Of(Math.Round((decimal)moisture, 1)), Meter, WaterActivity.Of(Math.Round((decimal)activity, 3)), (int)Math.Clamp(draw.Normal(695, 22), 610, 770));
        grade.CountDefects(DefectScheme.WashedArabica, Beans(coffee), DefectFractions.Dropped);
        if (draw.Chance(0.7))
        {
            grade.Sieve(Screens(coffee));
        }

        if (draw.Chance(0.8))
        {
            grade.Roast(Quakers(coffee), GreenGrade.UsualRoast);
        }

        return grade.Look(isWet ? "yellow-green" : "blue-green", isWet ? "jute" : "clean", isWet).Judge(bag.Coffee.Lot.Varieties, GradingStandards.Published);
    }

    private Dictionary<string, int> Beans(Coffee coffee)
    {
        var rough = coffee.Family switch { ProcessFamily.Washed => 1.0, ProcessFamily.Honey => 1.3, ProcessFamily.WetHulled => 2.8, _ => 1.9 }
            * (coffee.Quality < 82 ? 1.7 : coffee.Quality > 86 ? 0.6 : 1)
            * (draw.Chance(0.05) ? 2.6 : 1);
        return new Dictionary<string, int>
        {
            ["full-black"] = draw.Chance(0.03 * rough) ? 1 : 0,
            ["full-sour"] = draw.Chance(0.02 * rough) ? 1 : 0,
            ["severe-insect"] = Count(0.5 * rough),
            ["partial-black"] = Count(0.6 * rough),
            ["partial-sour"] = Count(0.5 * rough),
            ["immature"] = Count(1.2 * rough),
            ["broken"] = Count(3.0 * rough),
            ["shell"] = Count(1.4 * rough),
            ["slight-insect"] = Count(2.6 * rough),
            ["parchment"] = Count(0.4 * rough),
        };
    }

    /// <summary>Shares that add up to 100.0 %: a coffee sold as large is large.</summary>
    private Dictionary<int, Percent> Screens(Coffee coffee)
    {
        var middle = coffee.Grade switch
        {
            "AA" or "screen 17/18" or "screen 18" or "Supremo" or "Plantation AA" => 17.3,
            "PB" => 15.0,
            "screen 14/16" => 15.2,
            _ => 16.2,
        };
        var left = 1000;
        var shares = new Dictionary<int, Percent>();
        foreach (var screen in new[] { 19, 18, 17, 16, 15, 14 })
        {
            var share = Math.Min(left, (int)(1000 * Math.Exp(-Math.Pow(screen - middle + draw.Normal(0, 0.1), 2) / 1.6) / 2.25));
            shares[screen] = Percent.Of(share / 10m);
            left -= share;
        }

        shares[ScreenShare.Pan] = Percent.Of(left / 10m);
        return shares;
    }

    private int Quakers(Coffee coffee) =>
        draw.Chance(coffee.Family is ProcessFamily.Natural or ProcessFamily.Other ? 0.16 : 0.05) ? draw.Between(1, 4) : 0;

    private int Count(double mean) => (int)Math.Max(0, Math.Round(draw.Normal(mean, Math.Sqrt(mean))));
}

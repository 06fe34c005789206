using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>Tries every plan of a small request, and holds a plan against the request in exact figures; knows nothing of the solver.</summary>
internal static class PlanSearch
{
    private const int Months = 2;

    /// <summary>Limits and needs tight enough that about a third cannot be met.</summary>
    public static PlanRequest Random(Random random)
    {
        var offers = Enumerable.Range(0, 3).Select(at => PlanSolverTests.Offer($"L{at}", random.Next(400, 900) / 100m, random.Next(800, 900) / 10m) with
        {
            Supplier = random.Next(2) == 0 ? "North" : "South",
            Origin = random.Next(2) == 0 ? "ET" : "CO",
            Process = random.Next(3) == 0 ? ProcessFamily.Natural : ProcessFamily.Washed,
            Bag = PlanSolverTests.Kg(random.Next(2) == 0 ? 60m : 69m),
            MostBags = random.Next(1, 4),
            LeastBags = random.Next(1, 3),
            FirstMonth = random.Next(Months),
        }).ToList();
        var needs = Enumerable.Range(0, 2).Select(at => new PlanNeed(
            $"P{at}", random.Next(2) == 0 ? ProcessFamily.Washed : null, random.Next(2) == 0 ? Score.Of(82m) : null,
            [.. Enumerable.Range(0, Months).Select(_ => PlanSolverTests.Kg(random.Next(3) == 0 ? random.Next(20, 130) : 0))])).ToList();
        var limits = new PlanLimits(
            random.Next(2) == 0 ? [random.Next(300, 2_000), random.Next(300, 2_000)] : [],
            random.Next(3) == 0 ? PlanSolverTests.Kg(random.Next(10, 120)) : null,
            random.Next(3) == 0 ? random.Next(1, 3) : null,
            random.Next(3) == 0 ? PlanSolverTests.Kg(random.Next(60, 250)) : null,
            random.Next(3) == 0 ? PlanSolverTests.Kg(random.Next(60, 250)) : null);
        return new PlanRequest(Months, needs, offers, limits, random.Next(0, 5) / 4m);
    }

    /// <summary>The least worth of all plans that keep everything; null where none does.</summary>
    public static double? Best(PlanRequest request)
    {
        var choices = request.Offers.Select(offer => Choices(request, offer).ToList()).ToList();
        double? best = null;
        foreach (var first in choices[0])
        {
            foreach (var second in choices[1])
            {
                foreach (var third in choices[2])
                {
                    (PlanOffer, PlanPart)[] all = [.. first, .. second, .. third];
                    var worth = all.Sum(one => one.Item2.Bags * (double)one.Item1.Bag.Kilograms * request.Worth(one.Item1));
                    if ((best is null || worth < best) && Keeps(request, all))
                    {
                        best = worth;
                    }
                }
            }
        }

        return best;
    }

    /// <summary>In decimal arithmetic: needs, bags, months, budget, storage, lots, suppliers and origins.</summary>
    public static bool Keeps(PlanRequest request, IReadOnlyList<(PlanOffer Offer, PlanPart Part)> plan)
    {
        decimal Sum(Func<(PlanOffer Offer, PlanPart Part), bool> of) => plan.Where(of).Sum(one => one.Part.Bags * one.Offer.Bag.Kilograms);
        var limits = request.Limits;
        var offers = plan.GroupBy(one => one.Offer).Select(group => (Offer: group.Key, Bags: group.Sum(one => one.Part.Bags))).Where(one => one.Bags > 0).ToList();
        return plan.All(one => one.Part.Bags == 0 || (one.Part.Need.Fits(one.Offer) && one.Part.Month >= one.Offer.FirstMonth))
            && offers.All(one => one.Bags >= one.Offer.LeastBags && one.Bags <= one.Offer.MostBags)
            && request.Needs.All(need => Enumerable.Range(0, request.Months).All(month => Sum(one => one.Part.Need == need && one.Part.Month <= month) >= need.ByMonth.Take(month + 1).Sum(kg => kg.Kilograms)))
            && Enumerable.Range(0, request.Months).All(month => limits.BudgetOf(month) is not { } budget || plan.Where(one => one.Part.Month == month).Sum(one => one.Part.Bags * one.Offer.Bag.Kilograms * one.Offer.CostPerKilogram) <= budget)
            && (limits.Storage is not { } storage || Enumerable.Range(0, request.Months).All(month => Sum(one => one.Part.Month <= month) - request.Needs.Sum(need => need.ByMonth.Take(month + 1).Sum(kg => kg.Kilograms)) <= storage.Kilograms))
            && (limits.MostLots is not { } lots || offers.Count <= lots)
            && (limits.MostOfSupplier is not { } supplier || offers.GroupBy(one => one.Offer.Supplier).All(group => group.Sum(one => one.Bags * one.Offer.Bag.Kilograms) <= supplier.Kilograms))
            && (limits.MostOfOrigin is not { } origin || offers.GroupBy(one => one.Offer.Origin).All(group => group.Sum(one => one.Bags * one.Offer.Bag.Kilograms) <= origin.Kilograms));
    }

    /// <summary>Every way to part 0 to all bags of an offer among needs and months.</summary>
    private static IEnumerable<(PlanOffer, PlanPart)[]> Choices(PlanRequest request, PlanOffer offer)
    {
        var slots = request.Needs.Where(need => need.Fits(offer)).SelectMany(need => Enumerable.Range(offer.FirstMonth, Months - offer.FirstMonth).Select(month => (Need: need, Month: month))).ToList();
        return Parted(slots.Count, offer.MostBags).Select(bags => bags.Select((count, at) => (offer, new PlanPart(slots[at].Need, slots[at].Month, count))).ToArray());
    }

    private static IEnumerable<int[]> Parted(int slots, int most) => slots == 0
        ? [[]]
        : from first in Enumerable.Range(0, most + 1)
          from rest in Parted(slots - 1, most - first)
          select (int[])[first, .. rest];
}

using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>Small cases worked by hand, and random ones beside a search through every plan there is.</summary>
public sealed class PlanSolverTests
{
    private static readonly TimeSpan Time = TimeSpan.FromSeconds(60);

    [Fact]
    public void The_cheapest_whole_bags_that_meet_the_need_are_bought()
    {
        // Worked by hand: 130 kg are needed in bags of 60: three bags at 5.00 are 900.00, at 6.00 they are 1,080.00.
        var plan = Solve([Need("Base", 130m)], [Offer("A", 5m, 82m), Offer("B", 6m, 86m)]);

        Assert.Equal(PlanEnd.Best, plan.End);
        Assert.Equal(("A", 3, 900m), (plan.Buys.Single().Offer.Ref, plan.Buys.Single().Bags, plan.Cost));
        Assert.Equal("Others come before it by cost for Base: bought at 5.00/kg with 82.00 points.", plan.Left.Single().Reason);
        Assert.Equal(["Base: first of 2 that fit, by cost."], plan.Buys.Single().Reasons);
    }

    [Fact]
    public void With_quality_alone_the_most_points_are_bought()
    {
        var plan = Solve([Need("Base", 130m)], [Offer("A", 5m, 82m), Offer("B", 6m, 86m)], quality: 1m);

        Assert.Equal("B", plan.Buys.Single().Offer.Ref);
        Assert.Equal(86m, plan.Points);
    }

    [Fact]
    public void A_process_and_a_least_score_are_kept()
    {
        var needs = new[] { new PlanNeed("Filter", ProcessFamily.Washed, Score.Of(85m), [Kg(60m)]) };

        var plan = Solve(needs, [Offer("A", 5m, 84.9m), Offer("B", 5m, 90m) with { Process = ProcessFamily.Natural }, Offer("C", 9m, 85m)]);

        Assert.Equal("C", plan.Buys.Single().Offer.Ref);
        Assert.Contains("lie below the least", plan.Left.Single(left => left.Offer.Ref == "A").Reason, StringComparison.Ordinal);
        Assert.Contains("asks for its process", plan.Left.Single(left => left.Offer.Ref == "B").Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lot_comes_no_sooner_than_it_can_and_what_comes_early_serves_later()
    {
        var needs = new[] { new PlanNeed("Base", null, null, [Kg(60m), Kg(60m)]) };

        var plan = Solve(needs, [Offer("A", 5m, 82m) with { FirstMonth = 1 }, Offer("B", 6m, 86m)], months: 2);

        // Worked by hand: B for the first month, since A cannot be there; A for the second.
        Assert.Equal([("B", 0, 1), ("A", 1, 1)], plan.Buys.Select(buy => (buy.Offer.Ref, buy.Parts[0].Month, buy.Bags)));
    }

    [Fact]
    public void A_budget_too_small_is_named_with_what_it_costs()
    {
        var plan = Solve([Need("Base", 120m)], [Offer("A", 5m, 82m)], new PlanLimits([400m], null, null, null, null));

        // Worked by hand: 400.00 buy one bag of 300.00; 60 of 120 kg are missing, and come without the budget.
        Assert.Equal(PlanEnd.Impossible, plan.End);
        Assert.Contains(plan.Conflicts, line => line.StartsWith("Base: at least 60 kg of 120 kg", StringComparison.Ordinal));
        Assert.Contains(plan.Conflicts, line => line == "The budget stands against it: without it, 60 kg more could be had.");
    }

    [Fact]
    public void Limits_that_do_not_bind_are_not_named_beside_one_that_does()
    {
        var limits = new PlanLimits([400m], Kg(5_000m), 4, Kg(5_000m), Kg(5_000m));

        var plan = Solve([Need("Base", 120m)], [Offer("A", 5m, 82m) with { LeastBags = 2 }, Offer("B", 6m, 82m)], limits);

        // Worked by hand: 400.00 buy one bag of B; two bags of either cost 600.00 or more, within every other limit.
        Assert.Equal(["The budget stands against it: without it, 60 kg more could be had."], Stand(plan));
    }

    [Fact]
    public void Limits_of_which_either_alone_would_let_the_need_be_met_are_named_together()
    {
        var limits = new PlanLimits([], Kg(900m), 1, Kg(60m), null);

        var plan = Solve([Need("Base", 120m)], [Offer("A", 5m, 82m), Offer("B", 6m, 82m) with { Supplier = "Other" }], limits);

        // Worked by hand: one lot may be 60 kg only, as any one supplier may send no more; two lots of two suppliers, or two bags of one, would do.
        Assert.Equal(["The limit on lots and the most from one supplier stand against it together: loosen one of them; without them, 60 kg more could be had."], Stand(plan));
    }

    [Fact]
    public void Two_limits_that_each_forbid_it_alone_are_both_named()
    {
        var plan = Solve([Need("Base", 120m)], [Offer("A", 5m, 82m)], new PlanLimits([400m], null, null, null, Kg(60m)));

        // Worked by hand: 400.00 buy one bag, and one origin may send one bag: without one of the two the other still forbids the second.
        Assert.Equal(2, Stand(plan).Count());
        Assert.All(Stand(plan), line => Assert.Contains("stands against it, and not alone", line, StringComparison.Ordinal));
    }

    [Fact]
    public void An_offer_keeps_to_its_own_least_lot()
    {
        // Worked by hand: 60 kg are one bag; ten bags of A at 4.00 are 2,400.00, one of B at 6.00 is 360.00.
        var plan = Solve([Need("Base", 60m)], [Offer("A", 4m, 82m) with { LeastBags = 10 }, Offer("B", 6m, 82m)]);

        Assert.Equal(("B", 1), (plan.Buys.Single().Offer.Ref, plan.Buys.Single().Bags));
        Assert.Equal("Before 1 of those bought by cost, but at least 10 bags of it must be bought.", plan.Left.Single().Reason);
    }

    [Fact]
    public void Offers_that_do_not_suffice_are_named_and_no_limit_is_blamed()
    {
        var plan = Solve([Need("Base", 120m)], [Offer("A", 5m, 82m) with { MostBags = 1 }], new PlanLimits([9_000m], null, 5, null, null));

        Assert.Equal(PlanEnd.Impossible, plan.End);
        Assert.DoesNotContain(plan.Conflicts, line => line.Contains("against it", StringComparison.Ordinal));
        Assert.Contains(plan.Conflicts, line => line.Contains("too few or come too late: 60 kg stay missing", StringComparison.Ordinal));
    }

    [Fact]
    public void The_most_from_one_supplier_is_kept_and_named()
    {
        var limits = new PlanLimits([], null, null, Kg(60m), null);

        var plan = Solve([Need("Base", 120m)], [Offer("A", 5m, 82m), Offer("B", 6m, 82m) with { Supplier = "Other" }], limits);

        Assert.Equal(["A", "B"], plan.Buys.Select(buy => buy.Offer.Ref).Order(StringComparer.Ordinal));
        Assert.All(plan.Buys, buy => Assert.Equal(1, buy.Bags));
    }

    [Fact]
    public void What_is_net_needed_is_what_stock_and_arrivals_leave_open()
    {
        // Worked by hand: 100 a month; 150 in the first, 120 in the third: nothing, 50, nothing, 80.
        var net = PlanNeed.NetOf([Kg(100m), Kg(100m), Kg(100m), Kg(100m)], [Kg(150m), Kg(0m), Kg(120m), Kg(0m)]);

        Assert.Equal([Kg(0m), Kg(50m), Kg(0m), Kg(80m)], net);
    }

    [Fact]
    public void A_need_with_a_flavour_is_met_by_what_the_panel_tasted_it_in()
    {
        var needs = new[] { new PlanNeed("Base", null, null, [Kg(60m)], "nuts and cocoa") };
        var plan = PlanSolver.Solve(new PlanRequest(1, needs, [Offer("Cheap", 4m, 84m), Offer("Fruit", 4.5m, 84m) with { Families = ["fruit"] }, Offer("Nutty", 5m, 82m) with { Families = ["Nuts and cocoa", "sweet"] }], PlanLimits.None, 0m), Time);

        Assert.Equal(["Nutty"], plan.Buys.Select(buy => buy.Offer.Ref));
        Assert.All(plan.Left, left => Assert.Equal("The panel did not taste in it what is asked for: nuts and cocoa.", left.Reason));
    }

    [Fact]
    public void What_is_decided_serves_the_needs_that_it_fits_from_the_month_in_which_it_can_be_here()
    {
        PlanNeed[] needs = [new("Base", null, null, [Kg(60m), Kg(50m)]), new("Filter", null, Score.Of(85m), [Kg(40m), Kg(40m)])];

        var (left, over) = PlanNeed.Less(needs, [(Offer("Late", 5m, 82m) with { FirstMonth = 1 }, Kg(70m)), (Offer("Fine", 7m, 86m), Kg(130m))]);

        // Worked by hand: the late 82 points serve 50 kg of the base and fit nothing else; the 86 points its first 60 kg, then 70 kg of the filter.
        Assert.Equal([Kg(0m), Kg(0m)], left[0].ByMonth);
        Assert.Equal([Kg(0m), Kg(10m)], left[1].ByMonth);
        Assert.Equal(Kg(20m), over);
    }

    [Fact]
    public void What_comes_too_late_names_its_month()
    {
        var request = new PlanRequest(2, [new PlanNeed("Base", null, null, [Kg(60m), Kg(0m)])], [Offer("A", 5m, 82m) with { FirstMonth = 1 }], PlanLimits.None, 0m) { First = new DateOnly(2027, 1, 1) };

        var conflicts = PlanSolver.Solve(request, Time).Conflicts;

        Assert.Contains(conflicts, one => one.EndsWith("cannot be had, first in January 2027.", StringComparison.Ordinal));
        Assert.Contains(conflicts, one => one.EndsWith("the first can be here in February 2027.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_request_that_cannot_be_is_refused()
    {
        var request = new PlanRequest(2, [Need("Base", 60m)], [Offer("A", 5m, 82m)], PlanLimits.None, 0m);

        Assert.Throws<RuleBrokenException>(() => PlanSolver.Solve(request, Time));
        Assert.Throws<RuleBrokenException>(() => PlanSolver.Solve(request with { Months = 1, Quality = 1.1m }, Time));
    }

    /// <summary>Two needs, two months, three offers: every number of bags for every need and month is tried.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_plan_is_as_good_as_the_best_of_all_plans(int seed)
    {
        var request = PlanSearch.Random(new Random(seed));

        var (plan, best) = (PlanSolver.Solve(request, Time), PlanSearch.Best(request));

        if (best is null)
        {
            Assert.Equal(PlanEnd.Impossible, plan.End);
            Assert.NotEmpty(plan.Conflicts);
        }
        else
        {
            Assert.Equal(PlanEnd.Best, plan.End);
            Assert.Equal(best.Value, plan.Worth, 1e-5 * Math.Max(1, best.Value));
            Assert.True(PlanSearch.Keeps(request, [.. plan.Buys.SelectMany(buy => buy.Parts.Select(part => (buy.Offer, part)))]));
        }
    }

    public static TheoryData<int> Seeds => new(Enumerable.Range(1, 60));

    internal static PlanOffer Offer(string name, decimal cost, decimal points) =>
        new(Id<Offer>.New(), name, "Sandpiper Green", "ET", ProcessFamily.Washed, points, cost, Kg(60m), 20);

    internal static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);

    private static IEnumerable<string> Stand(PurchasePlan plan) => plan.Conflicts.Where(line => line.Contains("against it", StringComparison.Ordinal));

    private static PlanNeed Need(string name, decimal kilograms) => new(name, null, null, [Kg(kilograms)]);

    private static PurchasePlan Solve(IReadOnlyList<PlanNeed> needs, IReadOnlyList<PlanOffer> offers, PlanLimits? limits = null, decimal quality = 0m, int months = 1) =>
        PlanSolver.Solve(new PlanRequest(months, needs, offers, limits ?? PlanLimits.None, quality), Time);
}

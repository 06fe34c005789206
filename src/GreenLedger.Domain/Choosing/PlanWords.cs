using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>Says of every offer why it is in a plan or out of it.</summary>
internal static class PlanWords
{
    public static PurchasePlan Told(PlanRequest request, IReadOnlyList<(PlanOffer Offer, PlanPart Part)> parts, PlanEnd end, double? gap, TimeSpan took)
    {
        var bought = parts.GroupBy(part => part.Offer).ToDictionary(group => group.Key, group => group.Select(one => one.Part).OrderBy(part => part.Month).ToList());
        var left = request.Offers.Where(offer => !bought.ContainsKey(offer)).ToList();
        return new PurchasePlan(
            request,
            end,
            [.. bought.Select(pair => new PlanBuy(pair.Key, pair.Value, [.. WhyIn(request, pair.Key, pair.Value, left)])).OrderBy(buy => buy.Parts[0].Month).ThenBy(buy => buy.Offer.Ref, StringComparer.Ordinal)],
            [.. left.Select(offer => new PlanLeft(offer, WhyOut(request, offer, bought)))],
            gap,
            took,
            []);
    }

    private static IEnumerable<string> WhyIn(PlanRequest request, PlanOffer offer, List<PlanPart> parts, List<PlanOffer> left)
    {
        foreach (var need in parts.Select(part => part.Need).Distinct())
        {
            var rivals = left.Where(one => need.Fits(one) && one.FirstMonth < request.Months && one.MostBags >= one.LeastBags).ToList();
            var better = rivals.Count(one => request.Worth(one) < request.Worth(offer));
            yield return $"For {need.Name}: {Beside(rivals.Count, better)}";
        }

        if (parts.Sum(part => part.Bags) == offer.MostBags)
        {
            yield return "All that is on offer is bought.";
        }
    }

    private static string Beside(int rivals, int better) => (rivals, better) switch
    {
        (0, _) => "no other offer is left that fits.",
        (1, 0) => "the one other offer that fits weighs no less in cost and points.",
        (_, 0) => $"of the {Count(rivals)} other offers that fit, none weighs less in cost and points.",
        (1, _) => "the one other offer that fits weighs less, but bags, months or limits leave it out.",
        (_, 1) => $"one of the {Count(rivals)} other offers that fit weighs less, but bags, months or limits leave it out.",
        _ => $"{Count(better)} of the {Count(rivals)} other offers that fit weigh less, but bags, months or limits leave them out.",
    };

    private static string WhyOut(PlanRequest request, PlanOffer offer, Dictionary<PlanOffer, List<PlanPart>> bought)
    {
        var needs = request.Needs.Where(need => need.Fits(offer) && need.Total > Weight.Zero).ToList();
        if (needs.Count == 0)
        {
            return NoNeed(request, offer);
        }

        if (offer.MostBags < offer.LeastBags)
        {
            return string.Create(CultureInfo.InvariantCulture, $"Only {offer.MostBags:#,0} bags are on offer, fewer than the least that is bought of a lot.");
        }

        if (offer.FirstMonth >= request.Months)
        {
            return "It would come after the months of this plan.";
        }

        var chosen = bought.Where(pair => pair.Value.Exists(part => needs.Contains(part.Need))).Select(pair => pair.Key).ToList();
        var heavier = chosen.Where(one => request.Worth(one) > request.Worth(offer) + 1e-9).ToList();
        return heavier.Count == 0 ? Dearer(offer, chosen) : Held(request, offer, bought, heavier.Count);
    }

    private static string NoNeed(PlanRequest request, PlanOffer offer)
    {
        var ofProcess = request.Needs.Where(need => need.Process is null || need.Process == offer.Process).ToList();
        return ofProcess.Count == 0 ? "Nothing that is needed asks for its process."
            : ofProcess.TrueForAll(need => !need.FitsFlavour(offer)) ? $"The panel did not taste in it what is asked for: {string.Join(", ", ofProcess.Select(need => need.Flavour).Distinct())}."
            : ofProcess.TrueForAll(need => need.LeastScore is { } least && offer.Points < least.Points)
                ? string.Create(CultureInfo.InvariantCulture, $"Its points, {offer.Points:0.00}, lie below the least of what asks for its process: {ofProcess.Min(need => need.LeastScore!.Value.Points):0.00}.")
                : "What it fits is not needed in these months.";
    }

    private static string Dearer(PlanOffer offer, List<PlanOffer> chosen) => chosen.Count == 0
        ? "What it fits is met already."
        : string.Create(
            CultureInfo.InvariantCulture,
            $"Others do the same for less: it costs {offer.CostPerKilogram:0.00}/kg at {offer.Points:0.00} points; those bought for the same cost {chosen.Min(one => one.CostPerKilogram):0.00} to {chosen.Max(one => one.CostPerKilogram):0.00} at {chosen.Min(one => one.Points):0.00} to {chosen.Max(one => one.Points):0.00}.");

    /// <summary>It weighs less than one that is bought, so something else keeps it out.</summary>
    private static string Held(PlanRequest request, PlanOffer offer, Dictionary<PlanOffer, List<PlanPart>> bought, int heavier)
    {
        var (limits, why) = (request.Limits, new List<string>());
        if (limits.MostLots is { } lots && bought.Count >= lots)
        {
            why.Add("the most lots are bought already");
        }

        if (IsFull(limits.MostOfSupplier, offer, bought, one => one.Supplier))
        {
            why.Add($"{offer.Supplier} is at its most");
        }

        if (IsFull(limits.MostOfOrigin, offer, bought, one => one.Origin))
        {
            why.Add($"{offer.Origin} is at its most");
        }

        if (offer.FirstMonth > 0)
        {
            why.Add($"it comes in {request.MonthName(offer.FirstMonth)} at the soonest");
        }

        why.AddRange(offer.LeastBags > 1 ? [$"at least {Count(offer.LeastBags)} bags of it must be bought"] : Array.Empty<string>());
        return why.Count > 0
            ? $"It weighs less than {Count(heavier)} that are bought, but {string.Join(", and ", why)}."
            : $"It weighs less than {Count(heavier)} that are bought, but its whole bags of {offer.Bag} fit the needs, budget and storage worse.";
    }

    private static bool IsFull(Weight? most, PlanOffer offer, Dictionary<PlanOffer, List<PlanPart>> bought, Func<PlanOffer, string?> of) =>
        most is { } kilograms && of(offer) is { } name
        && bought.Where(pair => of(pair.Key) == name).Sum(pair => pair.Key.Bag.Kilograms * pair.Value.Sum(part => part.Bags)) + (offer.Bag.Kilograms * offer.LeastBags) > kilograms.Kilograms;

    private static string Count(int count) => count.ToString("#,0", CultureInfo.InvariantCulture);
}

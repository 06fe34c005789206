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
            var fit = request.Offers.Where(one => need.Fits(one) && one.FirstMonth < request.Months && one.MostBags >= one.LeastBags).ToList();
            var better = fit.Where(one => request.Worth(one) < request.Worth(offer)).ToList();
            yield return $"{need.Name}: {Place(fit.Count, better.Count + 1, better.Count(left.Contains), By(request))}.";
        }

        if (parts.Sum(part => part.Bags) == offer.MostBags)
        {
            yield return "All that is on offer.";
        }
    }

    /// <summary>By what offers are held beside each other, which the buyer slides.</summary>
    private static string By(PlanRequest request) => request.Quality switch
    {
        0m => "by cost",
        1m => "by points",
        _ => "by cost and points",
    };

    private static string Place(int fit, int place, int passed, string by)
    {
        var words = fit == 1 ? "the only offer that fits"
            : place == 1 ? $"first of {Count(fit)} that fit, {by}"
            : $"no. {Count(place)} of {Count(fit)} that fit, {by}";
        return passed == 0 ? words : $"{words}; {Count(passed)} before it left out (below)";
    }

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
            return "It would arrive after the months of this plan.";
        }

        var chosen = bought.Where(pair => pair.Value.Exists(part => needs.Contains(part.Need))).Select(pair => pair.Key).ToList();
        var behind = chosen.Where(one => request.Worth(one) > request.Worth(offer) + 1e-9).ToList();
        return behind.Count == 0 ? Behind(request, needs, chosen) : Held(request, offer, bought, behind.Count);
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

    private static string Behind(PlanRequest request, List<PlanNeed> needs, List<PlanOffer> chosen) => chosen.Count == 0
        ? "What it fits is met already."
        : string.Create(
            CultureInfo.InvariantCulture,
            $"Others come before it {By(request)} for {string.Join(" and ", needs.Select(need => need.Name))}: bought at {Range(chosen.ConvertAll(one => one.CostPerKilogram))}/kg with {Range(chosen.ConvertAll(one => one.Points))} points.");

    private static string Range(List<decimal> figures) => figures.Min() == figures.Max()
        ? string.Create(CultureInfo.InvariantCulture, $"{figures[0]:0.00}")
        : string.Create(CultureInfo.InvariantCulture, $"{figures.Min():0.00} to {figures.Max():0.00}");

    /// <summary>It comes before one that is bought, so something else keeps it out.</summary>
    private static string Held(PlanRequest request, PlanOffer offer, Dictionary<PlanOffer, List<PlanPart>> bought, int behind)
    {
        var (limits, why) = (request.Limits, new List<string>());
        if (limits.MostLots is { } lots && bought.Count >= lots)
        {
            why.Add("no more lots may be bought");
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
            why.Add($"it arrives in {request.MonthName(offer.FirstMonth)} at the soonest");
        }

        why.AddRange(offer.LeastBags > 1 ? [$"at least {Count(offer.LeastBags)} bags of it must be bought"] : Array.Empty<string>());
        var before = $"Before {Count(behind)} of those bought {By(request)}, but";
        return why.Count > 0 ? $"{before} {string.Join(", and ", why)}." : $"{before} its whole bags of {offer.Bag} fit the needs, budget and storage worse.";
    }

    private static bool IsFull(Weight? most, PlanOffer offer, Dictionary<PlanOffer, List<PlanPart>> bought, Func<PlanOffer, string?> of) =>
        most is { } kilograms && of(offer) is { } name
        && bought.Where(pair => of(pair.Key) == name).Sum(pair => pair.Key.Bag.Kilograms * pair.Value.Sum(part => part.Bags)) + (offer.Bag.Kilograms * offer.LeastBags) > kilograms.Kilograms;

    private static string Count(int count) => count.ToString("#,0", CultureInfo.InvariantCulture);
}

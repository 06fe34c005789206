using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Choosing;

/// <summary>What is needed for one purpose of the house, month by month, after stock and contracts.</summary>
/// <param name="Process">Null where any process will do.</param>
/// <param name="LeastScore">Held against the points counted; null where no score is asked for.</param>
/// <param name="ByMonth">Kilograms that must have come by the end of each month; what comes sooner serves later months too.</param>
/// <param name="Flavour">A family of descriptors that must have been tasted in an offer; null where any will do.</param>
public sealed record PlanNeed(string Name, ProcessFamily? Process, Score? LeastScore, IReadOnlyList<Weight> ByMonth, string? Flavour = null)
{
    public Weight Total => ByMonth.Aggregate(Weight.Zero, (sum, month) => sum + month);

    public bool Fits(PlanOffer offer)
    {
        ArgumentNullException.ThrowIfNull(offer);
        return (Process is null || offer.Process == Process) && (LeastScore is null || offer.Points >= LeastScore.Value.Points) && FitsFlavour(offer);
    }

    internal bool FitsFlavour(PlanOffer offer) => Flavour is null || offer.Families?.Contains(Flavour, StringComparer.OrdinalIgnoreCase) == true;

    /// <summary>
    /// The needs less what is decided on already: each decision serves the needs that it fits, in their order, from the month on
    /// in which it can be here.
    /// </summary>
    /// <returns>The needs that are left, and the kilograms that fit none of them.</returns>
    public static (IReadOnlyList<PlanNeed> Left, Weight Over) Less(IReadOnlyList<PlanNeed> needs, IEnumerable<(PlanOffer Offer, Weight Weight)> decided)
    {
        ArgumentNullException.ThrowIfNull(needs);
        ArgumentNullException.ThrowIfNull(decided);
        var (left, over) = (needs.Select(need => need.ByMonth.ToArray()).ToList(), Weight.Zero);
        foreach (var (offer, weight) in decided)
        {
            var rest = weight;
            foreach (var months in needs.Zip(left).Where(pair => pair.First.Fits(offer)).Select(pair => pair.Second))
            {
                for (var month = offer.FirstMonth; month < months.Length; month++)
                {
                    var served = rest < months[month] ? rest : months[month];
                    (months[month], rest) = (months[month] - served, rest - served);
                }
            }

            over += rest;
        }

        return ([.. needs.Zip(left, (need, months) => need with { ByMonth = months })], over);
    }

    /// <summary>
    /// What is still to be bought for a use by month, where something is there or expected: the running need less the running supply,
    /// never below what it was a month before.
    /// </summary>
    public static IReadOnlyList<Weight> NetOf(IReadOnlyList<Weight> use, IReadOnlyList<Weight> supply)
    {
        ArgumentNullException.ThrowIfNull(use);
        ArgumentNullException.ThrowIfNull(supply);
        var (net, balance, bought) = (new Weight[use.Count], Weight.Zero, Weight.Zero);
        for (var month = 0; month < use.Count; month++)
        {
            balance = balance + use[month] - supply[month];
            net[month] = balance > bought ? balance - bought : Weight.Zero;
            bought += net[month];
        }

        return net;
    }
}

/// <summary>An offer as the plan sees it.</summary>
/// <param name="Points">The score less so many of its standard errors as the buyer counts.</param>
/// <param name="CostPerKilogram">Landed, in the house currency.</param>
/// <param name="MostBags">On offer.</param>
/// <param name="LeastBags">If any are bought at all: the offer’s own least lot, else that of the plan.</param>
/// <param name="Families">The families of descriptors that were tasted in it.</param>
/// <param name="FirstMonth">The first month, from 0, in which it can be in the warehouse.</param>
public sealed record PlanOffer(
    Id<Offer> OfferId, string Ref, string? Supplier, string? Origin, ProcessFamily? Process, decimal Points, decimal CostPerKilogram, Weight Bag, int MostBags, int LeastBags = 1, int FirstMonth = 0,
    IReadOnlyList<string>? Families = null);

/// <summary>What a plan keeps within; null where there is no limit.</summary>
/// <param name="Budget">By month, in the house currency, for what comes in that month.</param>
/// <param name="Storage">Kilograms of the plan's coffee that may lie over at the end of a month.</param>
public sealed record PlanLimits(IReadOnlyList<decimal?> Budget, Weight? Storage, int? MostLots, Weight? MostOfSupplier, Weight? MostOfOrigin)
{
    public static PlanLimits None { get; } = new([], null, null, null, null);

    public decimal? BudgetOf(int month) => month < Budget.Count ? Budget[month] : null;
}

/// <summary>What is asked of a plan.</summary>
/// <param name="Quality">From 0, the least cost, to 1, the most points.</param>
public sealed record PlanRequest(int Months, IReadOnlyList<PlanNeed> Needs, IReadOnlyList<PlanOffer> Offers, PlanLimits Limits, decimal Quality)
{
    public const int MostMonths = 24;
    public const int MostOffers = 2_000;

    /// <summary>The first day of the first month; null where months are only counted.</summary>
    public DateOnly? First { get; init; }

    /// <summary>However much quality counts, of two that are as good the cheaper is bought.</summary>
    private const double CostAlways = 0.001;

    /// <summary>
    /// What a point more of a kilogram is worth beside a unit of cost when quality and cost count alike: the range of costs over the range of points
    /// of the offers. Our own scale, no source.
    /// </summary>
    public double WorthOfPoint => Offers.Count == 0 || Offers.Max(one => one.Points) == Offers.Min(one => one.Points)
        ? 0
        : (double)((Offers.Max(one => one.CostPerKilogram) - Offers.Min(one => one.CostPerKilogram)) / (Offers.Max(one => one.Points) - Offers.Min(one => one.Points)));

    /// <summary>What a plan makes as small as it can, for a kilogram of an offer: its cost, and the points that it lacks of the best offer’s.</summary>
    public double Worth(PlanOffer offer)
    {
        ArgumentNullException.ThrowIfNull(offer);
        var quality = (double)Quality;
        return (Math.Max(1 - quality, CostAlways) * (double)offer.CostPerKilogram) + (quality * WorthOfPoint * (double)(Offers.Max(one => one.Points) - offer.Points));
    }

    /// <summary>A month, from 0, by its name, or by its number from 1 where the first day is not known.</summary>
    public string MonthName(int month) => First is { } first
        ? first.AddMonths(month).ToString("MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture)
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"month {month + 1}");

    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Check()
    {
        Rule.Require(Months is >= 1 and <= MostMonths, $"A plan spans 1 to {MostMonths} months.", nameof(Months));
        Rule.Require(Quality is >= 0m and <= 1m, "Quality counts from 0, the least cost, to 1, the most points.", nameof(Quality));
        Rule.Require(Needs.Count is > 0 and <= 50, "Say what is needed: 1 to 50 purposes.", nameof(Needs));
        Rule.Require(Needs.All(need => need.ByMonth.Count == Months && need.ByMonth.All(kg => kg >= Weight.Zero && kg.Kilograms <= 10_000_000m)), "A need has one weight for each month, from 0 to 10,000,000 kg.", nameof(Needs));
        Rule.Require(Offers.Count <= MostOffers, $"A plan looks at {MostOffers:#,0} offers at the most.", nameof(Offers));
        Rule.Require(Offers.DistinctBy(offer => offer.OfferId).Count() == Offers.Count, "An offer stands in a plan once.", nameof(Offers));
        Rule.Require(Offers.All(offer => offer.Bag.Kilograms is >= 0.1m and <= 2_000m), "A bag holds between 0.1 and 2,000 kg.", nameof(Offers));
        Rule.Require(Offers.All(offer => offer is { MostBags: >= 0 and <= 1_000_000, LeastBags: >= 1, FirstMonth: >= 0, CostPerKilogram: > 0m and <= 1_000_000m, Points: >= -100m and <= 100m }), "An offer has bags, a cost above 0 and points up to 100.", nameof(Offers));
        Rule.Require(Limits.Budget.All(budget => budget is null or >= 0m) && Limits is { MostLots: null or >= 0 }, "A limit is 0 or more.", nameof(Limits));
        Rule.Require(Limits.Storage is null || Limits.Storage >= Weight.Zero, "The storage is 0 kg or more.", nameof(Limits));
    }
}

using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>How a plan ended.</summary>
public enum PlanEnd
{
    /// <summary>Proven: no plan within the limits is better.</summary>
    Best = 0,

    /// <summary>Within the limits, and at most its gap from the best; the time was up.</summary>
    WithinGap = 1,

    /// <summary>Nothing can meet the needs within the limits; the conflicts say why.</summary>
    Impossible = 2,

    /// <summary>The time was up before any plan was found.</summary>
    OutOfTime = 3,
}

/// <summary>Bags of an offer that come in one month for one need.</summary>
public sealed record PlanPart(PlanNeed Need, int Month, int Bags);

/// <summary>An offer that the plan buys of, with when it comes and what for.</summary>
public sealed record PlanBuy(PlanOffer Offer, IReadOnlyList<PlanPart> Parts, IReadOnlyList<string> Reasons)
{
    public int Bags => Parts.Sum(part => part.Bags);

    public Weight Weight => Offer.Bag * Bags;

    /// <summary>Landed, not rounded.</summary>
    public decimal Cost => Weight.Kilograms * Offer.CostPerKilogram;
}

/// <summary>An offer that the plan leaves, and why.</summary>
public sealed record PlanLeft(PlanOffer Offer, string Reason);

/// <summary>Which offers to buy of, how many bags, and when they come.</summary>
/// <param name="Gap">By how much of its worth a better plan could at most be better; 0 when proven best, null without a plan.</param>
/// <param name="Conflicts">What stands against each other where nothing meets the needs; each a sentence.</param>
public sealed record PurchasePlan(PlanRequest Request, PlanEnd End, IReadOnlyList<PlanBuy> Buys, IReadOnlyList<PlanLeft> Left, double? Gap, TimeSpan Took, IReadOnlyList<string> Conflicts)
{
    public decimal Cost => Buys.Sum(buy => buy.Cost);

    public Weight Weight => Buys.Aggregate(Weight.Zero, (sum, buy) => sum + buy.Weight);

    /// <summary>Mean points of a kilogram; null where nothing is bought.</summary>
    public decimal? Points => Weight > Weight.Zero ? Buys.Sum(buy => buy.Weight.Kilograms * buy.Offer.Points) / Weight.Kilograms : null;

    /// <summary>What was made as small as possible.</summary>
    public double Worth => Buys.Sum(buy => (double)buy.Weight.Kilograms * Request.Worth(buy.Offer));

    public decimal CostOf(int month) => Buys.Sum(buy => buy.Parts.Where(part => part.Month == month).Sum(part => part.Bags * buy.Offer.Bag.Kilograms * buy.Offer.CostPerKilogram));

    public Weight Coming(PlanNeed need, int month) => Buys.Aggregate(Weight.Zero, (sum, buy) => sum + (buy.Offer.Bag * buy.Parts.Where(part => part.Month == month && part.Need == need).Sum(part => part.Bags)));
}

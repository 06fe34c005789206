using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Costs;

/// <summary>So many kilograms of a lot on a day.</summary>
public readonly record struct WeightOn(DateOnly On, Weight Weight);

/// <summary>
/// When the kilograms of a lot landed and when they were gone: what a bill of a day is held against. Transfers between
/// warehouses and what a count found beyond the papers are neither: they bear no cost.
/// </summary>
/// <param name="Landed">As weighed on arrival, and opening stock; what is taken back is left out.</param>
/// <param name="Gone">Released, sampled, sold or lost; below zero for what was returned.</param>
public sealed record LotFlow(IReadOnlyList<WeightOn> Landed, IReadOnlyList<WeightOn> Gone)
{
    public static LotFlow None { get; } = new([], []);

    public Weight LandedWeight => Sum(Landed);

    /// <summary>Gone by the end of a day; never more than landed.</summary>
    public Weight GoneBy(DateOnly on)
    {
        var (gone, landed) = (Sum(Gone.Where(one => one.On <= on)), LandedWeight);
        return gone < Weight.Zero ? Weight.Zero : gone < landed ? gone : landed;
    }

    /// <summary>
    /// What of a part of a bill fell on kilograms that were gone by the end of the day of the bill; the rest re-values what
    /// was there or still to come (handbook, trade 9.2). All of it stays where nothing was gone yet.
    /// </summary>
    /// <param name="part">Below zero for a credit.</param>
    public Money LateOf(Money part, DateOnly billedOn)
    {
        var (gone, landed) = (GoneBy(billedOn), LandedWeight);
        return gone > Weight.Zero ? part.SecondOf((landed - gone).Kilograms, gone.Kilograms) : Money.Zero(part.Currency);
    }

    /// <summary>
    /// What of a part of a posting belongs to the accounting cost: nothing of finance, of storage what fell on days before
    /// each kilogram landed, of anything else all (IAS 2.10 and 2.16, IAS 23, from memory; handbook, trade 3.3 and 9.1). Where
    /// the bill does not say which days it covers, its own day decides.
    /// </summary>
    public Money AccountingOf(Money part, CostPosting posting)
    {
        ArgumentNullException.ThrowIfNull(posting);
        return posting.MayBeAccounting switch
        {
            true => part,
            false => Money.Zero(part.Currency),
            null => Before(part, posting.Covers ?? new CoveredDays(posting.On, posting.On)),
        };
    }

    /// <summary>By kilograms and days; all of it while nothing landed.</summary>
    private Money Before(Money part, CoveredDays covers)
    {
        var before = Landed.Sum(one => one.Weight.Kilograms * covers.Before(one.On));
        var whole = LandedWeight.Kilograms * covers.Days;
        return whole > 0m ? part.SecondOf(whole - before, before) : part;
    }

    private static Weight Sum(IEnumerable<WeightOn> weights) => weights.Aggregate(Weight.Zero, (sum, one) => sum + one.Weight);
}

using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>How far what is fixed of a price lies from the weight that it is for, once that weight or the last day to fix is known.</summary>
/// <param name="Market">What the fixings are counted in.</param>
/// <param name="Fixed">As it weighs in the market.</param>
/// <param name="Due">The weight to be paid for.</param>
/// <param name="What">What that weight is, in words.</param>
/// <param name="ByLots">Fixed in whole lots, which cannot follow a weight closer than a lot.</param>
public sealed record FixingGap(FuturesMarket Market, Weight Fixed, Weight Due, string What, bool ByLots)
{
    /// <summary>Above zero where too little is fixed.</summary>
    public Weight Under => Due > Fixed ? Due - Fixed : Weight.Zero;

    /// <summary>Above zero where too much is fixed.</summary>
    public Weight Over => Fixed > Due ? Fixed - Due : Weight.Zero;

    /// <summary>In lots of the market, unrounded.</summary>
    public decimal Lots => PriceTerms.LotsOf(Market, Under + Over);

    /// <summary>Something can be done about it: whole lots leave less than one of them over by their nature.</summary>
    public bool IsFlagged => !ByLots || Lots >= 1m;

    public string Sentence => string.Create(
        CultureInfo.InvariantCulture,
        $"{(Under > Weight.Zero ? "Under" : "Over")}-fixed by {(Under + Over).Kilograms:#,0.###} kg, {Lots:#,0.00##} lots of {Market.Root()}: {Fixed.Kilograms:#,0.###} kg are fixed, {Due.Kilograms:#,0.###} kg {What}.{(IsFlagged ? "" : " Whole lots come no closer than a lot.")}");

    /// <summary>
    /// Null for an outright price, where both are equal, and while more is to be shipped, what is on board is fixed and the last sensible day has not passed.
    /// </summary>
    /// <param name="contract">Whole.</param>
    /// <param name="progress">What of it is on board and received.</param>
    /// <param name="arrivals">Of its parts, none of other contracts.</param>
    /// <param name="task">What is still to be fixed.</param>
    public static FixingGap? Between(Contract contract, ContractProgress progress, IEnumerable<Arrival> arrivals, FixingTask? task)
    {
        ArgumentNullException.ThrowIfNull(contract);
        ArgumentNullException.ThrowIfNull(progress);
        if (contract is not { IsSigned: true, Position: { } position })
        {
            return null;
        }

        var (due, what) = DueOf(contract, progress, arrivals, position);
        if (due is null && task is { IsPast: true })
        {
            (due, what) = (position.ToFix, $"were to be fixed by {task.Last.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}");
        }

        return due is { } weight && weight != position.Fixed ? new FixingGap(position.Market, position.Fixed, weight, what, contract.Terms.Price.MarketLots is not null) : null;
    }

    /// <summary>Null while more is to be shipped and what is on board is covered by fixings.</summary>
    private static (Weight? Due, string What) DueOf(Contract contract, ContractProgress progress, IEnumerable<Arrival> arrivals, FixingPosition position)
    {
        var shipped = progress.Lots.Aggregate(Weight.Zero, (sum, lot) => sum + lot.Shipped);
        var isAll = progress.IsShippedInFull || contract.Goods is GoodsState.Shipped or GoodsState.Arrived or GoodsState.Closed;
        if (shipped == Weight.Zero && isAll && !position.IsFixed)
        {
            return (position.ToFix, "were to be fixed and the coffee has shipped");
        }

        if (shipped == Weight.Zero || (!isAll && shipped <= position.Fixed))
        {
            return (null, "");
        }

        if (isAll && progress.IsReceived && contract.Terms.Weights.Basis == WeightBasis.Landed)
        {
            return (arrivals.Aggregate(Weight.Zero, (sum, arrival) => sum + arrival.Landed), "landed");
        }

        return (shipped, isAll ? "were shipped" : "are on board already");
    }
}

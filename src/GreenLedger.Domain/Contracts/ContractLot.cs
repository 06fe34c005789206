using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Contracts;

/// <summary>
/// A lot on a contract by the terms in force, or of the draft while nothing is signed. Shipments and arrivals stand against it.
/// </summary>
public sealed class ContractLot
{
    private ContractLot()
    {
    }

    internal ContractLot(ContractedLot line, Id<Decision>? decisionId)
    {
        Id = Id<ContractLot>.New();
        LotId = line.LotId;
        DecisionId = decisionId;
        Take(line);
    }

    public Id<ContractLot> Id { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>The decision to buy that it follows; null where it was put on the contract without one.</summary>
    public Id<Decision>? DecisionId { get; private set; }

    public int Bags { get; private set; }

    public Weight BagWeight { get; private set; }

    public Weight Net => BagWeight * Bags;

    /// <summary>The day that it was received before this ledger began; null for what this ledger has seen.</summary>
    public DateOnly? ReceivedOn { get; private set; }

    /// <summary>As weighed then; null likewise.</summary>
    public Weight? Received { get; private set; }

    /// <summary>What a received kilogram had cost then, in the house currency; null where it is not known.</summary>
    public PricePerWeight? LandedCost { get; private set; }

    /// <summary>Points as the house wrote them down then, on whatever form: nothing is decided by them.</summary>
    public Score? EarlierScore { get; private set; }

    internal void Recall(ReceivedBefore received) => (ReceivedOn, Received, LandedCost, EarlierScore) = (received.On, received.Weight, received.LandedCost, received.Score);

    internal void Take(ContractedLot line) => (Bags, BagWeight) = (line.Bags, line.BagWeight);
}

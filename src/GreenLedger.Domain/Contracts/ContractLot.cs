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

    internal void Take(ContractedLot line) => (Bags, BagWeight) = (line.Bags, line.BagWeight);
}

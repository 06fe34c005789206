using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Shipments;

/// <summary>A lot of a contract on a shipment, with its bags and net weight by the shipping papers.</summary>
public sealed class ShipmentLot
{
    private ShipmentLot()
    {
    }

    internal ShipmentLot(Id<Contract> contractId, ContractLot line, int bags, Weight net)
    {
        Id = Id<ShipmentLot>.New();
        ContractId = contractId;
        ContractLotId = line.Id;
        LotId = line.LotId;
        Weigh(bags, net);
    }

    public Id<ShipmentLot> Id { get; private set; }

    public Id<Contract> ContractId { get; private set; }

    public Id<ContractLot> ContractLotId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public int Bags { get; private set; }

    /// <summary>As shipped.</summary>
    public Weight Net { get; private set; }

    internal void Weigh(int bags, Weight net) => (Bags, Net) = (bags, net);
}

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

    /// <summary>The day on board that its contract was told of; null while it was not, or since its figures were put right.</summary>
    public DateOnly? BoardedOn { get; private set; }

    /// <summary>It went on board without the approval that the contract asks for; a later approval does not change that.</summary>
    public bool IsUnapproved { get; private set; }

    internal void Weigh(int bags, Weight net)
    {
        if ((bags, net) != (Bags, Net))
        {
            BoardedOn = null;
        }

        (Bags, Net) = (bags, net);
    }

    internal void Board(DateOnly on, bool isUnapproved) => (BoardedOn, IsUnapproved) = (on, IsUnapproved || isUnapproved);
}

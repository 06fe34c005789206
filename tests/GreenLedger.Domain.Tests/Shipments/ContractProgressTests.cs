using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Tests.Contracts;

namespace GreenLedger.Domain.Tests.Shipments;

/// <summary>550 bags of 69 kg, 37,950 kg, with a tolerance of 3 %: shipped in parts.</summary>
public sealed class ContractProgressTests
{
    private static readonly DateOnly OnBoard = new(2027, 3, 3);

    [Fact]
    public void A_part_leaves_the_rest_in_bags_and_kilograms()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright, bags: 550);

        var progress = Progress(contract, Sailed(contract, "S27-001", 275, 18_975m), Loaded(contract, "S27-002", 100, 6_900m));

        // Handbook, trade 8: 275 bags of 69 kg are 18,975 kg; worked by hand: 37,950 - 18,975 = 18,975.
        var lot = progress.Lots.Single();
        Assert.Equal((275, 18_975m, 275, 18_975m), (lot.ShippedBags, lot.Shipped.Kilograms, lot.BagsLeft, lot.Left.Kilograms));
        Assert.Equal((100, 6_900m), (lot.AnnouncedBags, lot.Announced.Kilograms));
        Assert.False(progress.IsShippedInFull);
    }

    [Theory] // handbook, trade, check value 67: 3 % of 18,975 kg reach from 18,405.75 to 19,544.25 kg
    [InlineData(18_405.75, true, false)]
    [InlineData(18_405.74, false, false)]
    [InlineData(19_544.25, true, false)]
    [InlineData(19_544.26, true, true)]
    public void Within_the_tolerance_it_is_shipped_in_full(double kilograms, bool isInFull, bool isOver)
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright, bags: 275);

        var lot = Progress(contract, Sailed(contract, "S27-001", 270, (decimal)kilograms)).Lots.Single();

        Assert.Equal((isInFull, isOver), (lot.IsShippedInFull, lot.IsOver));
        Assert.Equal(isInFull ? (0, 0m) : (5, 18_975m - (decimal)kilograms), (lot.BagsLeft, lot.Left.Kilograms));
    }

    [Fact]
    public void The_goods_follow_the_shipments_from_part_shipped_to_shipped()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright, bags: 550);
        var first = Sailed(contract, "S27-001", 275, 18_975m);
        var second = Sailed(contract, "S27-002", 275, 18_960m, OnBoard.AddDays(20));

        Board(first, contract);
        Assert.Equal((GoodsState.PartShipped, OnBoard), (contract.Goods, contract.ShippedOn));
        Board(first, contract);
        Assert.Equal(2, contract.Moves.Count);
        Board(second, contract, first);

        Assert.Equal((GoodsState.Shipped, OnBoard.AddDays(20)), (contract.Goods, contract.ShippedOn));
        Assert.Contains("on board since", ContractDemo.Refusal(() => contract.Ship(OnBoard, null, ContractDemo.Buyer, ContractDemo.Now)), StringComparison.Ordinal);
    }

    [Fact]
    public void Papers_put_right_tell_the_contract_again()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright, bags: 275);
        var shipment = Sailed(contract, "S27-001", 275, 18_975m);
        Board(shipment, contract);

        shipment.Carry(contract, contract.Lots[0].Id, 200, Weight.FromKilograms(13_800m));
        Board(shipment, contract);

        Assert.Equal(GoodsState.PartShipped, contract.Goods);
        Assert.Contains("do not take it off", ContractDemo.Refusal(() => shipment.Carry(contract, contract.Lots[0].Id, 0, default)), StringComparison.Ordinal);
        Assert.Contains("do not empty it", ContractDemo.Refusal(() => shipment.Sail(ShipmentTests.Passage(null))), StringComparison.Ordinal);
        contract.ShipNoMore(OnBoard.AddDays(30), "The mill had no more of this lot.", ContractDemo.Buyer, ContractDemo.Now);
        Assert.Equal((GoodsState.Shipped, OnBoard), (contract.Goods, contract.ShippedOn));
    }

    [Fact]
    public void A_contract_entered_as_shipped_by_hand_is_not_told_twice_and_a_closed_one_not_at_all()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright, bags: 275);
        var shipment = Sailed(contract, "S27-001", 275, 18_975m);
        contract.Ship(OnBoard, null, ContractDemo.Buyer, ContractDemo.Now);

        Board(shipment, contract);
        Assert.Equal((2, OnBoard), (contract.Moves.Count, shipment.Lots[0].BoardedOn));
        contract.Arrive(OnBoard.AddDays(30), null, ContractDemo.Buyer, ContractDemo.Now);
        contract.Close(OnBoard.AddDays(40), null, ContractDemo.Buyer, ContractDemo.Now);
        shipment.Sail(ShipmentTests.Passage(OnBoard.AddDays(1)));
        Board(shipment, contract);

        Assert.Equal(GoodsState.Closed, contract.Goods);
    }

    [Fact]
    public void Without_an_approval_it_needs_a_reason_and_never_counts_as_approved()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright, new ApprovalTerms(ApprovalRule.Replace, 3, null), bags: 550);
        var shipment = Sailed(contract, "S27-001", 275, 18_975m);

        Assert.Contains("say what happened", ContractDemo.Refusal(() => Board(shipment, contract)), StringComparison.Ordinal);
        shipment.Board(contract, [], "The vessel was early.", ContractDemo.Buyer, ContractDemo.Now);

        Assert.True(contract.Moves[^1].IsBreach);
        Assert.True(shipment.Lots[0].IsUnapproved);
        Assert.True(contract.AwaitsApproval);
        Assert.True(contract.LacksApproval(contract.Lots[0].LotId));
    }

    private static ContractProgress Progress(Contract contract, params Shipment[] shipments) => ContractProgress.Of(contract, shipments, new HashSet<Id<ShipmentLot>>());

    private static void Board(Shipment shipment, Contract contract, params Shipment[] others) => shipment.Board(contract, others, null, ContractDemo.Buyer, ContractDemo.Now);

    private static Shipment Sailed(Contract contract, string @ref, int bags, decimal net, DateOnly? on = null) => Carrying(contract, new Shipment(@ref, ShipmentTests.Passage(on ?? OnBoard)), bags, net);

    private static Shipment Loaded(Contract contract, string @ref, int bags, decimal net) => Carrying(contract, new Shipment(@ref, ShipmentTests.Passage(null)), bags, net);

    private static Shipment Carrying(Contract contract, Shipment shipment, int bags, decimal net)
    {
        shipment.Carry(contract, contract.Lots[0].Id, bags, Weight.FromKilograms(net));
        return shipment;
    }
}

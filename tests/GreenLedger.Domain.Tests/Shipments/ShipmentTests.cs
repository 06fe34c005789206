using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Tests.Contracts;

namespace GreenLedger.Domain.Tests.Shipments;

public sealed class ShipmentTests
{
    [Fact]
    public void A_contract_is_shipped_in_two_parts_and_each_weighs_its_own()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright, bags: 550);
        var first = Loaded(contract, 275, 18_975m);
        var second = Loaded(contract, 275, 18_960m);

        // Handbook, trade 8: 275 bags of 69 kg are 18,975 kg.
        Assert.Equal((Weight.FromKilograms(18_975m), Weight.FromKilograms(18_960m)), (first.Net, second.Net));
        Assert.Equal(first.Lots.Single().ContractLotId, second.Lots.Single().ContractLotId);
    }

    [Theory]
    [InlineData("2027-03-31", 0)]
    [InlineData("2027-04-03", 3)]
    public void Late_is_counted_from_the_last_day_of_the_contracts_period(string onBoard, int late)
    {
        var contract = ContractDemo.Signed();

        // Handbook, trade 4.2 and check value 40: days on board after the end of the period, here 31 March 2027.
        Assert.Equal(late, new Shipment("S27-001", Passage(Day(onBoard))).DaysLate(contract.ShipUntil));
        Assert.Null(new Shipment("S27-002", Passage(null)).DaysLate(contract.ShipUntil));
    }

    [Fact]
    public void A_lot_of_a_draft_is_not_shipped()
    {
        var draft = ContractDemo.Draft();

        var refusal = ContractDemo.Refusal(() => new Shipment("S27-001", Passage(null)).Carry(draft, draft.Lots[0].Id, 10, Weight.FromKilograms(690m)));

        Assert.Equal("Contract P26-001 is draft: only lots of a signed, open contract are shipped.", refusal);
    }

    [Fact]
    public void No_bags_take_a_lot_off_again()
    {
        var contract = ContractDemo.Signed();
        var shipment = Loaded(contract, 275, 18_975m);

        shipment.Carry(contract, contract.Lots[0].Id, 0, default);

        Assert.Empty(shipment.Lots);
    }

    [Fact]
    public void A_container_with_a_wrong_check_digit_is_kept_and_told()
    {
        var shipment = new Shipment("S27-001", Passage(null));

        shipment.Load([("CSQU3054383", "SL1"), ("MSKU 012345 6", null)]);

        // ISO 6346 by handbook, trade 5.3: the first is valid, the second should end in 9.
        Assert.Null(shipment.Containers[0].Doubt);
        Assert.Contains("should be 9", shipment.Containers[1].Doubt, StringComparison.Ordinal);
        Assert.Throws<RuleBrokenException>(() => shipment.Load([("CSQU3054383", null), ("csqu3054383", null)]));
    }

    [Fact]
    public void Days_stand_in_the_order_in_which_they_happen()
    {
        Assert.Contains("discharged before", ContractDemo.Refusal(() => _ = new Shipment("S", Passage(Day("2027-03-10")) with { DischargedOn = Day("2027-03-09") })), StringComparison.Ordinal);
        Assert.Contains("day on board first", ContractDemo.Refusal(() => _ = new Shipment("S", Passage(null) with { DischargedOn = Day("2027-03-09") })), StringComparison.Ordinal);
        Assert.Contains("UN/LOCODE", ContractDemo.Refusal(() => _ = new Shipment("S", Passage(null) with { PortOfLoading = "Cartagena" })), StringComparison.Ordinal);
    }

    internal static Passage Passage(DateOnly? shippedOn) => new("BL-77", "Linnet", "012E", "COCTG", "DEHAM", null, null, shippedOn, null, null);

    internal static Shipment Loaded(Contract contract, int bags, decimal net, DateOnly? shippedOn = null)
    {
        var shipment = new Shipment("S27-001", Passage(shippedOn));
        shipment.Carry(contract, contract.Lots[0].Id, bags, Weight.FromKilograms(net));
        return shipment;
    }

    internal static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", null);
}

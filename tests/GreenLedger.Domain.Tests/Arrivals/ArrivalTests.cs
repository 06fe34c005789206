using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Domain.Tests.Shipments;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class ArrivalTests
{
    private static readonly DateOnly OnBoard = new(2027, 3, 3);
    private static readonly ReceiptCondition Sound = new(0, 0, 0, false, null, true);

    [Fact]
    public void It_keeps_what_was_shipped_beside_what_landed()
    {
        var arrival = Receive(Sailed(), new Receipt(OnBoard.AddDays(30), 274, Weight.FromKilograms(18_790m), Sound with { WetBags = 2, SealIntact = false }, null));

        Assert.Equal((275, 274), (arrival.ShippedBags, arrival.Bags));
        Assert.Equal((18_975m, 18_790m), (arrival.Shipped.Kilograms, arrival.Landed.Kilograms));
        Assert.Equal(["2 wet", "seal broken"], arrival.Condition.Faults());
    }

    [Fact]
    public void More_than_was_shipped_needs_a_reason()
    {
        var more = new Receipt(OnBoard.AddDays(30), 276, Weight.FromKilograms(19_000m), Sound, null);

        var refusal = ContractDemo.Refusal(() => Receive(Sailed(), more));
        var arrival = Receive(Sailed(), more with { Note = "One bag of the lot before was found behind the door." });

        Assert.StartsWith("More came than the 275 bags and 18,975 kg that were shipped: say why", refusal, StringComparison.Ordinal);
        Assert.Equal(276, arrival.Bags);
    }

    [Fact]
    public void Nothing_is_received_before_it_was_on_board()
    {
        var receipt = new Receipt(OnBoard.AddDays(-1), 275, Weight.FromKilograms(18_975m), Sound, null);

        Assert.Contains("before it was on board", ContractDemo.Refusal(() => Receive(Sailed(), receipt)), StringComparison.Ordinal);
        Assert.Contains("no day on board yet", ContractDemo.Refusal(() => Receive(ShipmentTests.Loaded(ContractDemo.Signed(), 275, 18_975m), receipt)), StringComparison.Ordinal);
    }

    [Fact]
    public void Samples_of_other_lots_are_not_held_against_it()
    {
        var arrival = Receive(Sailed(), new Receipt(OnBoard, 275, Weight.FromKilograms(18_975m), Sound, null));
        var approved = new Sample(ContractDemo.Lot, SampleKind.PreShipment, "PS1", OnBoard, Weight.FromGrams(500m));
        var other = new Sample(Id<Lot>.New(), SampleKind.Arrival, "AR9", OnBoard, Weight.FromGrams(500m));

        Assert.Contains("another lot", ContractDemo.Refusal(() => arrival.Compare(approved, other)), StringComparison.Ordinal);
        Assert.Contains("against itself", ContractDemo.Refusal(() => arrival.Compare(approved, approved)), StringComparison.Ordinal);
        arrival.Compare(approved, null);
        Assert.Equal(approved.Id, arrival.ApprovedSampleId);
    }

    private static Shipment Sailed() => ShipmentTests.Loaded(ContractDemo.Signed(), 275, 18_975m, OnBoard);

    private static Arrival Receive(Shipment shipment, Receipt receipt) => new(shipment, shipment.Lots[0].Id, receipt, ContractDemo.Buyer, ContractDemo.Now);
}

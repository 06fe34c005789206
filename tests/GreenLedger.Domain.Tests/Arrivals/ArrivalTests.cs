using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
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

    [Fact]
    public void A_correction_keeps_the_receipt_as_it_stood_with_the_reason()
    {
        var shipment = Sailed();
        var first = new Receipt(OnBoard.AddDays(30), 274, Weight.FromKilograms(18_790m), Sound with { WetBags = 2 }, null);
        var arrival = Receive(shipment, first);
        var right = first with { Landed = Weight.FromKilograms(18_970m), TenthsOfCelsius = 215, Humidity = Percent.Of(58m) };

        arrival.Correct(shipment, right, "Two digits stood the wrong way round.", ContractDemo.Buyer, ContractDemo.Now);

        Assert.Equal(right, arrival.Receipt);
        var earlier = Assert.Single(arrival.Earlier);
        Assert.Equal((1, first, "Two digits stood the wrong way round."), (earlier.Number, earlier.Was, earlier.Reason));
        Assert.Equal(1, arrival.Corrections);
    }

    [Fact]
    public void A_correction_without_a_reason_or_a_change_is_refused_and_changes_nothing()
    {
        var shipment = Sailed();
        var first = new Receipt(OnBoard.AddDays(30), 274, Weight.FromKilograms(18_790m), Sound, null);
        var arrival = Receive(shipment, first);

        Assert.Contains("reason for the correction is missing", Refusal(first with { Bags = 275 }, " "), StringComparison.Ordinal);
        Assert.Contains("Nothing differs", Refusal(first, "None."), StringComparison.Ordinal);
        Assert.Contains("before it was on board", Refusal(first with { On = OnBoard.AddDays(-1) }, "Wrong day."), StringComparison.Ordinal);
        Assert.Contains("say why in the note", Refusal(first with { Bags = 276 }, "Counted again."), StringComparison.Ordinal);
        Assert.Equal(first, arrival.Receipt);
        Assert.Empty(arrival.Earlier);

        string Refusal(Receipt receipt, string reason) => ContractDemo.Refusal(() => arrival.Correct(shipment, receipt, reason, ContractDemo.Buyer, ContractDemo.Now));
    }

    [Fact]
    public void Faults_are_counted_in_bags_where_somebody_counted_them()
    {
        var receipt = new Receipt(OnBoard, 275, Weight.FromKilograms(18_975m), new ReceiptCondition(2, 1, 3, false, "diesel", false, InfestedBags: 4, OdourBags: 5), null);

        var arrival = Receive(Sailed(), receipt);

        Assert.Equal(["2 wet", "1 torn", "3 stained", "4 infested", "5 with odour: diesel", "seal broken"], arrival.Condition.Faults());
        Assert.True(arrival.IsInfested);
    }

    [Theory]
    [InlineData(276, 0, null, null, "InfestedBags")]
    [InlineData(0, 3, null, null, "Odour")]
    [InlineData(0, 0, 801, null, "Temperature")]
    [InlineData(0, 0, null, 101, "Humidity")]
    public void What_cannot_have_been_found_is_refused_with_its_field(int infested, int odour, int? tenths, int? humidity, string field)
    {
        var receipt = new Receipt(
            OnBoard, 275, Weight.FromKilograms(18_975m), new ReceiptCondition(0, 0, 0, false, null, null, infested, odour), null, tenths, humidity is { } share ? Percent.Of(share) : null);

        Assert.Equal(field, Assert.Throws<RuleBrokenException>(() => Receive(Sailed(), receipt)).Field);
    }

    [Fact]
    public void The_sample_approved_on_record_is_proposed_and_a_refused_one_never_is()
    {
        var contract = ContractDemo.Signed(approval: new ApprovalTerms(ApprovalRule.Replace, 3, null));
        Sample refused = PreShipment("PS1", 1), approved = PreShipment("PS2", 5), later = PreShipment("PS3", 9);

        Assert.Same(later, Arrival.Approved(contract, ContractDemo.Lot, [refused, approved, later]));
        contract.Judge(refused, ApprovalVerdict.Refused, "Past crop notes.", ContractDemo.Today, ContractDemo.Buyer, ContractDemo.Now);
        Assert.Null(Arrival.Approved(contract, ContractDemo.Lot, [refused]));
        contract.Judge(approved, ApprovalVerdict.Approved, null, ContractDemo.Today, ContractDemo.Buyer, ContractDemo.Now);
        Assert.Same(approved, Arrival.Approved(contract, ContractDemo.Lot, [refused, approved, later]));

        static Sample PreShipment(string code, int day) => new(ContractDemo.Lot, SampleKind.PreShipment, code, new DateOnly(2026, 11, day), Weight.FromGrams(500m));
    }

    private static Shipment Sailed() => ShipmentTests.Loaded(ContractDemo.Signed(), 275, 18_975m, OnBoard);

    private static Arrival Receive(Shipment shipment, Receipt receipt) => new(shipment, shipment.Lots[0].Id, receipt, ContractDemo.Buyer, ContractDemo.Now);
}

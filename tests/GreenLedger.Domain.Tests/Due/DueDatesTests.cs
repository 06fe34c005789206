using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Domain.Tests.Shipments;

namespace GreenLedger.Domain.Tests.Due;

public sealed class DueDatesTests
{
    private static readonly DateOnly OnBoard = new(2026, 2, 3);
    private static readonly DateOnly Discharged = new(2026, 3, 3);
    private static readonly HashSet<Id<ShipmentLot>> Nothing = [];

    [Fact]
    public void An_approval_is_due_by_its_day_or_the_end_of_the_shipment_period()
    {
        var day = new DateOnly(2027, 1, 15);

        Assert.Equal(day, DueDates.Approval(Signed(new ApprovalTerms(ApprovalRule.Replace, 3, day))).Single().On);
        Assert.Equal(new DateOnly(2027, 3, 31), DueDates.Approval(Signed(new ApprovalTerms(ApprovalRule.Replace, 3, null))).Single().On);
        Assert.Empty(DueDates.Approval(Signed(new ApprovalTerms(ApprovalRule.None, null, null))));
    }

    [Fact]
    public void A_contract_is_due_to_ship_what_is_left_until_it_is_shipped_in_full()
    {
        var contract = Signed();
        var half = Sailed(contract, 275, 18_975m);
        half.Board(contract, [], null, ContractDemo.Buyer, ContractDemo.Now);

        // Worked by hand: 550 - 275 bags of 69 kg.
        Assert.Equal("ship 275 bags, 18,975 kg, of P26-001", DueDates.Shipment(contract, ContractProgress.Of(contract, [half], Nothing)).Single().What);
        Assert.Empty(DueDates.Shipment(contract, ContractProgress.Of(contract, [half, Sailed(contract, 275, 18_975m)], Nothing)));
    }

    [Fact]
    public void Documents_are_due_some_days_after_the_day_on_board_while_any_is_missing()
    {
        var shipment = Sailed(Signed(), 275, 18_975m);
        var bill = shipment.AddDocument("Bill of lading").Id;

        var line = DueDates.Documents(shipment, new DueHabits()).Single();
        shipment.Document(bill, DocumentState.Received, OnBoard, null);

        Assert.Equal((new DateOnly(2026, 2, 17), "S27-001 lacks bill of lading"), (line.On, line.What)); // worked by hand: 3 February and 14 days, which are common practice, no source
        Assert.Empty(DueDates.Documents(shipment, new DueHabits()));
    }

    [Fact]
    public void A_lot_is_due_to_be_received_after_discharge_and_to_be_cupped_after_receipt()
    {
        var shipment = Sailed(Signed(), 275, 18_975m);
        var arrival = Receive(shipment);

        Assert.Equal(new DateOnly(2026, 3, 10), DueDates.Receipts(shipment, Nothing, _ => "CA-17", new DueHabits()).Single().On); // worked by hand: 3 March and 7 days, which are common practice, no source
        Assert.Empty(DueDates.Receipts(shipment, new HashSet<Id<ShipmentLot>> { shipment.Lots[0].Id }, _ => "CA-17", new DueHabits()));
        Assert.Equal(new DateOnly(2026, 3, 12), DueDates.Cupping(arrival, "CA-17", new DueHabits()).On); // worked by hand: 5 March and 7 days, likewise
    }

    [Fact]
    public void Last_days_of_claims_run_from_discharge_and_are_gone_a_week_after_they_passed()
    {
        var shipment = Sailed(Signed(), 275, 18_975m);
        var arrival = Receive(shipment);
        var form = ContractDemo.Terms().Form;

        var lines = DueDates.Claims(arrival, shipment, form, [], "CA-17", Discharged).ToList();

        // Handbook, trade, check value 36: discharge on 3 March 2026, quality until the 31st, technical claims until 17 April.
        Assert.Equal([new DateOnly(2026, 3, 31), new DateOnly(2026, 4, 17)], lines.Select(line => line.On));
        Assert.Equal(2, lines.Select(line => line.Key).Distinct().Count());
        Assert.Single(DueDates.Claims(arrival, shipment, form, [], "CA-17", new DateOnly(2026, 4, 8)));
        Assert.Empty(DueDates.Claims(arrival, shipment, form, [], "CA-17", new DateOnly(2026, 4, 25)));
    }

    /// <summary>Handbook, trade, check value 36: discharge on 3 March 2026, weighing until the 24th, quality until the 31st, technical claims until 17 April.</summary>
    [Fact]
    public void What_is_discharged_and_not_received_shows_the_last_days_to_weigh_and_to_claim()
    {
        var shipment = Sailed(Signed(), 275, 18_975m);
        var form = ContractDemo.Terms().Form;

        var lines = DueDates.BeforeReceipt(shipment.Lots[0], "CA-17", shipment, form, Discharged).ToList();

        Assert.Equal([new DateOnly(2026, 3, 24), new DateOnly(2026, 3, 31), new DateOnly(2026, 4, 17)], lines.Select(line => line.On));
        Assert.Equal("deadline to weigh, not received yet: CA-17, shipment S27-001", lines[0].What);
        Assert.Equal(3, lines.Select(line => line.Key).Append(DueDates.Receipts(shipment, Nothing, _ => "CA-17", new DueHabits()).Single().Key).Distinct().Count() - 1);
        Assert.Equal(2, DueDates.BeforeReceipt(shipment.Lots[0], "CA-17", shipment, form, new DateOnly(2026, 4, 1)).Count()); // a week after the 24th weighing is gone
        shipment.Sail(ShipmentTests.Passage(OnBoard) with { DischargedOn = null });
        Assert.Empty(DueDates.BeforeReceipt(shipment.Lots[0], "CA-17", shipment, form, Discharged));
    }

    /// <summary>Handbook, trade, check value 37: discharged on 3 March 2026, cleared on the 9th, 15 days: 24 March.</summary>
    [Fact]
    public void Where_the_contract_says_so_a_quality_claim_runs_from_clearance_once_that_is_later()
    {
        var form = ContractDemo.Terms().Form with { QualityClaimDays = 15, QualityFromClearance = true };
        var shipment = Sailed(Signed(), 275, 18_975m);
        var arrival = Receive(shipment);

        var before = DueDates.Claims(arrival, shipment, form, [], "CA-17", Discharged).First();
        var open = ClaimTimes.Of(form, shipment, [ClaimGround.Cup], Discharged, new DateOnly(2026, 3, 25)).Single();
        shipment.Sail(ShipmentTests.Passage(OnBoard) with { DischargedOn = Discharged, ClearedOn = new DateOnly(2026, 3, 9) });
        var after = DueDates.Claims(arrival, shipment, form, [], "CA-17", Discharged).First();
        var time = ClaimTimes.Of(form, shipment, [ClaimGround.Cup], Discharged, new DateOnly(2026, 3, 25)).Single();

        Assert.Equal((new DateOnly(2026, 3, 18), new DateOnly(2026, 3, 24)), (before.On, after.On)); // until it is cleared the earlier day is the safe one
        Assert.Equal((null, false), (open.LastDay, open.IsLate())); // no claim is late while the day of clearance is not known
        Assert.Equal(("discharge or clearance, whichever is later", true), (time.From, time.IsLate()));
        Assert.Equal(new DateOnly(2026, 4, 17), DueDates.Claims(arrival, shipment, form, [], "CA-17", Discharged).Last().On); // 45 days from discharge: check value 36
    }

    [Fact]
    public void The_house_says_how_long_a_deadline_is_shown_after_it_passed()
    {
        var (shipment, habits) = (Sailed(Signed(), 275, 18_975m), new DueHabits());
        var (arrival, form) = (Receive(shipment), ContractDemo.Terms().Form);
        habits.Show(30, 14);

        // The quality claim ended on 31 March (check value 36): it is shown until 30 April, and the other one too.
        Assert.Equal(2, DueDates.Claims(arrival, shipment, form, [], "CA-17", new DateOnly(2026, 4, 30), habits).Count());
        Assert.Single(DueDates.Claims(arrival, shipment, form, [], "CA-17", new DateOnly(2026, 5, 1), habits));
        Assert.Contains("between 0 and 365", ContractDemo.Refusal(() => habits.Show(-1, 14)), StringComparison.Ordinal);
    }

    [Fact]
    public void Days_of_the_house_lie_between_none_and_a_year() =>
        Assert.Contains("between 0 and 365", ContractDemo.Refusal(() => new DueHabits().Allow(14, 7, 366, 7)), StringComparison.Ordinal);

    private static Contract Signed(ApprovalTerms? approval = null) => ContractDemo.Signed(ContractDemo.Outright, approval, bags: 550);

    private static Shipment Sailed(Contract contract, int bags, decimal net)
    {
        var shipment = new Shipment("S27-001", ShipmentTests.Passage(OnBoard) with { DischargedOn = Discharged });
        shipment.Carry(contract, contract.Lots[0].Id, bags, Weight.FromKilograms(net));
        return shipment;
    }

    private static Arrival Receive(Shipment shipment) => new(
        shipment, shipment.Lots[0].Id, new Receipt(Discharged.AddDays(2), 275, Weight.FromKilograms(18_900m), new ReceiptCondition(0, 0, 0, false, null, true), null), ContractDemo.Buyer, ContractDemo.Now);
}

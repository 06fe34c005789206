using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Arrivals;

/// <summary>The contract of the handbook's example G (275 bags of 69 kg at 321.65 ¢/lb, shipment in January 2026), of which nothing, a part, or everything is shipped.</summary>
public sealed class MissingGoodsTests
{
    private static readonly DateOnly Day = new(2026, 2, 10);

    [Fact]
    public void What_was_not_on_board_when_the_period_ended_is_claimed_with_its_arithmetic()
    {
        var claim = Open(NotShipped(), new MissingOrder(Day, PricePerWeight.FromCentsPerPound(340m), Paid: Money.Of(1_000m, Currency.Usd), OtherWords: "Freight booked in vain", Other: Money.Of(250m, Currency.Usd)));

        // Worked by hand: 18,975 kg ÷ 0.45359237 are 41,832.714 lb; at 3.40 USD 142,231.23, at 3.2165 USD 134,554.93.
        Assert.Equal([7_676.30m, 1_000m, 250m], claim.Case.Lines.Select(line => line.Amount.Amount));
        Assert.Equal("18,975 kg at 340.00 ¢/lb cost 142,231.23 USD; at the contract's 321.65 ¢/lb they cost 134,554.93 USD", claim.Case.Lines[0].Arithmetic);
        Assert.Equal(Money.Of(8_926.30m, Currency.Usd), claim.Amount);
        Assert.Equal("275 of 275 bags, 18,975 kg of 18,975 kg, were not on board when the shipment period ended on 31 Jan 2026.", Assert.Single(claim.Case.Findings).Sentence);
        Assert.Equal((null, null, "goods not shipped"), ((Id<Arrival>?, Id<Shipment>?, string))(claim.ArrivalId, claim.ShipmentId, claim.Case.Grounds()[0].Word()));
    }

    [Fact]
    public void The_case_holds_terms_amendments_and_notes_and_comes_back_from_its_text()
    {
        var arrival = new ShortArrival();
        arrival.Contract.Amend(arrival.Contract.Terms with { Payment = "Thirty days after arrival" }, "Other payment.", arrival.Buyer.Id, ShortArrival.Now);
        arrival.Contract.Sign(new DateOnly(2025, 12, 1), null, arrival.Buyer.Id, ShortArrival.Now);

        var claim = Open(Of(arrival.Contract, []) with { Notes = [new NotedOn(new DateOnly(2026, 2, 2), PapersOf.Contract, "The seller named no vessel.")] }, new MissingOrder(Day));
        var read = FrozenJson.Read<ClaimCase>(FrozenJson.Write(claim.Case));

        Assert.Equal(FrozenJson.Write(claim.Case), FrozenJson.Write(read));
        Assert.Equal(["Version 1, signed 3 Nov 2025", "Version 2, signed 1 Dec 2025: Other payment."], read.Missing!.Versions);
        Assert.Equal(["2 Feb 2026, on the contract: The seller named no vessel."], read.Missing.Notes);
        Assert.Equal((275, 18_975m, "FOB Cartagena", null), (read.Missing.Bags, read.Missing.Missing.Kilograms, read.Missing.Delivery, claim.Amount));
    }

    // Handbook, trade 4.1: 45 days from the last day of the shipment period for what was not shipped. Month ends and leap years by the
    // Gregorian calendar: 2028 has a 29 February.
    [Theory]
    [InlineData("2026-01-31", "2026-03-17")]
    [InlineData("2028-01-31", "2028-03-16")]
    [InlineData("2028-01-15", "2028-02-29")]
    [InlineData("2026-09-30", "2026-11-14")]
    public void Its_days_run_from_the_end_of_the_shipment_period(string until, string last)
    {
        var goods = Of(new ShortArrival(shipUntil: DateOnly.ParseExact(until, "yyyy-MM-dd", null)).Contract, []);

        Assert.Equal((DateOnly.ParseExact(last, "yyyy-MM-dd", null), true), (goods.Deadline()!.LastDay, goods.Deadline()!.IsFirm));
    }

    [Fact]
    public void A_claim_after_the_last_day_needs_a_reason_and_is_flagged_late()
    {
        var late = new MissingOrder(new DateOnly(2026, 3, 18)); // a day after 17 March: 45 days from 31 January, worked by hand

        Assert.Contains("say why the claim is made all the same", ContractDemo.Refusal(() => Open(NotShipped(), late)), StringComparison.Ordinal);
        Assert.True(Open(NotShipped(), late with { LateReason = "The seller promised a vessel until yesterday." }).IsLate);
        Assert.False(Open(NotShipped(), late with { On = new DateOnly(2026, 3, 17) }).IsLate);
    }

    [Fact]
    public void What_is_not_missing_is_refused_with_a_sentence()
    {
        var arrival = new ShortArrival();
        var received = Of(arrival.Contract, [arrival.Shipment], arrival.Shipment.Lots[0].Id);
        var onTheWay = Of(arrival.Contract, [arrival.Shipment]);
        var part = onTheWay with { Shipment = arrival.Shipment, Part = arrival.Shipment.Lots[0] };

        Assert.Equal("The shipment period runs until 31 Jan 2026: nothing is missing before it has ended.", Refusal(NotShipped(), new DateOnly(2026, 1, 31)));
        Assert.Equal("What is agreed was shipped: open a claim on what came from its arrival.", Refusal(received));
        Assert.Equal("What is agreed was shipped.", Refusal(onTheWay));
        Assert.Equal("This part was received: open the claim from its arrival.", Refusal(part with { IsReceived = true }));
        Assert.Equal("It went on board on 3 Feb 2026: it is not missing before that.", Refusal(part, new DateOnly(2026, 2, 2)));
        Assert.Equal("Choose what did not come.", ContractDemo.Refusal(() => MissingGoods.Chosen([part], null)));
        Assert.Contains("no part of the contract any more", ContractDemo.Refusal(() => MissingGoods.Chosen([part], Guid.Empty)), StringComparison.Ordinal);
        Assert.Equal(part, MissingGoods.Chosen([onTheWay, part], part.Key));
    }

    [Fact]
    public void What_went_on_board_and_was_not_received_is_claimed_of_its_shipment()
    {
        var arrival = new ShortArrival();
        var part = Of(arrival.Contract, [arrival.Shipment]) with { Shipment = arrival.Shipment, Part = arrival.Shipment.Lots[0] };

        var claim = Open(part, new MissingOrder(new DateOnly(2026, 3, 20), Paid: Money.Of(134_554.93m, Currency.Usd)));

        Assert.Equal("275 bags, 18,975 kg, went on board Linnet on 3 Feb 2026, bill of lading BL-77, and were not received by 20 Mar 2026; the ship was discharged on 3 Mar 2026.", claim.Case.Findings[0].Sentence);
        Assert.Equal((arrival.Shipment.Id, new DateOnly(2026, 4, 17)), (claim.ShipmentId, claim.LastDay!.Value)); // handbook, trade, check value 36: other claims until 17 April
        Assert.Contains("Under FOB the risk passed before the voyage", part.Risk, StringComparison.Ordinal); // ICC Incoterms 2020, by handbook, trade 3.1
        Assert.Null(NotShipped().Risk);
    }

    [Fact]
    public void While_the_ship_is_on_its_way_a_claim_says_what_is_known_of_the_loss()
    {
        var arrival = new ShortArrival();
        arrival.Shipment.Sail(new Passage("BL-77", "Linnet", "012E", "COCTG", "DEHAM", null, new DateOnly(2026, 3, 2), new DateOnly(2026, 2, 3), null, null));
        var part = Of(arrival.Contract, [arrival.Shipment]) with { Shipment = arrival.Shipment, Part = arrival.Shipment.Lots[0] };

        Assert.Contains("say what is known of the loss", Refusal(part, new DateOnly(2026, 3, 2)), StringComparison.Ordinal);
        Assert.Equal("The ship ran aground.", Open(part, new MissingOrder(new DateOnly(2026, 3, 2), Words: "The ship ran aground.")).Case.Words);
        Assert.Null(Open(part, new MissingOrder(new DateOnly(2026, 3, 3))).LastDay); // a day after the planned arrival; without discharge no deadline runs
    }

    [Fact]
    public void The_price_of_the_day_is_claimed_only_above_the_contracts_and_with_a_price_to_count_by()
    {
        var unfixed = Of(new ShortArrival(price: ContractDemo.ToBeFixed(1)).Contract, []);
        var order = new MissingOrder(Day, PricePerWeight.FromCentsPerPound(340m));

        Assert.Contains("no difference to claim", ContractDemo.Refusal(() => Open(NotShipped(), order with { Market = PricePerWeight.FromCentsPerPound(321.65m) })), StringComparison.Ordinal);
        Assert.Contains("more than five times", ContractDemo.Refusal(() => Open(NotShipped(), order with { Market = PricePerWeight.Of(340m, Currency.Usd, PriceUnit.Pound) })), StringComparison.Ordinal);
        Assert.Contains("state a provisional price", ContractDemo.Refusal(() => Open(unfixed, order)), StringComparison.Ordinal);
        Assert.Contains("leave the provisional price out", ContractDemo.Refusal(() => Open(NotShipped(), order with { ProvisionalPrice = PricePerWeight.FromCentsPerPound(300m) })), StringComparison.Ordinal);
        Assert.Contains("paid in USD", ContractDemo.Refusal(() => Open(NotShipped(), new MissingOrder(Day, Paid: Money.Of(1m, Currency.Eur)))), StringComparison.Ordinal);
        Assert.Equal(7_676.30m, Open(unfixed, order with { ProvisionalPrice = PricePerWeight.FromCentsPerPound(321.65m) }).Amount!.Value.Amount); // as above
    }

    [Fact]
    public void The_same_goods_are_claimed_once_and_cannot_be_refused()
    {
        var goods = NotShipped();
        var first = Open(goods, new MissingOrder(Day));

        Assert.Equal("Claim C26-001 on these goods names goods not shipped already: go on there.", ContractDemo.Refusal(() => Open(goods, new MissingOrder(Day), first)));
        Assert.Equal("Nothing came that could be refused: choose another outcome.", ContractDemo.Refusal(() => first.Settle(ClaimOutcome.Rejection, null, Day, "Refused.", default, ShortArrival.Now)));
        first.Note(ClaimSide.FromSeller, new DateOnly(2026, 2, 1), "The vessel is delayed.", default, ShortArrival.Now);
        first.Settle(ClaimOutcome.Replacement, null, Day, "Ships in March.", default, ShortArrival.Now);
        Assert.Null(first.Effect);
    }

    [Fact]
    public void It_is_due_until_it_is_claimed_or_the_last_day_is_a_week_past()
    {
        var goods = NotShipped();

        var line = Assert.Single(DueDates.NotShipped(goods.Contract, goods.Progress, [], Day));

        Assert.Equal((DueKind.Missing, new DateOnly(2026, 3, 17), "deadline to claim 18,975 kg of P26-001 that were not shipped"), (line.Kind, line.On, line.What)); // 45 days from 31 January, worked by hand
        Assert.Empty(DueDates.NotShipped(goods.Contract, goods.Progress, [], new DateOnly(2026, 1, 31)));
        Assert.Empty(DueDates.NotShipped(goods.Contract, goods.Progress, [], new DateOnly(2026, 3, 25)));
        Assert.Empty(DueDates.NotShipped(goods.Contract, goods.Progress, [Open(goods, new MissingOrder(Day))], Day));
    }

    private static MissingGoods NotShipped() => Of(new ShortArrival().Contract, []);

    private static MissingGoods Of(Contract contract, IReadOnlyList<Shipment> shipments, params Id<ShipmentLot>[] received)
    {
        var progress = ContractProgress.Of(contract, shipments, received.ToHashSet());
        return MissingGoods.NotShippedOf(contract, progress, progress.Lots[0]);
    }

    private static Claim Open(MissingGoods goods, MissingOrder order, params Claim[] others) => Claim.Open("C26-001", goods, order, others, default, ShortArrival.Now);

    private static string Refusal(MissingGoods goods, DateOnly? on = null) => ContractDemo.Refusal(() => Open(goods, new MissingOrder(on ?? Day)));
}

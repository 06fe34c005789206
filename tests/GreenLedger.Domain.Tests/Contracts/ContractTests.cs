using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Contracts;

public sealed class ContractTests
{
    [Fact]
    public void A_draft_can_be_written_anew_until_it_is_signed_and_never_after()
    {
        var contract = ContractDemo.Draft();

        contract.Redraft(ContractDemo.Terms(bags: 1240), null, ContractDemo.Buyer, ContractDemo.Now);
        contract.Sign(ContractDemo.Today, "Ana Restrepo", ContractDemo.Buyer, ContractDemo.Now);

        Assert.Equal(1240, contract.Terms.Lots[0].Bags);
        Assert.Equal("Version 1 was signed on 25 Nov 2026 and does not change: amend the contract instead.",
            ContractDemo.Refusal(() => contract.Redraft(ContractDemo.Terms(), null, ContractDemo.Buyer, ContractDemo.Now)));
        Assert.Equal(1240, contract.Terms.Lots[0].Bags);
    }

    [Fact]
    public void Signing_twice_is_refused()
    {
        var contract = ContractDemo.Signed();

        var refusal = ContractDemo.Refusal(() => contract.Sign(ContractDemo.Today, null, ContractDemo.Buyer, ContractDemo.Now));

        Assert.Equal("Version 1 was signed on 25 Nov 2026 already: a contract is signed once, then amended.", refusal);
        Assert.Single(contract.Moves);
    }

    [Fact]
    public void An_amendment_holds_once_it_is_signed_and_leaves_what_was_signed_as_it_was()
    {
        var contract = ContractDemo.Signed();
        var lot = Assert.Single(contract.Lots).Id;

        contract.Amend(ContractDemo.Terms(bags: 1200), "Fifty bags were damaged at the mill.", ContractDemo.Buyer, ContractDemo.Now);

        Assert.Equal(1250, contract.Terms.Lots[0].Bags);
        contract.Sign(ContractDemo.Today, null, ContractDemo.Buyer, ContractDemo.Now);
        Assert.Equal((1200, 1250), (contract.Terms.Lots[0].Bags, contract.Versions[0].Terms.Lots[0].Bags));
        Assert.Equal(Weight.FromKilograms(1200 * 69m), contract.NetWeight);
        Assert.Equal(lot, Assert.Single(contract.Lots).Id);
    }

    [Fact]
    public void An_amendment_that_nobody_signed_can_be_dropped()
    {
        var contract = ContractDemo.Signed();
        contract.Amend(ContractDemo.Terms(bags: 1200), "Damage.", ContractDemo.Buyer, ContractDemo.Now);

        contract.DropAmendment();

        Assert.Single(contract.Versions);
        Assert.Contains("every version is signed", ContractDemo.Refusal(contract.DropAmendment), StringComparison.Ordinal);
    }

    [Fact]
    public void The_price_of_a_draft_cannot_be_fixed()
    {
        var contract = ContractDemo.Draft();

        Assert.Contains("sign the contract first", ContractDemo.Refusal(() => contract.Fix(1, 285.40m)), StringComparison.Ordinal);
    }

    [Fact]
    public void Fixings_move_the_price_and_not_the_goods()
    {
        var contract = ContractDemo.Signed();

        contract.Fix(2, 285.40m);
        contract.Fix(1, 279.15m);

        Assert.Equal((PriceState.PartlyFixed, GoodsState.ReadyToShip), (contract.Price, contract.Goods));
        Assert.Equal((ContractDemo.May, FuturesMarket.Arabica.LotWeight() * 2), (contract.OpenMonth, contract.OpenWeight));
        contract.Fix(2, 291.65m);
        Assert.Equal((PriceState.Fixed, null, Weight.Zero), (contract.Price, contract.OpenMonth, contract.OpenWeight));
        Assert.Equal(321.65m, contract.Position!.Final); // handbook, trade 2.3, example A
    }

    [Fact]
    public void More_than_is_open_is_refused_and_changes_nothing()
    {
        var contract = ContractDemo.Signed();
        contract.Fix(4, 285.40m);

        var refusal = ContractDemo.Refusal(() => contract.Fix(2, 279.15m));

        Assert.Equal("Only 1 lot of KC is open: fix less, or amend the contract first.", refusal);
        Assert.Equal((1, PriceState.PartlyFixed), (contract.Fixings.Count, contract.Price));
    }

    [Fact]
    public void Shipped_and_unfixed_is_nothing_unusual()
    {
        var contract = ContractDemo.Signed();

        contract.Ship(new DateOnly(2026, 11, 20), null, ContractDemo.Buyer, ContractDemo.Now);
        contract.Fix(5, 285.40m);

        Assert.Equal((GoodsState.Shipped, PriceState.Fixed), (contract.Goods, contract.Price));
    }

    [Fact] // handbook, trade 2.3, example B: two lots at +35.00, the later month 3.20 above
    public void A_roll_takes_the_spread_from_the_differential_of_what_is_open_alone()
    {
        var contract = ContractDemo.Signed();
        contract.Fix(3, 285.40m);

        contract.Roll(new RollOrder(ContractDemo.Today, ContractDemo.July, 3.20m), ContractDemo.Buyer, ContractDemo.Now);

        Assert.Equal((ContractDemo.July, 31.80m), (contract.OpenMonth, contract.Position!.Differential));
        contract.Fix(2, 290.00m);
        Assert.Equal(320.96m, contract.Position!.Final); // worked by hand: (3 x (285.40 + 35.00) + 2 x (290.00 + 31.80)) / 5
        Assert.Contains("nothing to roll", ContractDemo.Refusal(() => contract.Roll(new RollOrder(ContractDemo.Today, ContractDemo.July, 0m), ContractDemo.Buyer, ContractDemo.Now)), StringComparison.Ordinal);
    }

    [Theory] // worked by hand: 35.00 - (-1.80) = 36.80; a fee of 0.25 on top gives 37.05
    [InlineData(-1.80, 0, 36.80)]
    [InlineData(-1.80, 0.25, 37.05)]
    public void A_later_month_that_trades_lower_raises_the_differential(double spread, double fee, double after) =>
        Assert.Equal((decimal)after, MonthRoll.After(35.00m, (decimal)spread, (decimal)fee));

    [Fact]
    public void A_roll_goes_to_a_later_month_of_the_same_market()
    {
        var contract = ContractDemo.Signed();

        Assert.Contains("later month", ContractDemo.Refusal(() => Roll(contract, FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3))), StringComparison.Ordinal);
        Assert.Contains("another market", ContractDemo.Refusal(() => Roll(contract, FuturesMonth.Of(FuturesMarket.Robusta, 2027, 7))), StringComparison.Ordinal);
        Assert.Empty(contract.Rolls);
    }

    [Fact]
    public void A_fixing_taken_back_stays_on_record_and_opens_the_price_again()
    {
        var contract = ContractDemo.Signed();
        contract.Fix(5, 285.40m);

        contract.TakeBack(1, "Typed on the wrong contract.", ContractDemo.Today, ContractDemo.Buyer, ContractDemo.Now);

        Assert.Equal((PriceState.Unfixed, 5m), (contract.Price, contract.Position!.OpenLots));
        Assert.False(Assert.Single(contract.Fixings).Counts);
        Assert.Contains("no fixing 1 that counts", ContractDemo.Refusal(() => contract.TakeBack(1, "Again.", ContractDemo.Today, ContractDemo.Buyer, ContractDemo.Now)), StringComparison.Ordinal);
    }

    [Fact]
    public void Below_one_lot_a_contract_is_fixed_by_weight()
    {
        var contract = ContractDemo.Signed(ContractDemo.ToBeFixed(lots: null), bags: 100);

        contract.Fix(new FixingOrder(ContractDemo.Today, null, Weight.FromKilograms(2_900m), 285.40m, null), ContractDemo.Buyer, ContractDemo.Now);

        Assert.Equal(Weight.FromKilograms(4_000m), contract.OpenWeight); // worked by hand: 100 x 69 kg - 2,900 kg
        Assert.Contains("Only 4,000 kg are open", ContractDemo.Refusal(() => contract.Fix(new FixingOrder(ContractDemo.Today, null, Weight.FromKilograms(4_001m), 285.40m, null), ContractDemo.Buyer, ContractDemo.Now)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_fixed_holds_an_amendment_to_its_month_and_lots()
    {
        var contract = ContractDemo.Signed();
        contract.Fix(5, 285.40m);

        Assert.Contains("stay as they were signed", ContractDemo.Refusal(() => Amend(contract, ContractDemo.Terms(ContractDemo.ToBeFixed(differential: 30m)))), StringComparison.Ordinal);
        Assert.Contains("only 4 lots of KC are agreed", ContractDemo.Refusal(() => Amend(contract, ContractDemo.Terms(ContractDemo.ToBeFixed(lots: 4), bags: 1_000))), StringComparison.Ordinal);
        Assert.Single(contract.Versions);
    }

    [Fact]
    public void Without_the_approval_that_is_asked_for_shipping_is_a_breach_with_a_reason()
    {
        var contract = ContractDemo.Signed(approval: new ApprovalTerms(ApprovalRule.Replace, 3, null));

        Assert.Equal(GoodsState.AwaitingApproval, contract.Goods);
        Assert.Contains("say what happened", ContractDemo.Refusal(() => contract.Ship(ContractDemo.Today, null, ContractDemo.Buyer, ContractDemo.Now)), StringComparison.Ordinal);
        contract.Ship(ContractDemo.Today, "The vessel was early.", ContractDemo.Buyer, ContractDemo.Now);
        Assert.True(contract.Moves[^1].IsBreach);
    }

    [Fact]
    public void A_contract_closes_when_it_has_arrived_and_is_fixed_and_not_before()
    {
        var contract = ContractDemo.Signed();

        Assert.Contains("cannot go on to “close”", ContractDemo.Refusal(() => Close(contract)), StringComparison.Ordinal);
        contract.Ship(ContractDemo.Today, null, ContractDemo.Buyer, ContractDemo.Now);
        contract.Arrive(ContractDemo.Today, null, ContractDemo.Buyer, ContractDemo.Now);
        Assert.Contains("the price is fixed", ContractDemo.Refusal(() => Close(contract)), StringComparison.Ordinal);
        contract.Fix(5, 285.40m);
        Close(contract);
        Assert.Equal(GoodsState.Closed, contract.Goods);
        Assert.Contains("does not change any more", ContractDemo.Refusal(() => Amend(contract, ContractDemo.Terms())), StringComparison.Ordinal);
    }

    [Fact] // handbook, trade 4.2 and 12 no. 40: 3 August for a July shipment is three days late
    public void Late_is_counted_from_the_end_of_the_shipment_period()
    {
        var terms = ContractDemo.Terms();
        var contract = ContractDemo.Draft();
        contract.Redraft(terms with { Delivery = terms.Delivery with { ShipFrom = new DateOnly(2026, 7, 1), ShipUntil = new DateOnly(2026, 7, 31) } }, null, ContractDemo.Buyer, ContractDemo.Now);
        contract.Sign(new DateOnly(2026, 6, 1), null, ContractDemo.Buyer, ContractDemo.Now);

        contract.Ship(new DateOnly(2026, 8, 3), null, ContractDemo.Buyer, ContractDemo.Now);

        Assert.Equal(3, contract.DaysLate);
    }

    [Fact]
    public void Lots_of_the_market_that_the_coffee_does_not_weigh_are_refused() =>
        Assert.Contains("weigh 5.0706 lots of KC", ContractDemo.Refusal(() => ContractDemo.Draft(ContractDemo.ToBeFixed(lots: 8))), StringComparison.Ordinal);

    private static void Roll(Contract contract, FuturesMonth to) =>
        contract.Roll(new RollOrder(ContractDemo.Today, to, 0m), ContractDemo.Buyer, ContractDemo.Now);

    private static void Amend(Contract contract, ContractTerms terms) => contract.Amend(terms, "Talked over.", ContractDemo.Buyer, ContractDemo.Now);

    private static void Close(Contract contract) => contract.Close(ContractDemo.Today, null, ContractDemo.Buyer, ContractDemo.Now);
}

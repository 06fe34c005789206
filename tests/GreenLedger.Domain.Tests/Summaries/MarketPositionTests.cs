using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Summaries;
using GreenLedger.Domain.Tests.Contracts;

namespace GreenLedger.Domain.Tests.Summaries;

public sealed class MarketPositionTests
{
    private static readonly DateOnly Today = ContractDemo.Today;

    /// <summary>Handbook trade.md 2.3, example A before the third fixing: 2 of 5 lots unfixed, and a rise of 10 cents/lb costs USD 7,500.</summary>
    [Fact]
    public void Two_unfixed_lots_of_arabica_cost_7500_dollars_more_when_the_market_rises_by_ten_cents()
    {
        var position = Of(ExampleA(), toCome: 86_250m, inStock: 0m);

        var row = Assert.Single(position.Rows);
        Assert.Equal((ContractDemo.May, 86_250m, 51_750m, 34_500m), (row.Month!.Value, row.Contracted.Kilograms, row.Priced.Kilograms, row.Unpriced.Kilograms));
        Assert.Equal((2m, Money.Of(750m, Currency.Usd)), (row.UnpricedLots, row.PerCent));
        var move = Assert.Single(Moved(position, FuturesMarket.Arabica, 10m, 300m));
        Assert.Equal((300m, 310m, Money.Of(7_500m, Currency.Usd)), (move.Level, move.Then, move.Unpriced));
    }

    /// <summary>Exchange specification (handbook trade.md 2.1): a tick of USD 1/t is worth USD 10 a lot of robusta.</summary>
    [Fact]
    public void A_lot_of_robusta_costs_ten_dollars_more_for_each_dollar_a_tonne()
    {
        var month = FuturesMonth.Of(FuturesMarket.Robusta, 2027, 5);
        var contract = ContractDemo.Signed(new PriceTerms(null, month, -150m, 2, Caller.Buyer, null, null), bags: 290);

        var moves = Moved(Of(contract, 20_010m, 0m), FuturesMarket.Robusta, -50m, 4_000m, month);

        Assert.Equal(Money.Of(-1_000m, Currency.Usd), Assert.Single(moves).Unpriced);
    }

    /// <summary>By hand from example A: 3 of 5 lots are 51,750 of 86,250 kg, and half of it still to come is parted in the same way; rolled by the spread of example B.</summary>
    [Fact]
    public void What_was_fixed_before_a_roll_stays_in_its_month_and_the_rest_stands_in_the_later_one()
    {
        var contract = ExampleA();
        contract.Roll(new RollOrder(Today, ContractDemo.July, 3.20m), ContractDemo.Buyer, ContractDemo.Now);

        var position = Of(contract, 43_125m, 8_625m);

        Assert.Equal([ContractDemo.May, ContractDemo.July], position.Rows.Select(row => row.Month!.Value));
        Assert.Equal([(51_750m, 0m, 25_875m, 5_175m), (0m, 34_500m, 17_250m, 3_450m)], position.Rows.Select(row => (row.Priced.Kilograms, row.Unpriced.Kilograms, row.ToCome.Kilograms, row.InStock.Kilograms)));
    }

    [Fact]
    public void Outright_prices_and_stock_without_a_contract_stand_against_no_month()
    {
        var position = MarketPosition.Of([new HeldContract(ContractDemo.Signed(ContractDemo.Outright), Weight.Zero, Weight.FromKilograms(690m))], [new LooseStock(null, Weight.FromKilograms(120m))]);

        Assert.Equal([(true, 86_250m, 690m), (false, 0m, 120m)], position.Rows.Select(row => (row.IsOutright, row.Contracted.Kilograms, row.InStock.Kilograms)));
        Assert.Equal(0m, position.Total.Unpriced.Kilograms);
        Assert.Empty(Moved(position, FuturesMarket.Arabica, 10m, 300m));
        Assert.Equal([("Outright", 690m), ("No contract", 120m)], position.NotMoved.Select(still => (still.Name, still.Held.Kilograms)));
    }

    /// <summary>Worked by hand: 1,000 kg are 2,204.622622 lb, and 10 cents a pound on them are USD 220.46.</summary>
    [Fact]
    public void Stock_whose_offer_asks_a_differential_moves_with_its_month_in_a_line_of_its_own()
    {
        var position = MarketPosition.Of([], [new LooseStock(ContractDemo.May, Weight.FromKilograms(1_000m)), new LooseStock(null, Weight.FromKilograms(60m))]);

        var move = Assert.Single(Moved(position, FuturesMarket.Arabica, 10m, 300m));

        Assert.Equal(("KCK27, no contract", 1_000m, Today, Money.Of(0m, Currency.Usd), Money.Of(220.46m, Currency.Usd)), (move.Name, move.Held.Kilograms, move.Quote!.On, move.Unpriced, move.Replacement));
        Assert.Equal(60m, Assert.Single(position.NotMoved).Held.Kilograms);
    }

    [Fact]
    public void A_fall_to_nothing_is_refused_with_the_level_that_it_started_from()
    {
        var said = Assert.Throws<RuleBrokenException>(() => Moved(Of(ExampleA(), 0m, 0m), FuturesMarket.Arabica, -300m, 300m)).Message;

        Assert.Equal("KCK27 stands at 300 US cents/lb: it cannot fall by 300.", said);
    }

    /// <summary>Whatever is fixed, and however the kilograms fall, months add up to the contract to the microgram.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(0, 3)]
    [InlineData(1, 4)]
    public void Months_add_up_to_the_contract(int before, int after)
    {
        var contract = ContractDemo.Signed();
        if (before > 0)
        {
            contract.Fix(before, 285.40m);
        }

        contract.Roll(new RollOrder(Today, ContractDemo.July, 3.20m), ContractDemo.Buyer, ContractDemo.Now);
        if (after > 0)
        {
            contract.Fix(after, 291.65m);
        }

        var position = Of(contract, 1_234.567891m, 333.333333m);

        Assert.Equal((86_250m, 1_234.567891m, 333.333333m), (position.Total.Contracted.Kilograms, position.Total.ToCome.Kilograms, position.Total.InStock.Kilograms));
        Assert.Equal(FuturesMarket.Arabica.LotWeight() * (5 - before - after), position.Total.ToFix);
    }

    private static Contract ExampleA()
    {
        var contract = ContractDemo.Signed();
        contract.Fix(2, 285.40m);
        contract.Fix(1, 279.15m);
        return contract;
    }

    private static MarketPosition Of(Contract contract, decimal toCome, decimal inStock) =>
        MarketPosition.Of([new HeldContract(contract, Weight.FromKilograms(toCome), Weight.FromKilograms(inStock))], []);

    private static IReadOnlyList<MarketMove> Moved(MarketPosition position, FuturesMarket market, decimal change, decimal level, FuturesMonth? month = null) => position.IfMoved(
        new Dictionary<FuturesMarket, decimal> { [market] = change },
        new FuturesQuotes([new FuturesQuote(month ?? ContractDemo.May, Today, level, "typed", null, ContractDemo.Now)]), Today);
}

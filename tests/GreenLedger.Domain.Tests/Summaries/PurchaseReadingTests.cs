using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Summaries;
using GreenLedger.Domain.Tests.Contracts;

namespace GreenLedger.Domain.Tests.Summaries;

public sealed class PurchaseReadingTests
{
    private static readonly DateTimeOffset Typed = DateTimeOffset.UnixEpoch;

    /// <summary>Handbook trade 2.3, example A: 190,148.7011 lb at 321.65 ¢/lb are USD 611,613.30; at 1.1600 USD per EUR (9.4) worked by hand EUR 527,252.84.</summary>
    [Fact]
    public void An_outright_price_is_converted_at_the_rate_of_the_day_it_was_signed()
    {
        var lot = Read(ContractDemo.Signed(ContractDemo.Outright), Rates((ContractDemo.Today, 1.16m), (ContractDemo.Today.AddDays(1), 1.30m)));

        Assert.Equal((Money.Of(527_252.84m, Currency.Eur), 86_250m, 0m, false), (lot.Value!.Value, lot.Net.Kilograms, lot.Unpriced.Kilograms, lot.IsProvisional));
    }

    /// <summary>Handbook trade 2.3, example A before fixation 3: 324.99 ¢/lb with the settlement at 300.00; worked by hand 86,250 kg × 3.2499 ÷ 0.45359237 = USD 617,964.26. Two lots of five are open: 34,500 kg.</summary>
    [Fact]
    public void What_is_not_fixed_is_valued_at_the_last_quote_and_is_provisional()
    {
        var contract = ContractDemo.Signed();
        contract.Fix(2, 285.40m);
        contract.Fix(1, 279.15m);

        var lot = Read(contract, Rates((ContractDemo.Today, 1m)), new FuturesQuote(ContractDemo.May, ContractDemo.Today, 300m, "typed", null, Typed));

        Assert.Equal((Money.Of(617_964.26m, Currency.Eur), 34_500m, true), (lot.Value!.Value, lot.Unpriced.Kilograms, lot.IsProvisional));
    }

    [Fact]
    public void Without_a_quote_or_a_rate_there_is_no_value_and_not_a_zero()
    {
        Assert.Null(Read(ContractDemo.Signed(), Rates((ContractDemo.Today, 1.16m))).Value);
        Assert.Null(Read(ContractDemo.Signed(ContractDemo.Outright), Rates((ContractDemo.Today.AddDays(1), 1.16m))).Value);
    }

    /// <summary>Worked by hand: of 86,250 kg 40,000 shipped and arrived at 39,900; 46,250 kg are still to come.</summary>
    [Fact]
    public void What_travels_counts_by_the_papers_and_what_arrived_by_the_scale()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright);
        var onBoard = ContractDemo.Today.AddDays(100);
        var shipment = new Shipment("S27-001", new Passage(null, null, null, "COCTG", "DEHAM", null, null, onBoard, null, null));
        shipment.Carry(contract, contract.Lots[0].Id, 580, Weight.FromKilograms(40_000m));
        var arrival = new Arrival(
            shipment, shipment.Lots[0].Id, new Receipt(onBoard.AddDays(30), 580, Weight.FromKilograms(39_900m), new ReceiptCondition(0, 0, 0, false, null, null), null), ContractDemo.Buyer, ContractDemo.Now.AddDays(131));

        var lot = Read(contract, Rates((ContractDemo.Today, 1.16m)), null, shipment, arrival);

        Assert.Equal(
            [(PurchaseStep.Contracted, ContractDemo.Today, 86_250m), (PurchaseStep.Shipped, onBoard, 40_000m), (PurchaseStep.Arrived, onBoard.AddDays(30), 39_900m)],
            lot.Entries.Select(entry => (entry.Step, entry.On, entry.Net.Kilograms)));
        Assert.Equal(46_250m, lot.ToCome.Kilograms);
        Assert.Equal(-0.25m, Assert.Single(lot.Comparisons).WeightDifference.Points); // worked by hand: 100 of 40,000 kg
    }

    /// <summary>The demo contract's tolerance is 3 %: 86,250 kg less 84,000 is a rest of 2.6 %.</summary>
    [Fact]
    public void A_rest_within_the_tolerance_does_not_come_any_more()
    {
        var contract = ContractDemo.Signed(ContractDemo.Outright);
        var onBoard = ContractDemo.Today.AddDays(100);
        var shipment = new Shipment("S27-001", new Passage(null, null, null, "COCTG", "DEHAM", null, null, onBoard, null, null));
        shipment.Carry(contract, contract.Lots[0].Id, 1218, Weight.FromKilograms(84_000m));
        var arrival = new Arrival(
            shipment, shipment.Lots[0].Id, new Receipt(onBoard.AddDays(30), 1218, Weight.FromKilograms(84_000m), new ReceiptCondition(0, 0, 0, false, null, null), null), ContractDemo.Buyer, ContractDemo.Now.AddDays(131));

        Assert.Equal(Weight.Zero, Read(contract, Rates((ContractDemo.Today, 1.16m)), null, shipment, arrival).ToCome);
    }

    private static ExchangeRates Rates(params (DateOnly On, decimal Usd)[] rates) =>
        new(rates.Select(rate => new ExchangeRate(Currency.Usd, rate.On, rate.Usd, "typed", null, Typed)));

    private static PurchasedLot Read(Contract contract, ExchangeRates rates, FuturesQuote? quote = null, Shipment? shipment = null, Arrival? arrival = null)
    {
        var valuation = new Valuation(Currency.Eur, ContractDemo.Today, rates, new FuturesQuotes(quote is null ? [] : [quote]));
        var facts = new LotFacts(ContractDemo.Lot, "CA-17", "Cerro Alto washed", "Cerro Alto Exports", "Colombia", "washed", [], Score.Of(86m));
        return new PurchaseReading(new PurchaseProgress(contract, shipment is null ? [] : [shipment], arrival is null ? [] : [arrival]), new Dictionary<Id<Sample>, Score>(), valuation)
            .Lots(new Dictionary<Id<Lot>, LotFacts> { [ContractDemo.Lot] = facts }).Single();
    }
}

using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Costs;

public sealed class CostDifferenceTests
{
    private static readonly DateOnly Decided = new(2026, 11, 24);
    private static readonly Weight Landed = Weight.FromKilograms(18_790m);

    [Fact]
    public void The_coffee_differs_by_price_then_rate_then_weight()
    {
        // 18,975 kg are 41,832.7142 lb (handbook, trade 3.3 example D); at 315.00 ¢/lb 131,773.05 USD, worked by hand.
        var cost = Cost(Part(null, Money.Of(131_773.05m, Currency.Usd), 1.20m));

        var why = cost.Stages[0].Why!;

        // Worked by hand. Reckoned 115,995.63 EUR over 18,918.075 kg. Price: 131,773.05 / 1.16 = 113,597.46 less 115,995.63, over 18,918.075.
        Assert.Equal(-0.126766m, Math.Round(why.Price, 6));
        // Rate: 131,773.05 / 1.20 = 109,810.88 less 113,597.46, over 18,918.075.
        Assert.Equal(-0.200157m, Math.Round(why.Rate, 6));
        // Weight: 109,810.88 over 18,790 less the same over 18,918.075.
        Assert.Equal(0.039565m, Math.Round(why.Weight, 6));
        Assert.Equal(cost.Stages[0].Difference!.Value, why.Total);
        // To four decimals they are dealt by the largest remainder (docs/decisions/0007): together −0.2874.
        Assert.Equal(new CostDifference(-0.1268m, -0.2002m, 0.0396m, 0m), why.Shown());
    }

    [Fact]
    public void A_charge_in_the_house_currency_has_no_part_of_the_rate()
    {
        var cost = Cost(Part(CostStage.Freight, Money.Of(3_000m, Currency.Eur), 1.20m));

        var why = cost.Stages.Single(stage => stage.Stage == CostStage.Freight).Why!;

        // Worked by hand: 3,000.00 less 2,801.72 (handbook, trade 3.3 example D) over 18,918.075 kg, then 3,000.00 over 18,790 less over 18,918.075.
        Assert.Equal((0.010481m, 0m, 0.001081m), (Math.Round(why.Price, 6), why.Rate, Math.Round(why.Weight, 6)));
    }

    [Fact]
    public void As_shown_the_parts_add_to_the_difference_shown()
    {
        var chance = new Random(5);
        for (var round = 0; round < 500; round++)
        {
            var why = new CostDifference(Any(), Any(), Any(), Any());

            var shown = why.Shown();

            Assert.Equal(Math.Round(why.Total, 4, MidpointRounding.AwayFromZero), shown.Total);
            Assert.All([shown.Price - why.Price, shown.Rate - why.Rate, shown.Weight - why.Weight, shown.Claims - why.Claims], off => Assert.InRange(off, -0.0001m, 0.0001m));
        }

        decimal Any() => chance.Next(-2_000_000, 2_000_000) / 1_000_000m;
    }

    [Fact]
    public void Nothing_is_said_of_what_is_not_billed_or_has_not_landed()
    {
        Assert.All(Cost(Part(null, Money.Of(131_773.05m, Currency.Usd), 1.20m)).Stages.Skip(1), stage => Assert.Null(stage.Why));
        Assert.Null(LotCost.Of([Part(null, Money.Of(1m, Currency.Usd), 1.20m)], Weight.Zero, Reckoned(), Currency.Eur).Why);
        Assert.Null(LotCost.Of([Part(null, Money.Of(1m, Currency.Usd), 1.20m)], Landed, null, Currency.Eur).Why);
    }

    private static LotCost Cost(CostPart part) => LotCost.Of([part], Landed, Reckoned(), Currency.Eur);

    private static ReckonedCost Reckoned()
    {
        var rates = new ExchangeRates([ExampleD.Rate(Decided)]);
        var costs = new LandedCosts(Currency.Eur, Decided, [ExampleD.Route()], rates, new FuturesQuotes([ExampleD.Quote(Decided)]), new HashSet<Currency>());
        return new ReckonedCost(costs.Of(ExampleD.Parcel), rates, ExampleD.Parcel.Quantity);
    }

    private static CostPart Part(CostStage? stage, Money amount, decimal dollars)
    {
        var day = Decided.AddDays(90);
        var rate = new ExchangeRate(Currency.Usd, day, dollars, "Test", null, DateTimeOffset.UnixEpoch);
        var invoice = new Invoice(stage, amount, new ExchangeRates([rate]).Find(amount.Currency, Currency.Eur, day)!, day, "INV-9", null, ShareBasis.Weight);
        var posting = new CostPosting(new PostedOn(null, null, Id<Lot>.New()), invoice, Currency.Eur, Id<Person>.New(), new DateTimeOffset(day, TimeOnly.MinValue, TimeSpan.Zero));
        return CostPart.Of(posting, posting.House, LotFlow.None);
    }
}

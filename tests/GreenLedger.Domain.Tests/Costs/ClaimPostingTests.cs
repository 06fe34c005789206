using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Costs;

public sealed class ClaimPostingTests
{
    private static readonly DateOnly Day = new(2026, 4, 20);
    private readonly ShortArrival _arrival = new();

    [Fact]
    public void What_the_seller_allows_is_a_credit_on_the_coffee_of_the_day_of_the_settlement()
    {
        var claim = Settled(600m);

        var posting = ClaimPosting.Of(claim, Dollars(), Currency.Eur, _arrival.Buyer.Id, ShortArrival.Now);
        var cost = LotCost.Of([CostPart.Of(posting, posting.House, LotFlow.None)], Weight.FromKilograms(1_000m), null, Currency.Eur);

        // Worked by hand: 600 ÷ 1.25 = 480.
        Assert.Equal((Money.Of(-600m, Currency.Usd), Money.Of(-480m, Currency.Eur), Day), (posting.Amount, posting.House, posting.On));
        Assert.Equal((claim.LotId, null, "Claim C26-001"), (posting.LotId!.Value, posting.Stage, posting.Document));
        Assert.Equal((-0.48m, -0.48m, false), (cost.PerKilogram, cost.AccountingPerKilogram, cost.HasCoffee));
    }

    [Fact]
    public void Taking_the_outcome_back_withdraws_it_with_the_reason()
    {
        var claim = Settled(600m);
        var posting = ClaimPosting.Of(claim, Dollars(), Currency.Eur, _arrival.Buyer.Id, ShortArrival.Now);
        claim.Reopen([], "Entered on the wrong claim.", _arrival.Buyer.Id, ShortArrival.Now);

        ClaimPosting.Withdraw(claim, [posting], _arrival.Buyer.Id, ShortArrival.Now);

        Assert.Equal("The outcome of claim C26-001 was taken back.", posting.WithdrawnBecause);
        Assert.StartsWith("Claim C26-001 brought no money", ContractDemo.Refusal(() => ClaimPosting.Of(claim, Dollars(), Currency.Eur, _arrival.Buyer.Id, ShortArrival.Now)), StringComparison.Ordinal);
    }

    private Claim Settled(decimal dollars)
    {
        var claim = _arrival.Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Weight, ClaimGround.Cup], PricePerWeight.FromCentsPerPound(5m)));
        claim.Settle(ClaimOutcome.Allowance, Money.Of(dollars, Currency.Usd), Day, null, _arrival.Buyer.Id, ShortArrival.Now);
        return claim;
    }

    private Conversion Dollars() =>
        new ExchangeRates([new ExchangeRate(Currency.Usd, Day, 1.25m, "Test", _arrival.Buyer.Id, ShortArrival.Now)]).Find(Currency.Usd, Currency.Eur, Day)!;
}

using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class ClaimSettlementTests
{
    private static readonly DateOnly Day = new(2026, 4, 20);
    private readonly ShortArrival _arrival = new();

    [Fact]
    public void An_allowance_makes_the_landed_kilogram_cheaper_and_the_arithmetic_is_shown()
    {
        var claim = Opened();

        claim.Settle(ClaimOutcome.Allowance, Money.Of(2710.34m, Currency.Usd), Day, "Met halfway, in a call.", _arrival.Buyer.Id, ShortArrival.Now);

        // Worked by hand: 18,975 ÷ 0.45359237 × 3.2165 = 134,554.93; ÷ 18,790 = 7.160986; less 2,710.34 it is 7.016742.
        Assert.Equal(
            [
                "18,975 kg invoiced at 321.65 ¢/lb: 134,554.93 USD.",
                "Over 18,790 kg landed: 7.1610 USD/kg.",
                "Less 2,710.34 USD: 7.0167 USD/kg, 0.1442 USD/kg less.",
            ],
            claim.Effect!.Sentences);
        Assert.Equal((ClaimOutcome.Allowance, Day, Money.Of(2710.34m, Currency.Usd)), (claim.Outcome, claim.SettledOn, claim.Settled));
    }

    [Theory] // handbook, trade, check value 36: other claims until 17 April, so that the 18th is late
    [InlineData(ClaimOutcome.Allowance, true)]
    [InlineData(ClaimOutcome.Replacement, true)]
    [InlineData(ClaimOutcome.Withdrawn, false)]
    public void A_late_claim_that_was_accepted_says_why_and_is_flagged(ClaimOutcome outcome, bool isAccepted)
    {
        var claim = _arrival.Open(new ClaimOrder(new DateOnly(2026, 4, 18), [ClaimGround.Lateness], LateReason: "The papers came late."));
        Money? amount = outcome == ClaimOutcome.Allowance ? Money.Of(500m, Currency.Usd) : null;

        if (isAccepted)
        {
            Assert.Contains("say why it was accepted all the same", ContractDemo.Refusal(() => claim.Settle(outcome, amount, Day, " ", _arrival.Buyer.Id, ShortArrival.Now)), StringComparison.Ordinal);
            Assert.Null(claim.Outcome);
        }

        claim.Settle(outcome, amount, Day, "The seller did not insist on the deadline.", _arrival.Buyer.Id, ShortArrival.Now);

        Assert.Equal((true, isAccepted), (claim.IsLate, claim.IsAcceptedLate));
    }

    [Fact]
    public void Goods_that_were_refused_bear_no_cost()
    {
        var claim = Opened();

        claim.Settle(ClaimOutcome.Rejection, null, Day, "The seller takes them back and pays the invoice back.", _arrival.Buyer.Id, ShortArrival.Now);

        Assert.Null(claim.Effect);
    }

    [Fact]
    public void A_claim_is_settled_once_until_that_is_taken_back()
    {
        var claim = Opened();
        claim.Settle(ClaimOutcome.Allowance, Money.Of(100m, Currency.Usd), Day, null, _arrival.Buyer.Id, ShortArrival.Now);

        var refusal = ContractDemo.Refusal(() => claim.Settle(ClaimOutcome.Withdrawn, null, Day, "No.", _arrival.Buyer.Id, ShortArrival.Now));
        claim.Reopen([], "Entered on the wrong claim.", _arrival.Buyer.Id, ShortArrival.Now);

        Assert.StartsWith("Claim C26-001 is settled already: allowance.", refusal, StringComparison.Ordinal);
        Assert.True(claim.IsOpen);
        Assert.Null(claim.Settled);
        Assert.Equal("Entered on the wrong claim.", Assert.Single(claim.Settlements).TakenBackBecause);
        Assert.StartsWith("Claim C26-001 is open", ContractDemo.Refusal(() => claim.Reopen([], "Again.", _arrival.Buyer.Id, ShortArrival.Now)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ClaimOutcome.Allowance, null, null, "Amount")]
    [InlineData(ClaimOutcome.Allowance, 0, null, "Amount")]
    [InlineData(ClaimOutcome.Allowance, 5000, null, "Words")] // more than the 2,710.33 claimed
    [InlineData(ClaimOutcome.Withdrawn, 10, "Let go.", "Amount")]
    [InlineData(ClaimOutcome.Withdrawn, null, null, "Words")]
    [InlineData(ClaimOutcome.Replacement, null, "", "Words")]
    [InlineData(ClaimOutcome.Arbitration, null, null, "Words")]
    public void An_outcome_without_what_it_needs_is_refused_and_changes_nothing(ClaimOutcome outcome, int? dollars, string? words, string field)
    {
        var claim = Opened();
        var amount = dollars is { } known ? Money.Of(known, Currency.Usd) : (Money?)null;

        var broken = Assert.Throws<RuleBrokenException>(() => claim.Settle(outcome, amount, Day, words, _arrival.Buyer.Id, ShortArrival.Now));

        Assert.Equal(field, broken.Field);
        Assert.True(claim.IsOpen);
        Assert.Empty(claim.Settlements);
    }

    [Fact]
    public void Another_currency_and_a_day_that_cannot_be_are_refused()
    {
        var claim = Opened();

        Assert.Contains("paid in USD", Refusal(Money.Of(10m, Currency.Eur), Day), StringComparison.Ordinal);
        Assert.Contains("before it was made", Refusal(Money.Of(10m, Currency.Usd), ShortArrival.Claimed.AddDays(-1)), StringComparison.Ordinal);
        Assert.Contains("lies ahead", Refusal(Money.Of(10m, Currency.Usd), new DateOnly(2026, 6, 3)), StringComparison.Ordinal); // the 3rd is nowhere at noon UTC of the 1st

        string Refusal(Money amount, DateOnly on) => ContractDemo.Refusal(() => claim.Settle(ClaimOutcome.Allowance, amount, on, null, _arrival.Buyer.Id, ShortArrival.Now));
    }

    [Fact]
    public void Correspondence_is_kept_in_order_with_who_spoke()
    {
        var claim = Opened();

        claim.Note(ClaimSide.ToSeller, ShortArrival.Claimed, "Letter sent by mail.", _arrival.Buyer.Id, ShortArrival.Now);
        claim.Note(ClaimSide.FromSeller, Day, " They ask for a joint cupping. ", _arrival.Buyer.Id, ShortArrival.Now);

        Assert.Equal([(1, ClaimSide.ToSeller, "Letter sent by mail."), (2, ClaimSide.FromSeller, "They ask for a joint cupping.")], claim.Notes.Select(note => (note.Number, note.Side, note.Text)));
        Assert.Equal("Text", Assert.Throws<RuleBrokenException>(() => claim.Note(ClaimSide.InHouse, Day, " ", _arrival.Buyer.Id, ShortArrival.Now)).Field);
        Assert.Equal(2, claim.NoteCount);
    }

    private Claim Opened() => _arrival.Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Weight, ClaimGround.Cup], PricePerWeight.FromCentsPerPound(5m)));
}

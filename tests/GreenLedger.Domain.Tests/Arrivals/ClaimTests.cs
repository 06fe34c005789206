using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class ClaimTests
{
    private static readonly ClaimOrder OnWeight = new(ShortArrival.Claimed, [ClaimGround.Weight]);

    [Fact]
    public void Lost_weight_is_claimed_with_the_weight_verdicts_arithmetic()
    {
        var claim = new ShortArrival().Open(OnWeight);

        // Handbook, trade 8, example G.
        var line = Assert.Single(claim.Case.Lines);
        Assert.Equal(Money.Of(639.09m, Currency.Usd), line.Amount);
        Assert.Equal("185 kg lost less the franchise of 94.875 kg is 90.125 kg, at 321.65 ¢/lb", line.Arithmetic);
        Assert.Equal(claim.Amount, line.Amount);
    }

    [Fact]
    public void An_allowance_is_counted_on_the_landed_weight_and_added()
    {
        var claim = new ShortArrival().Open(new ClaimOrder(
            ShortArrival.Claimed, [ClaimGround.Weight, ClaimGround.Cup], Allowance: PricePerWeight.FromCentsPerPound(5m), OtherWords: "Surveyor's fee", Other: Money.Of(250m, Currency.Usd)));

        // Worked by hand: 18,790 ÷ 0.45359237 × 0.05 = 2,071.242953 USD; with 639.09 (example G) and 250.00 they are 2,960.33.
        Assert.Equal([639.09m, 2071.24m, 250m], claim.Case.Lines.Select(line => line.Amount.Amount));
        Assert.Equal("18,790 kg landed, at 5.00 ¢/lb", claim.Case.Lines[1].Arithmetic);
        Assert.Equal(Money.Of(2960.33m, Currency.Usd), claim.Amount);
    }

    [Fact]
    public void A_share_is_taken_of_the_price_of_the_landed_weight()
    {
        var claim = new ShortArrival().Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Cup], Share: Percent.Of(3m)));

        // Worked by hand: 18,790 ÷ 0.45359237 × 3.2165 = 133,243.06 USD, of which 3 % are 3,997.2918.
        var line = Assert.Single(claim.Case.Lines);
        Assert.Equal(Money.Of(3997.29m, Currency.Usd), line.Amount);
        Assert.Equal("3 % of 133,243.06 USD, the price of 18,790 kg landed at 321.65 ¢/lb", line.Arithmetic);
    }

    [Fact]
    public void While_the_price_is_not_fixed_weight_is_counted_provisionally()
    {
        var unfixed = new ShortArrival(price: ContractDemo.ToBeFixed(1));

        var refusal = ContractDemo.Refusal(() => unfixed.Open(OnWeight));
        var claim = unfixed.Open(OnWeight with { ProvisionalPrice = PricePerWeight.FromCentsPerPound(321.65m) });

        Assert.Contains("state a provisional price", refusal, StringComparison.Ordinal);
        Assert.Equal(Money.Of(639.09m, Currency.Usd), claim.Amount); // handbook, trade 8, example G
        Assert.EndsWith("provisional until the price is fixed", claim.Case.Lines[0].Arithmetic, StringComparison.Ordinal);
        Assert.True(claim.Case.IsPriceProvisional);
    }

    [Fact]
    public void A_claim_may_go_out_before_its_amount_is_known()
    {
        var claim = new ShortArrival().Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Cup]));

        Assert.Null(claim.Amount);
        Assert.Empty(claim.Case.Lines);
    }

    [Theory]
    [InlineData(ClaimGround.PhysicalLimits, "The arrival's sample was not graded: do that first.")]
    [InlineData(ClaimGround.Condition, "The goods came sound.")]
    [InlineData(ClaimGround.Lateness, "It was on board in time.")]
    [InlineData(ClaimGround.Weight, "The loss does not exceed the franchise: there is nothing to claim.")]
    [InlineData(ClaimGround.Cup, "The cup matches what was approved: there is nothing to claim.")]
    public void A_ground_that_nothing_shows_is_refused(ClaimGround ground, string finding)
    {
        // Handbook, trade, check value 66: 18,900 kg landed are within the franchise.
        var sound = new ShortArrival(Weight.FromKilograms(18_900m), new ReceiptCondition(0, 0, 0, false, null, true), arrivalMark: 8m, shipUntil: new DateOnly(2026, 2, 3));

        var refusal = ContractDemo.Refusal(() => sound.Open(new ClaimOrder(ShortArrival.Claimed, [ground])));

        Assert.Equal($"Nothing shows {ground.Word()} as a ground. {finding}", refusal);
    }

    [Fact]
    public void An_undecided_cup_supports_no_claim()
    {
        var verdict = new QualityVerdict(new CupDifference(Meeting.OneSession, 85, 84, -1, 0.5, 2, 0.9, 3, 3, null, null), Score.Of(1m), -2.5, 0.5, 0.5, 0.5);
        var undecided = new ShortArrival().Basis() with { Quality = new ArrivalVerdict(verdict, []) };

        var finding = undecided.Findings.Single(one => one.Ground == ClaimGround.Cup);

        Assert.False(finding.IsShown);
        Assert.StartsWith("The cup is undecided, which supports no claim", finding.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_that_is_not_kept_is_a_ground()
    {
        var wet = new GreenGrade(default, default, ShortArrival.Received, null, GreenGrade.UsualSample).Measure(Percent.Of(12.6m), null, null, null);

        var finding = new ShortArrival().Basis(wet).Findings.Single(one => one.Ground == ClaimGround.PhysicalLimits);

        // Handbook quality.md 2.1: 10 to 12 %.
        Assert.Equal((true, "Moisture: 12.6 %, agreed 10 to 12 %."), (finding.IsShown, finding.Sentence));
    }

    [Fact]
    public void A_ground_is_claimed_once()
    {
        var arrival = new ShortArrival();
        var first = arrival.Open(OnWeight);

        var refusal = ContractDemo.Refusal(() => arrival.Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Cup, ClaimGround.Weight]), "C26-002", first));
        first.Settle(ClaimOutcome.Withdrawn, null, ShortArrival.Claimed, "The scales were wrong.", arrival.Buyer.Id, ShortArrival.Now);

        Assert.Equal("Claim C26-001 on this arrival names weight already: go on there.", refusal);
        Assert.Equal("C26-002", arrival.Open(OnWeight, "C26-002", first).Ref);
    }

    // Handbook, trade, check value 36: discharged on 3 March 2026, claims on quality until 31 March, others until 17 April.
    [Theory]
    [InlineData(ClaimGround.Cup, "2026-03-31", false)]
    [InlineData(ClaimGround.Cup, "2026-04-01", true)]
    [InlineData(ClaimGround.Condition, "2026-04-17", false)]
    [InlineData(ClaimGround.Lateness, "2026-04-18", true)]
    public void A_claim_after_its_last_day_needs_a_reason_and_is_flagged_late(ClaimGround ground, string on, bool isLate)
    {
        var arrival = new ShortArrival();
        var order = new ClaimOrder(DateOnly.ParseExact(on, "yyyy-MM-dd", null), [ground]);

        var reasoned = arrival.Open(order with { LateReason = "The sample came late from the port." });

        Assert.Equal(isLate, reasoned.IsLate);
        if (isLate)
        {
            Assert.Contains("say why the claim is made all the same", ContractDemo.Refusal(() => arrival.Open(order)), StringComparison.Ordinal);
        }
        else
        {
            Assert.False(arrival.Open(order).IsLate);
        }
    }

    [Fact]
    public void What_is_weighed_too_late_makes_a_claim_on_weight_late()
    {
        var times = ClaimTimes.Of(new ShortArrival().Contract.Terms.Form, new ShortArrival().Shipment, [ClaimGround.Weight], new DateOnly(2026, 3, 25), new DateOnly(2026, 3, 26));

        // Handbook, trade, check value 36: weighing until 24 March.
        Assert.Equal([("Weighing", new DateOnly(2026, 3, 24), true), ("Other claims", new DateOnly(2026, 4, 17), false)], times.Select(time => (time.What, time.LastDay!.Value, time.IsLate())));
    }

    [Fact]
    public void The_evidence_is_frozen_and_comes_back_from_its_text()
    {
        var claim = new ShortArrival().Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Weight, ClaimGround.Cup, ClaimGround.Condition, ClaimGround.Lateness]));

        var read = FrozenJson.Read<ClaimCase>(FrozenJson.Write(claim.Case));

        Assert.Equal(FrozenJson.Write(claim.Case), FrozenJson.Write(read));
        // Seven attributes a quarter point lower: 7 × 0.25; 3 February is 3 days after 31 January (worked by hand).
        Assert.Equal(-1.75, read.Cup!.Difference, 9);
        Assert.Equal(("PS1", "AR1", 3), (read.Cup.ApprovedCode, read.Cup.ArrivalCode, read.Cup.ArrivalCuppers));
        Assert.Equal("On board 3 days after the shipment period.", read.Findings[^1].Sentence);
        Assert.Equal(["2 wet"], read.Receipt!.Faults);
        Assert.Equal(["CSQU3054383, seal SL1"], read.Goods.Containers);
        // SHA-256 of the bytes 1, 2, 3 by sha256sum.
        Assert.Equal("039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81", Assert.Single(read.Papers).Sha256);
    }

    [Fact]
    public void What_the_order_gets_wrong_is_refused_with_its_field()
    {
        var arrival = new ShortArrival();

        Assert.Equal("Grounds", Field(new ClaimOrder(ShortArrival.Claimed, [])));
        Assert.Equal("On", Field(OnWeight with { On = ShortArrival.Received.AddDays(-1) }));
        Assert.Equal("On", Field(OnWeight with { On = new DateOnly(2026, 6, 3) })); // at noon UTC of the 1st it is the 2nd in Kiritimati and nowhere the 3rd
        Assert.Equal("Grounds", Field(OnWeight with { Share = Percent.Of(3m) }));
        Assert.Equal("Share", Field(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Cup], PricePerWeight.FromCentsPerPound(5m), Percent.Of(3m))));
        Assert.Equal("Allowance", Field(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Cup], PricePerWeight.Of(0.1m, Currency.Eur, PriceUnit.Kilogram))));
        Assert.Equal("Allowance", Field(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Cup], PricePerWeight.FromCentsPerPound(321.66m))));
        Assert.Equal("Other", Field(OnWeight with { OtherWords = "Surveyor's fee" }));
        Assert.Equal("ProvisionalPrice", Field(OnWeight with { ProvisionalPrice = PricePerWeight.FromCentsPerPound(300m) }));

        string? Field(ClaimOrder order) => Assert.Throws<RuleBrokenException>(() => arrival.Open(order)).Field;
    }
}

using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>On the running example of handbook quality.md section 5: front E, A, B, C; weighted scores of section 9, value 27.</summary>
public sealed class AdviceTests
{
    [Theory]
    [InlineData("A", Outcome.Buy)]
    [InlineData("D", Outcome.Hold)]
    public void A_lot_on_the_front_is_to_buy_and_one_off_it_to_hold(string name, Outcome expected)
    {
        var shortlist = Demo.Ranked(Demo.RunningExample);

        var advice = AdviceOn(name, shortlist);

        Assert.Equal(expected, advice.Outcome);
    }

    [Fact]
    public void The_advice_names_the_lot_that_is_better_on_both_counts()
    {
        var advice = AdviceOn("D", Demo.Ranked(Demo.RunningExample));

        Assert.Equal(
            [
                "Rank 5 of 5: passes every gate, weighted score 0.3739.",
                "Off the efficient front: C scores 84.00 for 6.90 USD/kg.",
            ],
            advice.Reasons);
    }

    [Fact]
    public void A_lot_that_breaks_a_gate_is_to_decline_with_the_gate_and_both_figures()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(80m) } };

        var advice = AdviceOn("A", Demo.Ranked([Demo.Lot("A", 79.9167m, 7m)], rules));

        Assert.Equal(Outcome.Decline, advice.Outcome);
        Assert.Equal(["Score 79.9167 is below the least score of 80.00."], advice.Reasons);
    }

    [Fact]
    public void A_lot_that_only_lacks_a_fact_is_to_hold()
    {
        var advice = AdviceOn("A", Demo.Ranked([Demo.Lot("A", 85m, null)]));

        Assert.Equal(Outcome.Hold, advice.Outcome);
        Assert.Equal(["No landed cost. There is no exchange rate."], advice.Reasons);
    }

    [Fact]
    public void A_lot_that_lacks_a_fact_and_breaks_a_gate_is_to_decline()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(86m) } };

        var advice = AdviceOn("A", Demo.Ranked([Demo.Lot("A", 85m, null)], rules));

        Assert.Equal(Outcome.Decline, advice.Outcome);
    }

    [Fact]
    public void A_lot_scored_on_another_form_is_to_hold()
    {
        var lot = Demo.Lot("A", 85m, 8m).With(results: [Demo.Result(88m, 0.4, form: CuppingForm.AffectiveId)]);

        var advice = AdviceOn("A", Demo.Ranked([lot]));

        Assert.Equal(Outcome.Hold, advice.Outcome);
        Assert.Equal(["Scored on another form than these rules rank by (1 result): cup it on the rules' form to compare it."], advice.Reasons);
    }

    private static Advice AdviceOn(string name, Shortlist shortlist) =>
        Advice.On(shortlist.Entries.Single(entry => entry.Candidate.Ref == name), shortlist);
}

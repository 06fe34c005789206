using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>On the running example of handbook quality.md section 5: A is first and on the front, D is off it; each lot has 2,100 kg on offer.</summary>
public sealed class DecisionTests
{
    private static readonly Id<Person> Buyer = Id<Person>.New();
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private static readonly BuyingRules HouseRules = new("House", Demo.Rules, Buyer, Noon);

    [Fact]
    public void Buying_as_advised_needs_no_reason()
    {
        var decision = Taken("A", new Choice(Outcome.Buy, Weight.FromKilograms(2100m), null, "For the filter range"));

        Assert.Equal((Outcome.Buy, Outcome.Buy), (decision.Outcome, decision.Advised));
        Assert.Equal(Weight.FromKilograms(2100m), decision.Quantity);
        Assert.Null(decision.Reason);
        Assert.Equal("For the filter range", decision.Note);
    }

    [Fact]
    public void Deciding_against_the_advice_without_a_reason_is_refused()
    {
        var broken = Assert.Throws<RuleBrokenException>(() => Taken("D", new Choice(Outcome.Buy, Weight.FromKilograms(60m), " ", null)));

        Assert.Equal("The rules advise to hold: please give your reason for deciding otherwise.", broken.Message);
        Assert.Equal("Reason", broken.Field);
    }

    [Fact]
    public void Deciding_against_the_advice_keeps_the_reason_and_the_advice()
    {
        var decision = Taken("D", new Choice(Outcome.Buy, Weight.FromKilograms(60m), "Promised to the producer", null));

        Assert.Equal((Outcome.Buy, Outcome.Hold, "Promised to the producer"), (decision.Outcome, decision.Advised, decision.Reason));
    }

    [Theory]
    [InlineData("0", "How many kilograms do you want to buy?")]
    [InlineData("2100.5", "Only 2100 kg are on offer.")]
    public void A_purchase_is_more_than_nothing_and_no_more_than_is_on_offer(string kilograms, string message)
    {
        var broken = Assert.Throws<RuleBrokenException>(() => Taken("A", new Choice(Outcome.Buy, Weight.Parse(kilograms, null), null, null)));

        Assert.Equal((message, "Quantity"), (broken.Message, broken.Field));
    }

    [Fact]
    public void Holding_keeps_no_quantity()
    {
        var decision = Taken("D", new Choice(Outcome.Hold, Weight.FromKilograms(60m), null, null));

        Assert.Null(decision.Quantity);
    }

    [Fact]
    public void It_keeps_the_rules_and_the_figures_that_it_was_made_on()
    {
        var rules = new BuyingRules("House", Demo.Rules, Buyer, Noon);
        var decision = Taken("A", new Choice(Outcome.Buy, Weight.FromKilograms(60m), null, null), rules);

        rules.Edit("House", Demo.Rules with { Weights = new Weights { Score = 1m, Cost = 9m } }, Buyer, Noon);
        var (frozen, figures) = (FrozenJson.Read<RulesSnapshot>(decision.Rules), FrozenJson.Read<FiguresSnapshot>(decision.Figures));

        Assert.Equal(("House", 1, 60m), (frozen.Name, frozen.Revision, frozen.Terms.Weights.Score));
        Assert.Equal(("A", 1, Score.Of(86.5m), 8.80m, true), (figures.Ref, figures.Rank, figures.Score, figures.CostPerKilogram, figures.IsOnFront));
        Assert.Equal(2, rules.Revision);
        Assert.Equal([1, 2], rules.Revisions.Select(revision => revision.Number));
    }

    [Fact]
    public void Withdrawing_needs_a_reason_and_erases_nothing()
    {
        var decision = Taken("A", new Choice(Outcome.Buy, Weight.FromKilograms(60m), null, null));

        Assert.Throws<RuleBrokenException>(() => decision.Withdraw("", Buyer, Noon));
        decision.Withdraw("Sold to somebody else", Buyer, Noon.AddDays(1));

        Assert.True(decision.IsWithdrawn);
        Assert.Equal((Outcome.Buy, "Sold to somebody else"), (decision.Outcome, decision.WithdrawnBecause));
        Assert.Throws<RuleBrokenException>(() => decision.Withdraw("Again", Buyer, Noon.AddDays(2)));
    }

    private static Decision Taken(string name, Choice choice, BuyingRules? rules = null)
    {
        var shortlist = Demo.Ranked(Demo.RunningExample);
        var entry = shortlist.Ranked.Single(ranked => ranked.Candidate.Ref == name);
        return Decision.Take(
            Advice.On(entry, shortlist), choice, RulesSnapshot.Of(rules ?? HouseRules), FiguresSnapshot.Of(entry, shortlist), entry.Candidate, Buyer, Noon);
    }
}

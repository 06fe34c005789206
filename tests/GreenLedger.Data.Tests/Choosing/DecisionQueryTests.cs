using GreenLedger.Data.Choosing;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Choosing;

public sealed class DecisionQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_decision_comes_back_with_rules_and_figures_as_they_stood(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (market, buyer) = await OpenAsync(ledger);
        await DecideAsync(ledger, market, buyer, "A", new Choice(Outcome.Buy, Weight.FromKilograms(600m), null, "for spring"), Now);
        await using (var db = ledger.Open())
        {
            var rules = await db.BuyingRules.Whole().SingleAsync(Stop);
            rules.Edit("Renamed", rules.Terms with { Gates = new Gates { LeastScore = Score.Of(90m) } }, buyer.Id, Now.AddDays(1));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var row = Assert.Single(await new DecisionQuery(read).ListAsync(new DecisionFilter(), 0, null, Stop));

        Assert.Equal(("Ilse Brandt", null), (row.By, row.WithdrawnBy));
        Assert.Equal((1, 5, 8.80m, true), (row.Figures.Rank, row.Figures.Ranked, row.Figures.CostPerKilogram, row.Figures.IsOnFront));
        Assert.Equal(("House", 1, (Score?)null), (row.Rules.Name, row.Rules.Revision, row.Rules.Terms.Gates.LeastScore));
        Assert.Equal(Weight.FromKilograms(600m), row.Decision.Quantity);
    }

    [Theory, EveryEngine]
    public async Task Decisions_are_found_by_lot_outcome_and_state_newest_first(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (market, buyer) = await OpenAsync(ledger);
        await DecideAsync(ledger, market, buyer, "A", new Choice(Outcome.Buy, Weight.FromKilograms(60m), null, null), Now);
        await DecideAsync(ledger, market, buyer, "B", new Choice(Outcome.Decline, null, "stale sample", null), Now.AddHours(1));
        await DecideAsync(ledger, market, buyer, "E", new Choice(Outcome.Buy, Weight.FromKilograms(60m), null, null), Now.AddHours(2));
        await using (var db = ledger.Open())
        {
            var offer = market.OfferOf("E").Id;
            (await db.Decisions.SingleAsync(decision => decision.OfferId == offer, Stop)).Withdraw("sold meanwhile", buyer.Id, Now.AddHours(3));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var query = new DecisionQuery(read);

        Assert.Equal("E B A", await OrderAsync(query, new DecisionFilter()));
        Assert.Equal("E A", await OrderAsync(query, new DecisionFilter(Outcome: Outcome.Buy)));
        Assert.Equal("B A", await OrderAsync(query, new DecisionFilter(IsWithdrawn: false)));
        Assert.Equal("E", await OrderAsync(query, new DecisionFilter(IsWithdrawn: true)));
        Assert.Equal("B", await OrderAsync(query, new DecisionFilter("lot b")));
        Assert.Equal("A", await OrderAsync(query, new DecisionFilter(Offer: market.OfferOf("A").Id)));
        Assert.Equal(2, await query.CountAsync(new DecisionFilter(Outcome: Outcome.Buy), Stop));
        Assert.Equal("Ilse Brandt", (await query.ListAsync(new DecisionFilter(IsWithdrawn: true), 0, 1, Stop))[0].WithdrawnBy);
    }

    [Theory, EveryEngine]
    public async Task There_is_no_decision_of_an_unknown_identity(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();

        Assert.Null(await new DecisionQuery(db).FindAsync(Id<Decision>.New(), Stop));
    }

    private static async Task<string> OrderAsync(DecisionQuery query, DecisionFilter filter) =>
        string.Join(" ", (await query.ListAsync(filter, 0, null, Stop)).Select(row => row.Figures.Ref));

    internal static async Task DecideAsync(Ledger ledger, OpenMarket market, Person by, string name, Choice choice, DateTimeOffset at)
    {
        await using var db = ledger.Open();
        var costs = new LandedCostsQuery(db);
        var shortlist = (await new ShortlistQuery(db, costs, new CandidateQuery(db, costs)).RankAsync(market.Rules.Terms, market.Today, new ShortlistFilter(), Stop))!;
        var entry = shortlist.Find(market.OfferOf(name).Id)!;
        db.Add(Decision.Take(
            BuyingRules.Advise(entry, shortlist), choice, RulesSnapshot.Of(market.Rules), FiguresSnapshot.Of(entry, shortlist), entry.Candidate, by.Id, at));
        await db.SaveChangesAsync(Stop);
    }

    internal static async Task<(OpenMarket Market, Person Buyer)> OpenAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        await LedgerDatabase.PrepareAsync(db, Stop);
        var buyer = new Person("Ilse Brandt", Role.Buyer);
        db.AddRange(new House("Harbour Roastery", Currency.Usd), buyer);
        await db.SaveChangesAsync(Stop);
        return (await OpenMarket.StoreAsync(db, Currency.Usd, Now, Stop), buyer);
    }
}

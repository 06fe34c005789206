using GreenLedger.Data.Choosing;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Choosing;

public sealed class ShortlistQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine] // handbook quality.md section 9, value 27: front C B A E, order A E B C D
    public async Task Stored_offers_rank_as_the_handbook_says(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);

        var shortlist = await RankAsync(ledger, market, market.Rules.Terms);

        Assert.Equal("A E B C D", Order(shortlist.Ranked));
        Assert.Equal("C B A E", Order(shortlist.Front));
        Assert.Equal([0.6634, 0.6000, 0.5534, 0.4000, 0.3739], shortlist.Ranked.Select(entry => Math.Round(entry.Terms.Total, 4)));
        Assert.Equal(8.80m, shortlist.Ranked[0].Candidate.CostPerKilogram);
    }

    [Theory, EveryEngine]
    public async Task Chances_add_up_to_one_best_and_three_places(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);

        var shortlist = await RankAsync(ledger, market, market.Rules.Terms);

        Assert.Equal(1, shortlist.Ranked.Sum(entry => entry.Chance!.Value.Best), 9);
        Assert.Equal(3, shortlist.Ranked.Sum(entry => entry.Chance!.Value.FirstThree), 9);
    }

    [Theory, EveryEngine]
    public async Task A_lot_that_only_its_seller_scored_is_ranked_where_the_rules_say_so(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);

        var without = await RankAsync(ledger, market, market.Rules.Terms);
        var with = await RankAsync(ledger, market, market.Rules.Terms with { RanksStatedScores = true });

        Assert.Equal(Gate.NoScore, without.Failed.Single(entry => entry.Candidate.Ref == "F").FailedGates);
        Assert.Equal(ScoreOrigin.Stated, with.Ranked.Single(entry => entry.Candidate.Ref == "F").Score!.Value.Origin);
    }

    [Theory, EveryEngine]
    public async Task A_later_grading_of_moisture_does_not_hide_the_defects_counted_before(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);
        await using (var db = ledger.Open())
        {
            var sample = await db.Samples.FirstAsync(sample => sample.LotId == market.LotOf("A").Id, Stop);
            db.Add(Grade(sample, market.Today.AddDays(-3)).Measure(Percent.Of(13m), "oven", WaterActivity.Of(0.61m), null).StateDefects(FullDefects.Of(1), FullDefects.Of(6)));
            db.Add(Grade(sample, market.Today.AddDays(-1)).Measure(Percent.Of(11.2m), "oven", null, null));
            await db.SaveChangesAsync(Stop);
        }

        var shortlist = await RankAsync(ledger, market, market.Rules.Terms with { Gates = new Gates { HighestMoisture = Percent.Of(12m), HighestCategory2 = FullDefects.Of(5) } });

        var entry = shortlist.Failed.Single(entry => entry.Candidate.Ref == "A");
        Assert.Equal(Gate.Category2, entry.FailedGates);
        Assert.Equal((Percent.Of(11.2m), WaterActivity.Of(0.61m)), (entry.Candidate.Moisture, entry.Candidate.WaterActivity));
    }

    [Theory, EveryEngine]
    public async Task What_is_sold_or_has_run_out_is_not_ranked_but_predicts_prices(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);
        await using (var db = ledger.Open())
        {
            var (sold, old) = (await FindAsync(db, market, "A"), await FindAsync(db, market, "B"));
            sold.Sell(market.Today);
            old.Revise(new Packing(35, Weight.FromKilograms(60m), null), new Asking(old.Price, null), new Terms(old.Incoterm, old.Place, market.Today.AddDays(-1)), OfferState.OnOffer, null, market.Today);
            await db.SaveChangesAsync(Stop);
        }

        var shortlist = await RankAsync(ledger, market, market.Rules.Terms);

        Assert.Equal("E C D", Order(shortlist.Ranked));
        Assert.Equal(5, shortlist.Prices!.Offers);
    }

    /// <summary>
    /// Handbook quality.md sections 5 and 9, value 28: the running example, one process and one origin, b = 0.1279107378 and the
    /// residuals A −.069724 and E +.069960; a price lies exp(residual) − 1 from the predicted one.
    /// </summary>
    [Theory, EveryEngine]
    public async Task Prices_are_predicted_from_the_offers_of_the_year(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);

        var shortlist = await RankAsync(ledger, market, market.Rules.Terms);

        Assert.Equal(0.1279107378, shortlist.Prices!.PerPoint, 8);
        Assert.Equal(Math.Exp(-0.069724) - 1, Difference(shortlist, "A"), 5);
        Assert.Equal(Math.Exp(0.069960) - 1, Difference(shortlist, "E"), 5);
    }

    [Theory, EveryEngine]
    public async Task A_missing_rate_stops_one_row_with_its_sentence(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);
        await using (var db = ledger.Open())
        {
            var offer = await FindAsync(db, market, "C");
            offer.Revise(new Packing(35, Weight.FromKilograms(60m), null), Asking.Outright(PricePerWeight.Of(7m, Currency.Of("CHF"), PriceUnit.Kilogram)), new Terms(offer.Incoterm, offer.Place, null), OfferState.OnOffer, null, market.Today);
            await db.SaveChangesAsync(Stop);
        }

        var shortlist = await RankAsync(ledger, market, market.Rules.Terms);

        var entry = shortlist.Failed.Single(entry => entry.Candidate.Ref == "C");
        Assert.Equal(Gate.NoCost, entry.FailedGates);
        Assert.Contains("no exchange rate for CHF", entry.Candidate.CostProblem, StringComparison.Ordinal);
        Assert.Null(entry.Candidate.CostPerKilogram);
        Assert.Equal("A E B D", Order(shortlist.Ranked));
    }

    [Theory, EveryEngine]
    public async Task Searching_leaves_the_other_lots_out(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var market = await OpenAsync(ledger);

        var some = await RankAsync(ledger, market, market.Rules.Terms, "lot e");
        var all = await RankAsync(ledger, market, market.Rules.Terms, "ribeirao");

        Assert.Equal("E", Order(some.Entries));
        Assert.Equal(6, all.Entries.Count());
    }

    [Theory, EveryEngine]
    public async Task Without_a_house_there_is_nothing_to_rank(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();

        var shortlist = await Query(db).RankAsync(new BuyingRules("Any", new RuleTerms
        {
            FormId = Domain.Cupping.CuppingForm.HundredPointId,
            Currency = Currency.Usd,
            Anchors = new Anchors { LowScore = Score.Of(80m), HighScore = Score.Of(90m), LowCost = 1m, HighCost = 2m },
        }, null, Now).Terms, new DateOnly(2026, 11, 25), new ShortlistFilter(), Stop);

        Assert.Null(shortlist);
    }

    private static double Difference(Shortlist shortlist, string name) =>
        shortlist.Ranked.Single(entry => entry.Candidate.Ref == name).PriceCheck!.Difference!.Value;

    private static GreenGrade Grade(Sample sample, DateOnly on) => new(sample.Id, sample.LotId, on, null, Weight.FromGrams(350m));

    private static Task<Offer> FindAsync(LedgerContext db, OpenMarket market, string name)
    {
        var id = market.OfferOf(name).Id;
        return db.Offers.Include(offer => offer.Prices).SingleAsync(offer => offer.Id == id, Stop);
    }

    private static string Order(IEnumerable<ShortlistEntry> entries) => string.Join(" ", entries.Select(entry => entry.Candidate.Ref));

    private static async Task<OpenMarket> OpenAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        await LedgerDatabase.PrepareAsync(db, Stop);
        db.AddRange(new House("Harbour Roastery", Currency.Usd), new Person("Ines Duarte", Role.LeadCupper));
        await db.SaveChangesAsync(Stop);
        return await OpenMarket.StoreAsync(db, Currency.Usd, Now, Stop);
    }

    private static ShortlistQuery Query(LedgerContext db)
    {
        var costs = new LandedCostsQuery(db);
        return new ShortlistQuery(db, costs, new CandidateQuery(db, costs));
    }

    private static async Task<Shortlist> RankAsync(Ledger ledger, OpenMarket market, RuleTerms terms, string? search = null)
    {
        await using var db = ledger.Open();
        return (await Query(db).RankAsync(terms, market.Today, new ShortlistFilter(search), Stop))!;
    }
}

using GreenLedger.Data.Pricing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.SeedDemo;
using MathNet.Numerics;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Demo;

/// <summary>The ranges below are those that the demo is meant to show (our own choice, no source).</summary>
[Collection(FilledDemo.Name)]
public sealed class DemoSeedTests(FilledDemo demo, Ledgers ledgers)
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Two_years_of_offers_from_at_least_ten_origins_stand_in_the_ledger(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var offers = await db.Offers.AsNoTracking().ToListAsync(Token);

        Assert.InRange(offers.Count, 300, 600);
        Assert.InRange(offers.Count(offer => offer.State == OfferState.OnOffer), 150, 250);
        Assert.InRange(await db.Lots.Select(lot => lot.CountryCode).Distinct().CountAsync(Token), 10, 30);
        Assert.True(offers.Min(offer => offer.FirstOfferedOn) < new DateOnly(2025, 1, 25));
        Assert.True(offers.Max(offer => offer.RevisedOn) <= new DateOnly(2026, 11, 25));
        Assert.All(Enum.GetValues<OfferState>(), state => Assert.Contains(offers, offer => offer.State == state));
    }

    [Theory, EveryEngine]
    public async Task Prices_have_a_history_and_some_are_differentials(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var offers = await db.Offers.AsNoTracking().Include(offer => offer.Prices).ToListAsync(Token);

        Assert.Contains(offers, offer => offer.Prices.Count > 3);
        Assert.Contains(offers, offer => offer.Differential?.Month.Market == FuturesMarket.Arabica);
        Assert.Contains(offers, offer => offer.Differential?.Month.Market == FuturesMarket.Robusta);
        Assert.All(offers, offer => Assert.Equal(offer.Prices.OrderBy(price => price.On).Last().State, offer.State));
    }

    [Theory, EveryEngine]
    public async Task Samples_are_graded_and_cupped_by_several_cuppers_on_both_forms(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var sheets = await db.ScoreSheets.CountAsync(Token);
        var sessions = await db.CuppingSessions.AsNoTracking().Include(session => session.Samples).ToListAsync(Token);
        var results = await db.SampleResults.AsNoTracking().ToListAsync(Token);
        var grades = await db.GreenGrades.AsNoTracking().ToListAsync(Token);

        Assert.InRange(sheets, 1_500, 3_000);
        Assert.Single(sessions, session => !session.IsClosed);
        Assert.Contains(results, result => result.Cuppers == 1);
        Assert.Contains(results, result => result.Cuppers >= 4);
        Assert.Equal(2, results.Select(result => result.FormId).Distinct().Count());
        Assert.Contains(grades, grade => grade.Moisture > Percent.Of(12.5m));
        Assert.True(await db.Samples.CountAsync(Token) > sessions.Sum(session => session.Samples.Count));
    }

    [Theory, EveryEngine]
    public async Task Scores_are_those_of_coffee_that_a_buyer_is_offered(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var scores = await db.SampleResults.AsNoTracking().Where(result => result.FormId == CuppingForm.HundredPointId)
            .Select(result => result.Fitted).ToListAsync(Token);

        Assert.InRange(scores.Average(score => score.Points), 83m, 86m);
        Assert.InRange(scores.Max(score => score.Points), 88m, 93m);
        Assert.InRange(scores.Min(score => score.Points), 70m, 80m);
    }

    [Theory, EveryEngine]
    public async Task A_better_coffee_asks_about_a_tenth_more_for_a_point(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var scores = await db.SampleResults.AsNoTracking().Where(result => result.FormId == CuppingForm.HundredPointId)
            .GroupBy(result => result.LotId)
            .Select(lot => new { lot.Key, Points = lot.Average(result => result.Fitted.Millionths) / 1_000_000.0 })
            .ToDictionaryAsync(lot => lot.Key, lot => lot.Points, Token);

        var priced = (await db.Offers.AsNoTracking().ToListAsync(Token))
            .Where(offer => offer.Price?.Currency == Currency.Usd && scores.ContainsKey(offer.LotId)).ToList();
        var (_, slope) = Fit.Line(
            [.. priced.Select(offer => scores[offer.LotId])],
            [.. priced.Select(offer => Math.Log((double)offer.Price!.Value.PerKilogram))]);

        Assert.InRange(priced.Count, 100, 600);
        Assert.InRange(slope, 0.06, 0.18);
    }

    [Theory, EveryEngine]
    public async Task Every_offer_has_a_landed_cost_a_little_above_its_price(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var lots = await db.Lots.AsNoTracking().ToDictionaryAsync(lot => lot.Id, Token);
        var costs = await new LandedCostsQuery(db).FindAsync(new DateOnly(2026, 11, 25), Token);

        var landed = (await db.Offers.AsNoTracking().Where(offer => offer.State == OfferState.OnOffer).ToListAsync(Token))
            .ConvertAll(offer => costs!.Of(new Parcel(
                offer.Price, offer.Differential, offer.Incoterm!.Value, offer.Place, lots[offer.LotId].CountryCode, offer.Quantity, offer.Bags)));

        Assert.All(landed, cost => Assert.Empty(cost.Problems));
        Assert.All(landed, cost => Assert.InRange(cost.PerKilogram!.Value, 3m, 40m));
        Assert.Contains(landed, cost => cost.Assumptions.Count > 0);
        Assert.InRange(landed.Select(cost => cost.Route!.Id).Distinct().Count(), 10, 30);
    }

    [Theory, EveryEngine]
    public async Task No_name_stands_twice(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var people = await db.People.Select(person => person.Name).ToListAsync(Token);
        var suppliers = await db.Suppliers.Select(supplier => supplier.Name).ToListAsync(Token);
        var producers = await db.Producers.Select(producer => producer.Name).ToListAsync(Token);
        var lots = await db.Lots.Select(lot => lot.CropYear + " " + lot.Name).ToListAsync(Token);

        Assert.All([people, suppliers, producers, lots], names => Assert.Equal(names.Count, names.Distinct().Count()));
    }

    [Theory, EveryEngine]
    public async Task Everybody_told_can_sign_in_and_every_role_is_held(Engine engine)
    {
        var (ledger, access) = await demo.OnAsync(engine);
        await using var db = ledger.Open();

        var people = await db.People.AsNoTracking().ToListAsync(Token);

        Assert.Equal(people.Select(person => person.Name).Order(), access.SignIns.Select(person => person.Name).Order());
        Assert.All(
            [Role.Viewer, Role.Cupper, Role.LeadCupper, Role.Buyer, Role.Administrator],
            role => Assert.Contains(people, person => person.Roles.HasFlag(role)));
        Assert.Equal(await db.ApiTokens.Select(token => token.Hash).SingleAsync(Token), ApiToken.HashOf(access.Token!));
    }

    [Fact]
    public async Task The_same_day_gives_the_same_ledger()
    {
        await using var other = await ledgers.NewAsync(Engine.Sqlite);
        await using var first = await demo.OpenAsync(Engine.Sqlite);
        await using var second = other.Open();

        await DemoSeed.FillAsync(second, FilledDemo.Now, Token);

        Assert.Equal(await Written.OfAsync(first), await Written.OfAsync(second));
    }

    [Fact]
    public async Task Filling_again_changes_nothing_and_tells_the_same()
    {
        var (ledger, access) = await demo.OnAsync(Engine.Sqlite);
        await using var before = ledger.Open();
        var rows = await Written.RowsAsync(before);

        await using var db = ledger.Open();
        var again = await DemoSeed.FillAsync(db, FilledDemo.Now.AddDays(1), Token);

        Assert.Equal(rows, await Written.RowsAsync(db));
        Assert.Equal(access.Lines, again.Lines);
    }

    [Theory, EveryEngine]
    public async Task A_ledger_that_holds_a_house_is_left_as_it_is(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        await LedgerDatabase.PrepareAsync(db, Token);
        db.Add(new House("Harbour Roastery", Currency.Eur));
        await db.SaveChangesAsync(Token);
        var rows = await Written.RowsAsync(db);

        var access = await DemoSeed.FillAsync(db, FilledDemo.Now, Token);

        Assert.Equal(rows, await Written.RowsAsync(db));
        Assert.Empty(access.Lines);
    }
}

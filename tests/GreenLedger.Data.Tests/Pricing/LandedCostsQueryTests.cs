using GreenLedger.Data.Pricing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Pricing;

public sealed class LandedCostsQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Sunday = new(2026, 11, 22);
    private static readonly DateOnly Friday = new(2026, 11, 20);

    private static readonly Parcel Parcel = new(
        PricePerWeight.Of(5.80m, Currency.Usd, PriceUnit.Kilogram), null, Incoterm.Fob, "Santos", "BR", Weight.FromKilograms(19_200), 320);

    [Theory, EveryEngine] // worked by hand: 19,200 × 5.80 = 111,360 USD / 1.16 = 96,000 EUR, and 2,320 USD / 1.16 = 2,000 EUR
    public async Task A_stored_route_and_rates_give_the_landed_cost(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await StoreAsync(ledger, Rate(Currency.Usd, 1.16m, Friday));

        var costs = await CostsAsync(ledger, Sunday);

        Assert.Equal(Money.Of(98_000m, Currency.Eur), costs!.Of(Parcel).Total);
    }

    [Theory, EveryEngine] // handbook, trade 12 no. 74: a rate asked for a Sunday is Friday's, dated Friday
    public async Task The_last_earlier_rate_holds_and_a_later_one_does_not(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await StoreAsync(
            ledger,
            Rate(Currency.Usd, 1.10m, new DateOnly(2025, 1, 2)),
            Rate(Currency.Usd, 1.16m, Friday),
            Rate(Currency.Usd, 1.20m, new DateOnly(2026, 11, 23)),
            Rate(Currency.Gbp, 0.87m, Friday),
            new ExchangeRate(Currency.Usd, Sunday, 1.99m, "customs", null, Now, RateKind.Customs));

        await using var db = ledger.Open();
        var rates = await db.ExchangeRates.HoldingOn(RateKind.Market, Sunday).ToListAsync(TestContext.Current.CancellationToken);

        Assert.Equal([("GBP", 0.87m, Friday), ("USD", 1.16m, Friday)], rates.OrderBy(rate => rate.Currency).Select(rate => (rate.Currency.Code, rate.UnitsPerEuro, rate.On)));
    }

    [Theory, EveryEngine]
    public async Task The_last_earlier_quote_of_each_month_holds(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var march = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3);
        var may = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 5);
        await using (var db = ledger.Open())
        {
            db.AddRange(Quote(march, 280m, Friday.AddDays(-1)), Quote(march, 285.40m, Friday), Quote(march, 300m, Sunday.AddDays(1)), Quote(may, 279.15m, Friday.AddDays(-3)));
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await using var read = ledger.Open();
        var quotes = await read.FuturesQuotes.HoldingOn(Sunday).ToListAsync(TestContext.Current.CancellationToken);

        Assert.Equal([("KCH27", 285.40m), ("KCK27", 279.15m)], quotes.OrderBy(quote => quote.Month).Select(quote => (quote.Month.ToString(), quote.Quoted)));
    }

    [Theory, EveryEngine]
    public async Task New_answers_replace_the_legs_of_a_route(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await StoreAsync(ledger);
        await using (var db = ledger.Open())
        {
            var route = await db.Routes.Whole().SingleAsync(TestContext.Current.CancellationToken);
            route.Answer([RouteLeg.None(CostStage.Packing), RouteLeg.From(new(CostStage.Finance, LegWay.Interest365, 7.5m, Time: 65))]);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await using var read = ledger.Open();
        var again = await read.Routes.Whole().SingleAsync(TestContext.Current.CancellationToken);

        Assert.Equal(2, await read.Set<RouteLeg>().CountAsync(TestContext.Current.CancellationToken));
        Assert.Equal([CostStage.Packing, CostStage.Finance], again.Legs.Select(leg => leg.Stage));
        Assert.Equal((Percent.Of(7.5m), 65, InterestYear.Act365), (again.Legs[1].Rate, again.Legs[1].Days, again.Legs[1].Year));
    }

    [Theory, EveryEngine]
    public async Task A_currency_has_one_rate_a_day(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await StoreAsync(ledger, Rate(Currency.Usd, 1.16m, Friday));
        await using var db = ledger.Open();
        db.Add(Rate(Currency.Usd, 1.17m, Friday));

        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(TestContext.Current.CancellationToken));
    }

    [Theory, EveryEngine]
    public async Task Without_a_house_there_is_nothing_to_reckon_in(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);

        Assert.Null(await CostsAsync(ledger, Sunday));
    }

    private static async Task<LandedCosts?> CostsAsync(Ledger ledger, DateOnly on)
    {
        await using var db = ledger.Open();
        return await new LandedCostsQuery(db).FindAsync(on, TestContext.Current.CancellationToken);
    }

    private static async Task StoreAsync(Ledger ledger, params ExchangeRate[] rates)
    {
        await using var db = ledger.Open();
        var route = new Route("Brazil to Antwerp", "Santos", "Antwerp", "Quay warehouse", "BR");
        route.Answer(CostStages.All.Select(stage => stage == CostStage.Freight
            ? RouteLeg.From(new(stage, LegWay.PerContainer, 2_320m, Currency.Usd))
            : RouteLeg.None(stage)));
        db.Add(new House("Harbour Roastery", Currency.Eur));
        db.Add(route);
        db.AddRange(rates.AsEnumerable());
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
    }

    private static ExchangeRate Rate(Currency currency, decimal unitsPerEuro, DateOnly on) =>
        new(currency, on, unitsPerEuro, "European Central Bank", null, Now);

    private static FuturesQuote Quote(FuturesMonth month, decimal quoted, DateOnly on) =>
        new(month, on, quoted, "the exchange's settlement", null, Now);
}

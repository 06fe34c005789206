using GreenLedger.Data;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.SeedDemo.Arrivals;
using GreenLedger.SeedDemo.Certificates;
using GreenLedger.SeedDemo.Choosing;
using GreenLedger.SeedDemo.Contracts;
using GreenLedger.SeedDemo.Cupping;
using GreenLedger.SeedDemo.Grading;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.Origins;
using GreenLedger.SeedDemo.Papers;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Pricing;
using GreenLedger.SeedDemo.Roasting;
using GreenLedger.SeedDemo.Samples;
using GreenLedger.SeedDemo.Stock;
using GreenLedger.SeedDemo.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.SeedDemo;

/// <summary>Fills an empty ledger with two years of an invented house, ending today.</summary>
public static class DemoSeed
{
    private const int Seed = 19;

    /// <summary>
    /// Writes the scenario in one transaction. A ledger that holds anything already is left exactly as it is. The same
    /// day gives the same scenario.
    /// </summary>
    /// <param name="now">The end of the two years.</param>
    public static async Task<DemoAccess> FillAsync(LedgerContext db, DateTimeOffset now, CancellationToken cancellationToken = default)
    {
        await LedgerDatabase.PrepareAsync(db, cancellationToken);
        var cast = new Cast();
        if (!await db.Houses.AnyAsync(cancellationToken) && !await db.People.AnyAsync(cancellationToken))
        {
            await using var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
            await WriteAsync(db, cast, now, cancellationToken);
            await transaction.CommitAsync(cancellationToken);
        }

        return await Entrance.AccessAsync(db, cast, cancellationToken);
    }

    private static async Task WriteAsync(LedgerContext db, Cast cast, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var today = DateOnly.FromDateTime(now.Date);
        var opening = At(today.AddYears(-Market.Years).AddDays(-10));
        using var diary = new Diary(db.ChangeTracker, cast, opening);
        await Entrance.OpenAsync(db, cast, opening, cancellationToken);
        var countries = await db.Countries.ToDictionaryAsync(country => country.Code, cancellationToken);
        var methods = await db.ProcessMethods.ToDictionaryAsync(method => method.Name, cancellationToken);
        var forms = await db.CuppingForms.ToListAsync(cancellationToken);
        var market = new Market(today, new Draw(Seed + 1));
        var growers = new Growers(new Draw(Seed + 2));
        var shelf = new Shelf(countries, new ListReference(countries.Values, methods.Values, new ListChecks(), today), growers.Producers, cast.Buyer.Id, new Draw(Seed + 7));
        foreach (var list in Lists(market, new Harvests(growers, countries, methods, new Draw(Seed + 3))))
        {
            await shelf.TakeAsync(list);
        }

        var room = new SampleRoom(cast, new Draw(Seed + 4), new Draw(Seed + 10));
        var bags = room.Receive(shelf.Coffees, today);
        var grades = new GradingTable(cast, today, new Draw(Seed + 5)).Grade(bags).ToList();
        var sessions = new CuppingRoom(cast, forms, now, new Draw(Seed + 6)).Cup(bags);
        var corner = new RoastingCorner(cast, opening, now, new Draw(Seed + 11));
        var roasts = corner.Roast(bags, sessions).ToList();
        var (routes, rates, quotes) = (Routes.All(), Figures.Rates(market, cast.Buyer.Id).ToList(), Figures.Quotes(market, cast.Buyer.Id).ToList());
        var rules = new BuyersRules(methods, cast.Buyer.Id, opening.AddDays(60));
        var asItStood = new AsItStood(cast.House, shelf.Coffees, sessions, grades, routes, rates, quotes);
        var decisions = new BuyersHand(cast, rules, asItStood, shelf.Coffees, new Draw(Seed + 8)).Decide(today.AddYears(-Market.Years), today);
        var quay = new Quayside(cast, now, new Draw(Seed + 13));
        var contracts = new PurchaseDesk(cast, market, shelf.Coffees, shelf.Suppliers, quay, now, new Draw(Seed + 12)).Write(decisions);
        quay.Paper(await db.DocumentRules.OrderBy(rule => rule.Position).ToListAsync(cancellationToken), shelf.Coffees.ToDictionary(coffee => coffee.Lot.Id, coffee => coffee.Lot));
        var landed = new ArrivalTable(cast, forms, shelf.Coffees, now, new Draw(Seed + 14)).Cup(quay.Landings);
        var aged = new StockCheck(cast, forms, shelf.Coffees, now, new Draw(Seed + 21)).Cup(quay.Landings);

        db.AddRange([.. routes, .. growers.Producers, .. shelf.Suppliers, .. rules.All]);
        db.AddRange(new AddressBook(new Draw(Seed + 20)).Write(shelf.Suppliers));
        db.AddRange(rates);
        db.AddRange(quotes);
        await db.SaveChangesAsync(cancellationToken);
        db.AddRange([.. shelf.Mappings, .. shelf.Files, .. shelf.Lists]);
        db.AddRange(shelf.Coffees.Select(coffee => coffee.Lot));
        db.AddRange(shelf.Coffees.Select(coffee => coffee.Offer));
        await db.SaveChangesAsync(cancellationToken);
        db.AddRange(bags.Select(bag => bag.Sample));
        db.AddRange(room.Expect(shelf.Coffees, bags, now));
        db.AddRange(grades);
        db.Add(corner.Protocol);
        db.AddRange(roasts);
        db.AddRange(sessions);
        db.AddRange(decisions);
        db.AddRange(contracts);
        db.AddRange(quay.Shipments);
        db.AddRange(quay.Landings.Select(landing => landing.Arrival));
        db.AddRange(landed);
        db.AddRange(aged);
        db.AddRange(new Storekeeper(cast, rates, shelf.Coffees, now, new Draw(Seed + 15)).Keep(quay.Landings, contracts, landed.OfType<Claim>()));
        db.AddRange(new Fields(cast, now, new Draw(Seed + 16)).Chart(shelf.Coffees.ToDictionary(coffee => coffee.Lot.Id, coffee => coffee.Lot), growers.Producers, quay.Landings));
        db.AddRange(new CertificateFolder(cast, now, new Draw(Seed + 21)).File(shelf.Coffees.ToDictionary(coffee => coffee.Lot.Id, coffee => coffee.Lot), contracts));
        db.AddRange(new Scrapbook(cast, now, new Draw(Seed + 9)).Write(shelf.Coffees, bags, contracts));
        await db.SaveChangesAsync(cancellationToken);
        db.AddRange(await new RecallDrill(cast, now).HoldAsync(db, cancellationToken) is { } recall ? [recall] : Array.Empty<object>());
        await db.SaveChangesAsync(cancellationToken);
    }

    private static DateTimeOffset At(DateOnly day) => new(day.ToDateTime(new TimeOnly(9, 0)), TimeSpan.Zero);

    private static IEnumerable<SellersList> Lists(Market market, Harvests harvests)
    {
        var desk = new PriceDesk(market);
        return Seller.All
            .SelectMany((seller, i) => new SellersBook(seller, harvests, desk, new Draw(Seed + 100 + i))
                .Lists(market.Today.AddYears(-Market.Years), market.Today))
            .OrderBy(list => list.On);
    }
}

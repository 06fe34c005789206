using GreenLedger.Data;
using GreenLedger.SeedDemo.Cupping;
using GreenLedger.SeedDemo.Grading;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.Origins;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Pricing;
using GreenLedger.SeedDemo.Samples;
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
        await Entrance.OpenAsync(db, cast, now, cancellationToken);
        var today = DateOnly.FromDateTime(now.Date);
        var countries = await db.Countries.ToDictionaryAsync(country => country.Code, cancellationToken);
        var methods = await db.ProcessMethods.ToDictionaryAsync(method => method.Name, cancellationToken);
        var market = new Market(today, new Draw(Seed + 1));
        var growers = new Growers(new Draw(Seed + 2));
        var shelf = new Shelf(Seller.All, methods);
        foreach (var list in Lists(market, new Harvests(growers, countries, methods, new Draw(Seed + 3))))
        {
            shelf.Take(list);
        }

        var bags = new SampleRoom(new Draw(Seed + 4)).Receive(shelf.Coffees, today);
        var forms = await db.CuppingForms.ToListAsync(cancellationToken);
        db.AddRange(Routes.All());
        db.AddRange(Figures.Rates(market, cast.Buyer.Id));
        db.AddRange(Figures.Quotes(market, cast.Buyer.Id));
        db.AddRange(growers.Producers);
        db.AddRange(shelf.Suppliers);
        db.AddRange(shelf.Coffees.Select(coffee => coffee.Lot));
        db.AddRange(shelf.Coffees.Select(coffee => coffee.Offer));
        db.AddRange(bags.Select(bag => bag.Sample));
        db.AddRange(new GradingTable(cast, today, new Draw(Seed + 5)).Grade(bags));
        db.AddRange(new CuppingRoom(cast, forms, now, new Draw(Seed + 6)).Cup(bags));
        await db.SaveChangesAsync(cancellationToken);
    }

    private static IEnumerable<SellersList> Lists(Market market, Harvests harvests)
    {
        var desk = new PriceDesk(market);
        return Seller.All
            .SelectMany((seller, i) => new SellersBook(seller, harvests, desk, new Draw(Seed + 100 + i))
                .Lists(market.Today.AddYears(-Market.Years), market.Today))
            .OrderBy(list => list.On);
    }
}

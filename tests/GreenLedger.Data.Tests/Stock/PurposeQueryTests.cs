using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Stock;

public sealed class PurposeQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 26, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 11, 26);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>
    /// Worked by hand: of 1,000 kg 60 are released for the filter, 20 for none and 30 for the base but taken back; 100 are reserved for the filter and
    /// 50 for a fair. The lot serves both: what is free, 770 kg, is shared 3 to 1 by planned use: 577.5 and 192.5.
    /// </summary>
    [Theory, EveryEngine]
    public async Task Stock_and_use_are_shared_among_purposes(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();
        var query = new PurposeQuery(db, new ExpectedQuery(db, new StockQuery(db)));

        var rows = await query.ListAsync(Today, Stop);
        var lot = Assert.Single(await query.LotsAsync(Today, Stop));

        var (basis, filter) = (rows[0].Cover, rows[1].Cover);
        Assert.Equal(["Base", "Filter"], rows.Select(row => row.Purpose.Name));
        Assert.Equal((Kg(192.5m), Kg(677.5m)), (basis.Stock.Available, filter.Stock.Available));
        Assert.Equal((Kg(150m), Kg(50m)), (basis.Stock.Reserved, filter.Stock.Reserved));
        Assert.Equal((Kg(60m), 0), (filter.Stock.Used.Mean, basis.Stock.Used.Weeks));
        Assert.Equal((Kg(80m), Kg(770m)), (lot.Use.Mean, lot.Available));
    }

    private static async Task FillAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var (keeper, store) = (new Person("Koos Waard", Role.Buyer), new Warehouse("Quay store"));
        var lot = new Lot("KE-1", "Gatura AA");
        var (basis, filter) = (new Purpose(new PurposeTerms("Base", null, null, null, Kg(100m))), new Purpose(new PurposeTerms("Filter", null, null, null, Kg(300m))));
        basis.Serve(lot.Id);
        filter.Serve(lot.Id);
        var holding = new Holding(lot.Id, store.Id);
        db.AddRange(keeper, store, lot, basis, filter, holding);
        db.Add(holding.Add(MovementKind.Opening, new StockAmount(20, Kg(1_000m), Kg(1_000m)), new MovementNote(Today.AddDays(-3), null, null), keeper.Id, Noon));
        db.Add(Release(holding, 60m, filter.Id, keeper.Id));
        db.Add(Release(holding, 20m, null, keeper.Id));
        var wrong = Release(holding, 30m, basis.Id, keeper.Id);
        db.Add(wrong);
        db.Add(holding.Reverse(wrong, false, Days(holding), new MovementNote(Today, null, "Wrong lot"), keeper.Id, Noon));
        db.Add(holding.Reserve(Kg(100m), "Filter", keeper.Id, Noon, filter.Id));
        db.Add(holding.Reserve(Kg(50m), "the fair", keeper.Id, Noon));
        await db.SaveChangesAsync(Stop);
    }

    private static Movement Release(Holding holding, decimal kilograms, Id<Purpose>? purpose, Id<Person> by) =>
        holding.Take(MovementKind.Release, 0, Kg(kilograms), Days(holding), new MovementNote(Today, null, null, purpose), by, Noon);

    private static RunningStock Days(Holding holding) => new([(Today.AddDays(-3), holding.Amount)]);

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}

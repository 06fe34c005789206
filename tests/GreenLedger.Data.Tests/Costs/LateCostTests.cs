using GreenLedger.Data.Costs;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Costs;

/// <summary>3,000 kg at 6.20 (handbook, trade 9.1 example H), of which 1,200 kg are released on day 10 and 300 kg on day 30.</summary>
public sealed class LateCostTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 6, 26, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Came = new(2026, 3, 2);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_late_bill_values_what_is_left_and_is_told_apart_for_what_is_gone(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var kept = await FillAsync(ledger);
        await PostAsync(ledger, kept, CostStage.DestinationTerminal, 300m, 20);
        await using var db = ledger.Open();

        var cost = await new LotCostQuery(db).FindAsync(kept.Lot, Stop);
        var before = await new ValuationQuery(db).FindAsync(Came.AddDays(19), Stop);
        var after = await new ValuationQuery(db).FindAsync(Came.AddDays(20), Stop);
        var later = await new ValuationQuery(db).FindAsync(Came.AddDays(30), Stop);

        // Worked by hand, handbook, trade 9.2: 1,200 of 3,000 kg were gone: 120.00 of 300.00; 180.00 re-value 1,800 kg.
        Assert.Equal((Eur(18_900m), Eur(120m), Eur(120m)), (cost.Total, cost.Late, cost.LateAccounting));
        Assert.Equal((Eur(11_160m), Eur(11_340m)), (before.Rows[0].Cost, after.Rows[0].Cost));
        Assert.Empty(before.Late);
        Assert.Equal((kept.Lot, Eur(120m)), (Assert.Single(after.Late).LotId, after.Late[0].Late));
        // What was known of 1,200 kg when they left (7,440.00), what came late and what is left are all that was billed.
        Assert.Equal(cost.Accounting, Eur(7_440m) + after.Late[0].Late + after.Rows[0].Cost!.Value);
        // 300 kg more left at 6.30 after the bill.
        Assert.Equal(Eur(7_440m + 1_890m), cost.Issued);
        // 1,500 kg are left at 6.30; a release after the bill makes nothing late.
        Assert.Equal((Eur(9_450m), Eur(120m)), (later.Rows[0].Cost, Assert.Single(later.LateSince(Came.AddDays(20))).Late));
        Assert.Empty(later.LateSince(Came.AddDays(21)));
    }

    [Theory, EveryEngine]
    public async Task A_release_that_was_taken_back_was_never_gone_and_a_transfer_is_no_going(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var kept = await FillAsync(ledger);
        await PostAsync(ledger, kept, CostStage.DestinationTerminal, 300m, 40);
        await using (var db = ledger.Open())
        {
            var holding = await db.HoldingAsync(kept.Lot, kept.Warehouse, Stop);
            var release = await db.Movements.SingleAsync(one => one.Kind == MovementKind.Release && one.On == Came.AddDays(30), Stop);
            db.Add(holding.Reverse(release, false, await new StockQuery(db).DaysAsync(holding.Id, Stop), new MovementNote(Came.AddDays(41), null, "Wrong lot"), kept.Keeper, Noon));
            var store = new Warehouse("Rail store");
            db.Add(store);
            await db.SaveChangesAsync(Stop);
            var (left, came) = holding.Transfer(await db.HoldingAsync(kept.Lot, store.Id, Stop), 10, Kg(600m), await new StockQuery(db).DaysAsync(holding.Id, Stop), new MovementNote(Came.AddDays(42), null, null), kept.Keeper, Noon);
            db.AddRange(left, came);
            await db.SaveChangesAsync(Stop);
        }

        await PostAsync(ledger, kept, CostStage.Haulage, 30m, 43);
        await using var read = ledger.Open();
        var parts = (await new LotCostQuery(read).FindAsync(kept.Lot, Stop)).Parts.ToDictionary(part => part.Posting.On, part => part.Late);

        // Worked by hand, handbook, trade 9.2: 1,200 of 3,000 kg by either bill.
        Assert.Equal((Eur(120m), Eur(12m)), (parts[Came.AddDays(40)], parts[Came.AddDays(43)]));
        // On day 40 the release still stood: nobody knew better then.
        Assert.Equal(Eur(150m), Assert.Single((await new ValuationQuery(read).FindAsync(Came.AddDays(40), Stop)).Late).Late);
    }

    [Theory, EveryEngine]
    public async Task Storage_before_it_landed_is_accounting_cost_and_finance_none(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var kept = await FillAsync(ledger);
        await PostAsync(ledger, kept, CostStage.Storage, 90m, 31, new CoveredDays(Came.AddDays(-10), Came.AddDays(19)));
        await PostAsync(ledger, kept, CostStage.Finance, 50m, -5);
        await using var db = ledger.Open();

        var cost = await new LotCostQuery(db).FindAsync(kept.Lot, Stop);

        // IAS 2.16 and IAS 23 (from memory), handbook, trade 3.3. Worked by hand: 10 of 30 days are 30.00; of them 1,500 of 3,000 kg were gone by day 31.
        Assert.Equal((Eur(18_740m), Eur(18_630m)), (cost.Total, cost.Accounting));
        Assert.Equal((Eur(45m), Eur(15m)), (cost.Late, cost.LateAccounting));
        Assert.Equal(new CoveredDays(Came.AddDays(-10), Came.AddDays(19)), cost.Parts.Single(part => part.Posting.Stage == CostStage.Storage).Posting.Covers);
    }

    [Theory, EveryEngine]
    public async Task A_pool_is_named_by_its_country_opens_to_its_lots_and_leaves_out_what_is_not_billed(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var kept = await FillAsync(ledger);
        await using (var db = ledger.Open())
        {
            var habits = new StockHabits();
            habits.Value(ValuationMethod.WeightedAverage, Came, Came);
            var unbilled = new Lot("L-2", "Vega Larga", null);
            unbilled.Grow("CO", null, null, null, null, null);
            unbilled.Process(null, "Washed");
            db.AddRange(habits, unbilled);
            await db.SaveChangesAsync(Stop);
            var holding = await db.HoldingAsync(unbilled.Id, kept.Warehouse, Stop);
            db.Add(holding.Add(MovementKind.Opening, new StockAmount(1, Kg(60m), Kg(60m)), new MovementNote(Came, null, null), kept.Keeper, Noon));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var rows = (await new ValuationQuery(read).FindAsync(Came.AddDays(9), Stop)).Rows;
        var pool = rows[0];

        // A lot whose coffee is not billed yet takes no value from the others.
        Assert.Equal(("L-2 Vega Larga", null, Kg(60m)), (rows[1].Name, rows[1].Cost, rows[1].Left));
        Assert.Equal(2, rows.Count);
        Assert.Equal("Colombia, Washed", pool.Name);
        Assert.Equal((kept.Lot, "L-1 Alto del Rio", Kg(3_000m), (Money?)Eur(18_600m)), Assert.Single(pool.Parts()));
    }

    private static async Task<Kept> FillAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var (keeper, supplier, warehouse) = (new Person("Imke Adler", Role.Buyer), new Supplier("Cerro Alto Exports", SupplierKind.Exporter), new Warehouse("Quay store"));
        db.AddRange(new House("Harbour Roastery", Currency.Eur), keeper, supplier, warehouse);
        var lot = new Lot("L-1", "Alto del Rio", supplier.Id);
        lot.Grow("CO", null, null, null, null, null);
        lot.Process(null, "Washed");
        db.AddRange(lot, new Country("CO", "Colombia"));
        await db.SaveChangesAsync(Stop);
        var kept = new Kept(lot.Id, warehouse.Id, keeper.Id);
        await PostAsync(ledger, kept, null, 18_600m, 0);
        var holding = await db.HoldingAsync(lot.Id, warehouse.Id, Stop);
        db.Add(holding.Add(MovementKind.Opening, new StockAmount(50, Kg(3_000m), Kg(3_000m)), new MovementNote(Came, null, null), keeper.Id, Noon));
        await db.SaveChangesAsync(Stop);
        foreach (var (kilograms, bags, day) in new[] { (1_200m, 20, 10), (300m, 5, 30) })
        {
            db.Add(holding.Take(MovementKind.Release, bags, Kg(kilograms), await new StockQuery(db).DaysAsync(holding.Id, Stop), new MovementNote(Came.AddDays(day), null, null), keeper.Id, Noon));
            await db.SaveChangesAsync(Stop);
        }

        return kept;
    }

    private static async Task PostAsync(Ledger ledger, Kept kept, CostStage? stage, decimal amount, int day, CoveredDays? covers = null)
    {
        await using var db = ledger.Open();
        var invoice = new Invoice(stage, Eur(amount), new Conversion(Currency.Eur, Currency.Eur, null, null), Came.AddDays(day), $"INV-{day}", "Weald Freight", CostPosting.UsualBasis(stage), covers);
        db.Add(new CostPosting(new PostedOn(null, null, kept.Lot), invoice, Currency.Eur, kept.Keeper, Noon));
        await db.SaveChangesAsync(Stop);
    }

    private static Money Eur(decimal amount) => Money.Of(amount, Currency.Eur);

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);

    private sealed record Kept(Id<Lot> Lot, Id<Warehouse> Warehouse, Id<Person> Keeper);
}

using GreenLedger.Data.Costs;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Costs;

public sealed class LotCostQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 26, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly OnBoard = new(2026, 9, 28);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_freight_bill_is_shared_by_the_shipped_weights_and_a_late_one_reaches_every_lot(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var house = await FillAsync(ledger);
        await PostAsync(ledger, new PostedOn(null, house.Shipment, null), CostStage.Freight, 4_218.75m, OnBoard, house);
        await PostAsync(ledger, new PostedOn(null, house.Shipment, null), CostStage.Haulage, 1.01m, OnBoard.AddDays(50), house);
        await using var db = ledger.Open();
        var query = new LotCostQuery(db);

        var all = await query.ListAsync(house.Lots, null, Stop);
        var before = await query.ListAsync(house.Lots, OnBoard.AddDays(49), Stop);

        // Handbook, trade 3.3 example E by weight: 9,000, 6,000 and 3,975 kg.
        Assert.Equal([Eur(2_000.99m), Eur(1_333.99m), Eur(883.77m)], house.Lots.Select(lot => before[lot].Total));
        // 1.01 by the same weights, worked by hand: 47.9, 31.9 and 21.2 cents.
        Assert.Equal([Eur(2_001.47m), Eur(1_334.31m), Eur(883.98m)], house.Lots.Select(lot => all[lot].Total));
    }

    [Theory, EveryEngine]
    public async Task Insurance_is_shared_by_value_and_the_coffee_of_a_contract_by_its_lots(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var house = await FillAsync(ledger);
        await PostAsync(ledger, new PostedOn(house.Contracts[0], null, null), null, 45_000m, OnBoard, house);
        await PostAsync(ledger, new PostedOn(null, house.Shipment, null), CostStage.Insurance, 4_218.75m, OnBoard, house);
        await using var db = ledger.Open();

        var costs = await new LotCostQuery(db).ListAsync(house.Lots, null, Stop);

        // Handbook, trade 3.3 example E by value: 45,000, 42,000 and 39,750 EUR.
        Assert.Equal([Eur(46_497.78m), Eur(1_397.93m), Eur(1_323.04m)], house.Lots.Select(lot => costs[lot].Total));
        Assert.Equal([true, false, false], house.Lots.Select(lot => costs[lot].HasCoffee));
    }

    [Theory, EveryEngine]
    public async Task Finance_is_no_accounting_cost_storage_before_it_landed_is_and_a_withdrawn_posting_none_at_all(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var house = await FillAsync(ledger);
        var lot = new PostedOn(null, null, house.Lots[0]);
        await PostAsync(ledger, lot, null, 1_000m, OnBoard, house);
        await PostAsync(ledger, lot, CostStage.Finance, 100m, OnBoard, house);
        await PostAsync(ledger, lot, CostStage.Storage, 10m, OnBoard, house);
        await PostAsync(ledger, lot, CostStage.Haulage, 1m, OnBoard, house);
        await using (var db = ledger.Open())
        {
            (await db.CostPostings.SingleAsync(posting => posting.Stage == CostStage.Haulage, Stop)).Withdraw("Of another lot", house.Keeper, Noon);
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var cost = await new LotCostQuery(read).FindAsync(house.Lots[0], Stop);

        // IAS 2.16 leaves storage after it landed out of the cost of inventories, IAS 2.17 finance but for long work (from memory); nothing landed here yet. The sums worked by hand.
        Assert.Equal((Eur(1_110m), Eur(1_010m)), (cost.Total, cost.Accounting));
    }

    [Theory, EveryEngine]
    public async Task Stock_is_valued_lot_by_lot_or_pooled_by_the_way_that_holds_on_the_day(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var house = await FillAsync(ledger);
        // Handbook, trade 9.1 example H: 3,000 kg at 6.20, then 2,000 kg at 6.80; 3,500 kg issued.
        await OpenStockAsync(ledger, house, (0, 3_000m, 18_600m, 0), (1, 2_000m, 13_600m, 1));
        await ReleaseAsync(ledger, house, 0, 3_000m, 2);
        await ReleaseAsync(ledger, house, 1, 500m, 3);
        await using (var db = ledger.Open())
        {
            var habits = new StockHabits();
            habits.Value(ValuationMethod.WeightedAverage, OnBoard.AddDays(20), OnBoard);
            db.Add(habits);
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var query = new ValuationQuery(read);
        var (each, lots, _) = await query.FindAsync(OnBoard.AddDays(19), Stop);
        var (pooled, pool, _) = await query.FindAsync(OnBoard.AddDays(20), Stop);

        Assert.Equal((ValuationMethod.EachLot, ValuationMethod.WeightedAverage), (each, pooled));
        Assert.Equal((Kg(1_500m), Eur(10_200m)), (Assert.Single(lots).Left, lots[0].Cost));
        Assert.Equal((Kg(1_500m), Eur(9_660m)), (Assert.Single(pool).Left, pool[0].Cost));
    }

    [Theory, EveryEngine]
    public async Task What_was_taken_back_and_what_a_count_found_change_no_value(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var house = await FillAsync(ledger);
        await OpenStockAsync(ledger, house, (0, 3_000m, 18_600m, 0));
        await ReleaseAsync(ledger, house, 0, 500m, 2);
        await using (var db = ledger.Open())
        {
            var holding = await db.HoldingAsync(house.Lots[0], house.Warehouse, Stop);
            var release = await db.Movements.SingleAsync(one => one.Kind == MovementKind.Release, Stop);
            var days = await new StockQuery(db).DaysAsync(holding.Id, Stop);
            db.Add(holding.Reverse(release, false, days, new MovementNote(OnBoard.AddDays(4), null, "Wrong lot"), house.Keeper, Noon));
            db.Add(holding.Add(MovementKind.Gain, new StockAmount(0, Weight.Zero, Kg(20m)), new MovementNote(OnBoard.AddDays(5), null, "Counted"), house.Keeper, Noon));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var query = new ValuationQuery(read);

        // 18,600 EUR were paid for 3,000 kg, 6.20 EUR/kg (handbook, trade 9.1 example H); nothing more was.
        Assert.Equal(Eur(15_500m), Assert.Single((await query.FindAsync(OnBoard.AddDays(3), Stop)).Rows).Cost);
        Assert.Equal((Kg(3_020m), Eur(18_600m)), (await query.FindAsync(OnBoard.AddDays(5), Stop)).Rows.Select(row => (row.Left, row.Cost!.Value)).Single());
    }

    [Theory, EveryEngine]
    public async Task An_opening_that_was_taken_back_later_still_has_its_value_on_the_days_between(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var house = await FillAsync(ledger);
        await OpenStockAsync(ledger, house, (0, 3_000m, 18_600m, 0));
        await using (var db = ledger.Open())
        {
            var holding = await db.HoldingAsync(house.Lots[0], house.Warehouse, Stop);
            var days = await new StockQuery(db).DaysAsync(holding.Id, Stop);
            db.Add(holding.Reverse(await db.Movements.SingleAsync(Stop), false, days, new MovementNote(OnBoard.AddDays(9), null, "Wrong weight"), house.Keeper, Noon));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var query = new ValuationQuery(read);

        Assert.Equal(Eur(18_600m), Assert.Single((await query.FindAsync(OnBoard.AddDays(8), Stop)).Rows).Cost);
        Assert.Empty((await query.FindAsync(OnBoard.AddDays(9), Stop)).Rows);
    }

    [Theory, EveryEngine]
    public async Task Goods_that_left_and_came_back_on_one_day_are_valued_whatever_the_order_of_entry(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var house = await FillAsync(ledger);
        await OpenStockAsync(ledger, house, (0, 3_000m, 18_600m, 0));
        await using (var db = ledger.Open())
        {
            var holding = await db.HoldingAsync(house.Lots[0], house.Warehouse, Stop);
            var (day, ledgerDays) = (OnBoard.AddDays(2), new List<(DateOnly, StockAmount)> { (OnBoard, holding.Amount) });
            foreach (var movement in new[]
            {
                holding.Take(MovementKind.Sale, 50, Kg(3_000m), new RunningStock(ledgerDays), new MovementNote(day, null, null), house.Keeper, Noon),
                holding.Add(MovementKind.Return, new StockAmount(50, Kg(3_000m), Kg(3_000m)), new MovementNote(day, null, "Refused"), house.Keeper, Noon),
            })
            {
                db.Add(movement);
            }

            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();

        Assert.Equal(Eur(18_600m), Assert.Single((await new ValuationQuery(read).FindAsync(OnBoard.AddDays(2), Stop)).Rows).Cost);
    }

    private static async Task OpenStockAsync(Ledger ledger, Bought house, params (int Lot, decimal Kilograms, decimal Cost, int Day)[] openings)
    {
        foreach (var (lot, kilograms, cost, day) in openings)
        {
            await PostAsync(ledger, new PostedOn(null, null, house.Lots[lot]), null, cost, OnBoard, house);
            await using var db = ledger.Open();
            var holding = await db.HoldingAsync(house.Lots[lot], house.Warehouse, Stop);
            db.Add(holding.Add(MovementKind.Opening, new StockAmount(50, Kg(kilograms), Kg(kilograms)), new MovementNote(OnBoard.AddDays(day), null, null), house.Keeper, Noon));
            await db.SaveChangesAsync(Stop);
        }
    }

    private static async Task ReleaseAsync(Ledger ledger, Bought house, int lot, decimal kilograms, int day)
    {
        await using var db = ledger.Open();
        var holding = await db.HoldingAsync(house.Lots[lot], house.Warehouse, Stop);
        var bags = holding.Weighed == Kg(kilograms) ? holding.Bags : 1;
        db.Add(holding.Take(MovementKind.Release, bags, Kg(kilograms), await new StockQuery(db).DaysAsync(holding.Id, Stop), new MovementNote(OnBoard.AddDays(day), null, null), house.Keeper, Noon));
        await db.SaveChangesAsync(Stop);
    }

    private static async Task PostAsync(Ledger ledger, PostedOn on, CostStage? stage, decimal amount, DateOnly day, Bought house)
    {
        await using var db = ledger.Open();
        db.Add(new CostPosting(on, new Invoice(stage, Eur(amount), new Conversion(Currency.Eur, Currency.Eur, null, null), day, "INV-1", "Weald Freight", CostPosting.UsualBasis(stage)), Currency.Eur, house.Keeper, Noon));
        await db.SaveChangesAsync(Stop);
    }

    /// <summary>Three contracts of a lot each, at 5, 7 and 10 EUR a kilogram, in one shipment (handbook, trade 3.3 example E).</summary>
    private static async Task<Bought> FillAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var (keeper, supplier, warehouse) = (new Person("Imke Adler", Role.Buyer), new Supplier("Cerro Alto Exports", SupplierKind.Exporter), new Warehouse("Quay store"));
        db.AddRange(new House("Harbour Roastery", Currency.Eur), keeper, supplier, warehouse);
        var shipment = new Shipment("S26-001", new Passage("BL-77", "Linnet", "012E", "COCTG", "DEHAM", null, null, OnBoard, OnBoard.AddDays(28), null));
        var (lots, contracts) = (new List<Id<Lot>>(), new List<Id<Contract>>());
        foreach (var (bags, kilograms, price) in new[] { (150, 60m, 5m), (100, 60m, 7m), (53, 75m, 10m) })
        {
            var lot = new Lot($"L-{lots.Count}", $"Lot {lots.Count}", supplier.Id);
            var contract = Contract.Draft($"P26-00{lots.Count}", supplier.Id, Terms(lot, bags, kilograms, price), new Dictionary<Id<Lot>, Id<Decision>>(), keeper.Id, Noon);
            contract.Sign(new DateOnly(2026, 7, 1), null, keeper.Id, Noon);
            shipment.Carry(contract, contract.Lots[0].Id, bags, Kg(bags * kilograms));
            db.AddRange(lot, contract);
            lots.Add(lot.Id);
            contracts.Add(contract.Id);
        }

        db.Add(shipment);
        await db.SaveChangesAsync(Stop);
        return new Bought(lots, contracts, shipment.Id, warehouse.Id, keeper.Id);
    }

    private static ContractTerms Terms(Lot lot, int bags, decimal bag, decimal price) => new(
        "Sorrel Roasters",
        "Cerro Alto Exports",
        [new ContractedLot(lot.Id, lot.Ref, lot.Name, "2026/27", bags, Kg(bag))],
        new QualityTerms("Washed arabica", Score.Of(84m)),
        PriceTerms.AtPrice(PricePerWeight.Of(price, Currency.Eur, PriceUnit.Kilogram)),
        new DeliveryTerms(Incoterm.Fob, "Cartagena", new DateOnly(2026, 9, 1), new DateOnly(2026, 9, 30)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        new ApprovalTerms(ApprovalRule.None, null, null),
        "Net cash against documents on first presentation",
        [],
        new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
        null);

    private static Money Eur(decimal amount) => Money.Of(amount, Currency.Eur);

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);

    private sealed record Bought(IReadOnlyList<Id<Lot>> Lots, IReadOnlyList<Id<Contract>> Contracts, Id<Shipment> Shipment, Id<Warehouse> Warehouse, Id<Person> Keeper);
}

using System.Data.Common;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Stock;

public sealed class StockLedgerTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 26, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 11, 26);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task The_database_refuses_to_change_or_remove_a_movement(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await OpenAsync(ledger);
        await using var db = ledger.Open();

        var changed = await Assert.ThrowsAnyAsync<Exception>(() => db.Database.ExecuteSqlRawAsync("UPDATE \"Movements\" SET \"Bags\" = 11", Stop));
        var removed = await Assert.ThrowsAnyAsync<Exception>(() => db.Database.ExecuteSqlRawAsync("DELETE FROM \"Movements\"", Stop));

        Assert.Contains("add a reversal", changed.Message, StringComparison.Ordinal);
        Assert.Contains("add a reversal", removed.Message, StringComparison.Ordinal);
        Assert.Equal(10, (await db.Movements.AsNoTracking().SingleAsync(Stop)).Bags);
    }

    [Theory, EveryEngine]
    public async Task The_database_refuses_stock_below_zero(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await OpenAsync(ledger);
        await using var db = ledger.Open();

        foreach (var update in new[] { "UPDATE \"Holdings\" SET \"WeighedMicrograms\" = -1", "UPDATE \"Holdings\" SET \"Bags\" = -1" })
        {
            var refused = await Assert.ThrowsAnyAsync<DbException>(() => db.Database.ExecuteSqlRawAsync(update, Stop));
            Assert.Contains("CK_Holdings_NotBelowZero", refused.Message, StringComparison.Ordinal);
        }

        Assert.Equal(Kg(685.5m), (await db.Holdings.AsNoTracking().SingleAsync(Stop)).Weighed);
    }

    [Theory, EveryEngine]
    public async Task Of_two_people_who_release_the_last_bags_at_once_one_does(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (lot, warehouse, keeper) = await OpenAsync(ledger);
        await using var first = ledger.Open();
        await using var second = ledger.Open();

        await ReleaseAsync(first, lot, warehouse, keeper, 10, 685.5m);
        await ReleaseAsync(second, lot, warehouse, keeper, 10, 685.5m);
        await first.SaveChangesAsync(Stop);

        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => second.SaveChangesAsync(Stop));
        await using var db = ledger.Open();
        Assert.Equal(2, await db.Movements.CountAsync(Stop));
        Assert.Equal(StockAmount.None, (await db.Holdings.AsNoTracking().SingleAsync(Stop)).Amount);
    }

    /// <summary>Many at once, each trying again when somebody was faster: what is held is the sum of the lines.</summary>
    [Theory, EveryEngine]
    public async Task Many_writers_at_once_keep_the_balance(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (lot, warehouse, keeper) = await OpenAsync(ledger);

        await Task.WhenAll(Enumerable.Range(0, 4).Select(async writer =>
        {
            for (var release = 0; release < 6; release++)
            {
                await RetryAsync(ledger, db => ReleaseAsync(db, lot, warehouse, keeper, 0, 25m + writer));
            }
        }));

        await using var db = ledger.Open();
        var holding = await db.Holdings.AsNoTracking().SingleAsync(Stop);
        var sum = StockAmount.Sum((await db.Movements.AsNoTracking().ToListAsync(Stop)).Select(one => one.Amount));
        // Worked by hand: 6 × (25 + 26 + 27 + 28) = 636 kg of 685.5 kg leave.
        Assert.Equal(Kg(49.5m), holding.Weighed);
        Assert.Equal(sum, holding.Amount);
    }

    /// <summary>
    /// Whatever four people do at once, in whatever order (the seed is another one in each run and stands in a failure): what is held is
    /// the sum of its lines, nothing was below zero at the end of any day, nothing was taken back twice, and transfers lose nothing.
    /// </summary>
    [Theory, EveryEngine]
    public async Task Any_sequence_of_movements_of_many_writers_keeps_every_balance(Engine engine)
    {
        var seed = Random.Shared.Next();
        await using var ledger = await ledgers.NewAsync(engine);
        var (lot, quay, keeper) = await OpenAsync(ledger);
        var mill = new Warehouse("Mill Lane");
        await using (var db = ledger.Open())
        {
            db.Add(mill);
            await db.SaveChangesAsync(Stop);
        }

        await Task.WhenAll(Enumerable.Range(0, 4).Select(async writer =>
        {
            var random = new Random(seed + writer);
            for (var act = 0; act < 12; act++)
            {
                var (what, pick, kilograms) = (random.Next(6), random.Next(100), random.Next(1, 120_000) / 1000m);
                await RetryAsync(ledger, db => ActAsync(db, what, pick, Kg(kilograms), lot, pick % 3 == 0 ? (mill.Id, quay) : (quay, mill.Id), keeper));
            }
        }));

        await using var read = ledger.Open();
        var movements = await read.Movements.AsNoTracking().ToListAsync(Stop);
        var transfers = movements.Where(one => one.Kind is MovementKind.TransferIn or MovementKind.TransferOut).ToList();
        Assert.Equal(StockAmount.None, StockAmount.Sum(transfers.Select(one => one.Amount)));
        Assert.True(movements.Where(one => one.ReversesId is not null).GroupBy(one => one.ReversesId).All(group => group.Count() == 1), $"seed {seed}: a line was taken back twice");
        foreach (var holding in await read.Holdings.AsNoTracking().ToListAsync(Stop))
        {
            var lines = movements.Where(one => one.HoldingId == holding.Id).ToList();
            Assert.True(StockAmount.Sum(lines.Select(one => one.Amount)) == holding.Amount && holding.Amount.IsThere, $"seed {seed}: {holding.Amount}");
            Assert.True(RunningStock.Of(lines).Days.All(day => day.Left.IsThere), $"seed {seed}: below zero on a day");
        }
    }

    [Theory, EveryEngine]
    public async Task A_movement_is_taken_back_once_whoever_tries(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (_, _, keeper) = await OpenAsync(ledger);
        await using var db = ledger.Open();
        var holding = await db.Holdings.SingleAsync(Stop);
        var opening = await db.Movements.SingleAsync(Stop);
        var days = await new StockQuery(db).DaysAsync(holding.Id, Stop);
        db.Add(holding.Reverse(opening, false, days, new MovementNote(Today, null, "Wrong lot"), keeper, Noon));
        await db.SaveChangesAsync(Stop);

        db.Add(holding.Add(MovementKind.Gain, opening.Amount, new MovementNote(Today, null, "Found"), keeper, Noon));
        db.Add(holding.Reverse(opening, false, new RunningStock([(Today, opening.Amount)]), new MovementNote(Today, null, "Again"), keeper, Noon));

        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Stop));
    }

    [Theory, EveryEngine]
    public async Task A_balance_of_a_past_day_is_the_sum_of_movements_until_then(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (lot, warehouse, keeper) = await OpenAsync(ledger);
        await using (var db = ledger.Open())
        {
            await ReleaseAsync(db, lot, warehouse, keeper, 4, 274.2m);
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var query = new StockQuery(read);

        Assert.Equal((10, Kg(690m), Kg(685.5m)), Assert.Single(await query.ListAsync(null, null, Today.AddDays(-1), Stop)) is var before ? (before.Bags, before.Packed, before.Weighed) : default);
        Assert.Equal((6, Kg(414m), Kg(411.3m)), Assert.Single(await query.ListAsync("cerro", warehouse, null, Stop)) is var now ? (now.Bags, now.Packed, now.Weighed) : default);
        Assert.Empty(await query.ListAsync(null, null, Today.AddDays(-20), Stop));
        Assert.Empty(await query.ListAsync("nowhere", null, null, Stop));
        Assert.Equal([MovementKind.Release, MovementKind.Opening], (await query.MovementsAsync(lot, Stop)).Select(row => row.Kind));
    }

    [Theory, EveryEngine]
    public async Task A_count_writes_its_difference_when_it_is_approved(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (_, warehouse, keeper) = await OpenAsync(ledger);
        await using (var db = ledger.Open())
        {
            var holdings = await db.Holdings.ToListAsync(Stop);
            var count = new StockCount(warehouse, Today, holdings, null, keeper, Noon);
            count.Count(count.Lines[0].Id, 9, Kg(616.5m), "One bag is missing", keeper);
            var days = new Dictionary<Id<Holding>, RunningStock> { [holdings[0].Id] = await new StockQuery(db).DaysAsync(holdings[0].Id, Stop) };
            db.Add(count);
            db.AddRange(count.Approve(holdings, days, false, keeper, Noon));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var stored = await read.StockCounts.AsNoTracking().Whole().SingleAsync(Stop);

        Assert.Equal(Kg(-69m), stored.Lines[0].Difference);
        Assert.Equal("One bag is missing", (await read.Movements.AsNoTracking().SingleAsync(one => one.Kind == MovementKind.Loss, Stop)).Reason);
        Assert.Equal(Kg(616.5m), (await read.Holdings.AsNoTracking().SingleAsync(Stop)).Weighed);
    }

    [Theory, EveryEngine]
    public async Task Two_people_who_fill_one_count_at_once_are_told_apart(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var (_, warehouse, keeper) = await OpenAsync(ledger);
        await using (var db = ledger.Open())
        {
            db.Add(new StockCount(warehouse, Today, await db.Holdings.ToListAsync(Stop), null, keeper, Noon));
            await db.SaveChangesAsync(Stop);
        }

        await using var first = ledger.Open();
        await using var second = ledger.Open();
        var (one, other) = (await first.StockCounts.Whole().SingleAsync(Stop), await second.StockCounts.Whole().SingleAsync(Stop));
        one.Count(one.Lines[0].Id, 9, Kg(616.5m), null, keeper);
        other.Count(other.Lines[0].Id, 10, Kg(685.5m), null, keeper);
        await first.SaveChangesAsync(Stop);

        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => second.SaveChangesAsync(Stop));
    }

    private static async Task RetryAsync(Ledger ledger, Func<LedgerContext, Task> act)
    {
        while (true)
        {
            await using var db = ledger.Open();
            try
            {
                await act(db);
                await db.SaveChangesAsync(Stop);
                return;
            }
            catch (DbUpdateException)
            {
                // Somebody was faster: read again and do it again.
            }
        }
    }

    /// <summary>One of six things; what the rules refuse is left undone.</summary>
    private static async Task ActAsync(LedgerContext db, int what, int pick, Weight weight, Id<Lot> lot, (Id<Warehouse> Here, Id<Warehouse> There) places, Id<Person> keeper)
    {
        var holding = await db.HoldingAsync(lot, places.Here, Stop);
        var days = await new StockQuery(db).DaysAsync(holding.Id, Stop);
        var note = new MovementNote(Today, "R-12", "Any");
        try
        {
            switch (what)
            {
                case 0 or 1 or 2:
                    db.Add(holding.Take(what == 0 ? MovementKind.Release : what == 1 ? MovementKind.Sale : MovementKind.Loss, 0, weight, days, note, keeper, Noon));
                    break;
                case 3:
                    var (left, came) = holding.Transfer(await db.HoldingAsync(lot, places.There, Stop), 0, weight, days, note, keeper, Noon);
                    db.AddRange(left, came);
                    break;
                case 4:
                    db.Add(holding.Add(MovementKind.Gain, new StockAmount(0, weight, weight), note, keeper, Noon));
                    break;
                default:
                    var lines = await db.Movements.Where(one => one.HoldingId == holding.Id && one.TransferId == null && one.ReversesId == null).OrderBy(one => one.Id).ToListAsync(Stop);
                    if (lines.Count > 0 && lines[pick % lines.Count] is var line)
                    {
                        db.Add(holding.Reverse(line, await db.Movements.AnyAsync(one => one.ReversesId == line.Id, Stop), days, note, keeper, Noon));
                    }

                    break;
            }
        }
        catch (RuleBrokenException)
        {
            db.ChangeTracker.Clear();
        }
    }

    private static async Task ReleaseAsync(LedgerContext db, Id<Lot> lot, Id<Warehouse> warehouse, Id<Person> keeper, int bags, decimal kilograms)
    {
        var holding = await db.HoldingAsync(lot, warehouse, Stop);
        var days = await new StockQuery(db).DaysAsync(holding.Id, Stop);
        var note = new MovementNote(Today, "R-12", null);
        db.Add(holding.Take(MovementKind.Release, bags, Kg(kilograms), days, note, keeper, Noon));
    }

    private static async Task<(Id<Lot> Lot, Id<Warehouse> Warehouse, Id<Person> Keeper)> OpenAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var (keeper, warehouse) = (new Person("Imke Adler", Role.Buyer), new Warehouse("Quay store"));
        var lot = new Lot("CA-17", "Cerro Alto washed", null);
        var holding = new Holding(lot.Id, warehouse.Id);
        db.AddRange(keeper, warehouse, lot, holding, holding.Add(MovementKind.Opening, new StockAmount(10, Kg(690m), Kg(685.5m)), new MovementNote(Today.AddDays(-10), null, null), keeper.Id, Noon));
        await db.SaveChangesAsync(Stop);
        return (lot.Id, warehouse.Id, keeper.Id);
    }

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}

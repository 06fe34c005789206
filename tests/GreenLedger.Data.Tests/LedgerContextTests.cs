using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests;

public sealed class LedgerContextTests(Ledgers ledgers)
{
    [Theory, EveryEngine]
    public async Task The_migrations_hold_every_change_of_the_model(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();

        Assert.False(db.Database.HasPendingModelChanges());
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(TestContext.Current.CancellationToken));
    }

    [Theory, EveryEngine]
    public async Task What_is_stored_in_one_ledger_is_not_in_another(Engine engine)
    {
        await using var ours = await ledgers.NewAsync(engine);
        await using var theirs = await ledgers.NewAsync(engine);

        await using (var db = ours.Open())
        {
            db.Add(new House("Harbour Roastery", Currency.Eur));
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await using var oursAgain = ours.Open();
        await using var theirsAgain = theirs.Open();
        Assert.Equal(Currency.Eur, (await oursAgain.Houses.SingleAsync(TestContext.Current.CancellationToken)).Currency);
        Assert.Empty(await theirsAgain.Houses.ToListAsync(TestContext.Current.CancellationToken));
    }

    [Theory, EveryEngine]
    public async Task A_change_that_read_an_older_version_is_refused(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            db.Add(new House("Harbour Roastery", Currency.Eur));
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await using var first = ledger.Open();
        await using var second = ledger.Open();
        (await first.Houses.SingleAsync(TestContext.Current.CancellationToken)).Rename("Quay Roastery");
        (await second.Houses.SingleAsync(TestContext.Current.CancellationToken)).Rename("Pier Roastery");
        await first.SaveChangesAsync(TestContext.Current.CancellationToken);

        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(
            () => second.SaveChangesAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task SQLite_keeps_a_write_ahead_log_full_durability_and_foreign_keys()
    {
        await using var ledger = await ledgers.NewAsync(Engine.Sqlite);
        await using var db = ledger.Open();
        await db.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);

        Assert.Equal("wal", await PragmaAsync(db, "journal_mode"));
        Assert.Equal("2", await PragmaAsync(db, "synchronous")); // 2 is FULL: sqlite.org/pragma.html#pragma_synchronous
        Assert.Equal("1", await PragmaAsync(db, "foreign_keys"));
        Assert.Equal("30000", await PragmaAsync(db, "busy_timeout"));
    }

    [Fact]
    public async Task A_copy_that_has_no_write_ahead_log_yet_is_opened_and_gets_one()
    {
        await using var ledger = await ledgers.NewAsync(Engine.Sqlite);
        var folder = Directory.CreateTempSubdirectory("greenledger-copy-");
        var copy = Path.Combine(folder.FullName, "copy.db");
        await using (var db = ledger.Open())
        {
            await db.Database.ExecuteSqlAsync($"VACUUM INTO {copy}", TestContext.Current.CancellationToken);
        }

        await using (var restored = new Ledger(Engine.Sqlite, copy).Open())
        {
            await LedgerDatabase.PrepareAsync(restored, TestContext.Current.CancellationToken);
            await restored.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
            Assert.Equal("wal", await PragmaAsync(restored, "journal_mode"));
        }

        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }

    private static async Task<string?> PragmaAsync(LedgerContext db, string name)
    {
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"PRAGMA {name}";
        return Convert.ToString(await command.ExecuteScalarAsync(), System.Globalization.CultureInfo.InvariantCulture);
    }
}

using GreenLedger.Data.Archive;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Tests.Archive;

/// <summary>What an archive holds, held against the model of the database: a new table or column is in it or left out on purpose.</summary>
public sealed class ArchiveModelTests(Ledgers ledgers)
{
    [Theory, EveryEngine]
    public async Task Every_table_and_every_column_is_in_the_archive_or_left_out_by_name(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();

        var archived = ArchiveModel.Of(db).SelectMany(table => table.Archived.Columns.Select(column => $"{table.Name}.{column.Name}")).ToHashSet();
        var stored = Tables(db).SelectMany(table => table.Columns.Select(column => $"{table.Name}.{column.Name}")).ToHashSet();
        var leftOut = stored.Except(archived).ToList();

        Assert.Empty(archived.Except(stored));
        Assert.All(leftOut, name => Assert.True(LeftOut.Columns.ContainsKey(name) || LeftOut.Tables.Contains(name.Split('.')[0]), name));
        Assert.All(LeftOut.Columns.Keys, name => Assert.Contains(name, leftOut));
        Assert.All(LeftOut.Tables, name => Assert.Contains(Tables(db), table => table.Name == name));
    }

    /// <summary>The database's own list of its tables, so that one which is in no model is not forgotten either.</summary>
    [Theory, EveryEngine]
    public async Task The_database_has_no_table_that_the_model_does_not_know(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        var sql = engine is Engine.Sqlite
            ? "SELECT name AS \"Value\" FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
            : "SELECT table_name AS \"Value\" FROM information_schema.tables WHERE table_schema = 'public'";

        var tables = await db.Database.SqlQueryRaw<string>(sql).ToListAsync(TestContext.Current.CancellationToken);

        Assert.Equal(["__EFMigrationsLock", "__Migrations"], tables.Except(Tables(db).Select(table => table.Name)).Append("__EFMigrationsLock").Distinct().Order(StringComparer.Ordinal));
    }

    [Theory, EveryEngine]
    public async Task Every_table_and_column_is_described(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();

        var tables = ArchiveModel.Of(db);

        Assert.All(tables, table => Assert.True(table.Archived.Meaning.Length > 8 && table.Archived.Meaning.EndsWith('.'), $"{table.Name}: {table.Archived.Meaning}"));
        Assert.All(tables.SelectMany(table => table.Archived.Columns.Select(column => (table.Name, column))), one => Assert.True(one.column.Meaning.Length > 2, $"{one.Name}.{one.column.Name}"));
        Assert.All(tables.SelectMany(table => table.Columns), column => Assert.True(ArchiveWords.IsUnitKnown(column.PropertyMappings[0].Property), $"the unit of {column.Table.Name}.{column.Name} is not said"));
        var lots = tables.Single(table => table.Name == "Lots").Archived.Columns;
        Assert.Equal("Producers.Id", lots.Single(column => column.Name == "ProducerId").Reference);
    }

    [Theory, EveryEngine]
    public async Task Both_databases_have_the_same_archive(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        await using var sqlite = await ledgers.NewAsync(Engine.Sqlite);
        await using var other = sqlite.Open();

        Assert.Equal(
            ArchiveModel.Of(other).SelectMany(table => table.Archived.Columns.Select(column => (table.Name, column))),
            ArchiveModel.Of(db).SelectMany(table => table.Archived.Columns.Select(column => (table.Name, column))));
    }

    /// <summary>A key that the database counts up would need its counter set when an archive is read back.</summary>
    [Fact]
    public async Task Nothing_in_an_archive_is_counted_by_the_database()
    {
        await using var ledger = await ledgers.NewAsync(Engine.Sqlite);
        await using var db = ledger.Open();

        var counted = ArchiveModel.Of(db).SelectMany(table => table.Columns)
            .Where(column => column.PropertyMappings[0].Property is { ValueGenerated: not ValueGenerated.Never } property && property.IsPrimaryKey() && property.ClrType != typeof(Guid))
            .Select(column => $"{column.Table.Name}.{column.Name}");

        Assert.Empty(counted);
    }

    private static IEnumerable<ITable> Tables(LedgerContext db) => db.Model.GetRelationalModel().Tables;
}

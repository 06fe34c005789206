using AutoMapper;
using GreenLedger.Data.People;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace GreenLedger.Data.Tests;

/// <summary>One database of a test's own. Open a context to write and another to read: only what was stored comes back.</summary>
public sealed class Ledger(Engine engine, string name) : IAsyncDisposable
{
    public Engine Engine => engine;

    /// <summary>The projections of the ledger, as the web application registers them.</summary>
    public IMapper Mapper { get; } = LedgerDatabase.Mapper().CreateMapper();

    public LedgerContext Open(Who? who = null, TimeProvider? clock = null)
    {
        if (engine is Engine.Sqlite)
        {
            var sqlite = new DbContextOptionsBuilder<SqliteLedgerContext>();
            SqliteLedgerContext.Configure(sqlite, name, who, clock);
            return new SqliteLedgerContext(sqlite.Options);
        }

        var postgres = new DbContextOptionsBuilder<PostgresLedgerContext>();
        PostgresLedgerContext.Configure(postgres, PostgresConnection(), who, clock);
        return new PostgresLedgerContext(postgres.Options);
    }

    public async ValueTask DisposeAsync()
    {
        ClosePool();
        if (engine is Engine.Postgres)
        {
            await Ledgers.ExecuteAsync($"DROP DATABASE IF EXISTS \"{name}\" WITH (FORCE)");
        }
    }

    internal void ClosePool()
    {
        using var db = Open();
        switch (db.Database.GetDbConnection())
        {
            case SqliteConnection sqlite: SqliteConnection.ClearPool(sqlite); break;
            case NpgsqlConnection postgres: NpgsqlConnection.ClearPool(postgres); break;
        }
    }

    private string PostgresConnection() =>
        new NpgsqlConnectionStringBuilder(Ledgers.PostgresServer) { Database = name, MaxPoolSize = 8 }.ToString();
}

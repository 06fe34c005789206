using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace GreenLedger.Data.Tests;

/// <summary>
/// Hands out empty, migrated ledgers, each in a database of its own. The migrations run once for each engine; every
/// ledger is then a copy of that one. A test class takes this in its constructor.
/// </summary>
public sealed class Ledgers : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-data-").FullName;
    private readonly string _prefix = $"ledger_{Guid.NewGuid():N}";
    private readonly SemaphoreSlim _oneAtATime = new(1);
    private string? _sqliteTemplate;
    private string? _postgresTemplate;
    private int _count;

    public static string? PostgresServer =>
        Environment.GetEnvironmentVariable("GREENLEDGER_TEST_POSTGRES") is { Length: > 0 } server ? server : null;

    /// <summary>A new empty ledger; disposing it removes its database.</summary>
    public async Task<Ledger> NewAsync(Engine engine)
    {
        await _oneAtATime.WaitAsync();
        try
        {
            _count++;
            return engine is Engine.Sqlite ? await NewSqliteAsync() : await NewPostgresAsync();
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_postgresTemplate is not null)
        {
            await ExecuteAsync($"DROP DATABASE \"{_postgresTemplate}\" WITH (FORCE)");
        }

        _oneAtATime.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    internal static async Task ExecuteAsync(string sql)
    {
        await using var connection = new NpgsqlConnection($"{PostgresServer};Pooling=false");
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    private async Task<Ledger> NewSqliteAsync()
    {
        if (_sqliteTemplate is null)
        {
            var template = Path.Combine(_folder, "template.db");
            await MigrateAsync(new Ledger(Engine.Sqlite, template));
            _sqliteTemplate = template;
        }

        var file = Path.Combine(_folder, $"{_count}.db");
        File.Copy(_sqliteTemplate, file);
        return new Ledger(Engine.Sqlite, file);
    }

    private async Task<Ledger> NewPostgresAsync()
    {
        if (_postgresTemplate is null)
        {
            var template = $"{_prefix}_template";
            await ExecuteAsync($"CREATE DATABASE \"{template}\"");
            await MigrateAsync(new Ledger(Engine.Postgres, template));
            _postgresTemplate = template;
        }

        var database = $"{_prefix}_{_count}";
        await ExecuteAsync($"CREATE DATABASE \"{database}\" TEMPLATE \"{_postgresTemplate}\"");
        return new Ledger(Engine.Postgres, database);
    }

    /// <summary>Migrates the template and lets go of it: what is connected to can't be copied.</summary>
    private static async Task MigrateAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        await db.Database.MigrateAsync();
        ledger.ClosePool();
    }
}

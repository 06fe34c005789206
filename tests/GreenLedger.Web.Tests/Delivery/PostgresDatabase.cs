using Npgsql;

namespace GreenLedger.Web.Tests.Delivery;

/// <summary>An empty PostgreSQL database of a test's own; without a server the test is skipped, saying why.</summary>
internal sealed class PostgresDatabase : IAsyncDisposable
{
    private readonly string _name = $"ledger_{Guid.NewGuid():N}";
    private readonly string _server;

    private PostgresDatabase(string server)
    {
        _server = server;
    }

    public string Connection => new NpgsqlConnectionStringBuilder(_server) { Database = _name }.ToString();

    public static async Task<PostgresDatabase> NewAsync()
    {
        var server = Environment.GetEnvironmentVariable("GREENLEDGER_TEST_POSTGRES");
        Assert.SkipWhen(
            string.IsNullOrEmpty(server),
            "No PostgreSQL: set GREENLEDGER_TEST_POSTGRES to a connection string, or run tests/run, which starts one.");
        var database = new PostgresDatabase(server!);
        await database.ExecuteAsync($"CREATE DATABASE \"{database._name}\"");
        return database;
    }

    public async ValueTask DisposeAsync() => await ExecuteAsync($"DROP DATABASE \"{_name}\" WITH (FORCE)");

    private async Task ExecuteAsync(string sql)
    {
        await using var connection = new NpgsqlConnection($"{_server};Pooling=false");
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }
}

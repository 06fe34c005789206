using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace GreenLedger.Data;

/// <summary>
/// What SQLite forgets between connections: full durability also under the write-ahead log, and how long to wait for
/// another writer. The log mode itself stays with the file.
/// </summary>
internal sealed class SqliteSettings : DbConnectionInterceptor
{
    private const string Settings = "PRAGMA synchronous = FULL; PRAGMA busy_timeout = 30000; PRAGMA cache_size = -32000;";
    private const string Log = "PRAGMA journal_mode = WAL; ";

    public static SqliteSettings Instance { get; } = new();

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = SettingsOf(connection);
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = SettingsOf(connection);
        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    /// <summary>
    /// EF looks whether there is a database through a connection that only reads: it cannot switch to the log, which a copy
    /// made by <c>VACUUM INTO</c> does not have yet.
    /// </summary>
    private static string SettingsOf(DbConnection connection) =>
        connection.ConnectionString.Contains("Mode=ReadOnly", StringComparison.OrdinalIgnoreCase) ? Settings : Log + Settings;
}

using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace GreenLedger.Data;

/// <summary>
/// What SQLite forgets between connections: full durability also under the write-ahead log, and how long to wait for
/// another writer. The log mode itself stays with the file.
/// </summary>
internal sealed class SqliteSettings : DbConnectionInterceptor
{
    private const string Settings =
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA busy_timeout = 30000; PRAGMA cache_size = -32000;";

    public static SqliteSettings Instance { get; } = new();

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Settings;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Settings;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}

using System.Data;
using System.Data.Common;
using System.Runtime.CompilerServices;
using GreenLedger.Domain.Archive;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;

namespace GreenLedger.Data.Archive;

/// <summary>
/// The whole house at one moment, read row by row: what is written meanwhile is not in it, and nobody waits for it. Disposed of
/// once the archive is written.
/// </summary>
public sealed class ArchiveSnapshot : IArchiveSource, IAsyncDisposable
{
    private readonly LedgerContext _db;
    private readonly DbTransaction _moment;
    private readonly Dictionary<string, StoredTable> _tables;

    private ArchiveSnapshot(LedgerContext db, DbTransaction moment)
    {
        (_db, _moment) = (db, moment);
        var tables = ArchiveModel.Of(db);
        _tables = tables.ToDictionary(table => table.Name);
        Tables = [.. tables.Select(table => table.Archived)];
    }

    public IReadOnlyList<ArchiveTable> Tables { get; }

    public static async Task<ArchiveSnapshot> OpenAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        await db.Database.OpenConnectionAsync(cancellationToken);
        var connection = db.Database.GetDbConnection();
        return new ArchiveSnapshot(db, connection is SqliteConnection sqlite
            ? sqlite.BeginTransaction(deferred: true)
            : await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellationToken));
    }

    /// <summary>What the archive is to say of itself; of a house that was never opened the name is empty.</summary>
    public static async Task<ArchiveAbout> AboutAsync(LedgerContext db, DateTimeOffset at, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        return new ArchiveAbout(
            await db.Houses.Select(house => house.Name).SingleOrDefaultAsync(cancellationToken) ?? "", at, db.Database.GetMigrations().Last());
    }

    public async IAsyncEnumerable<object?[]> RowsAsync(ArchiveTable table, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(table);
        var stored = _tables[table.Name];
        var columns = stored.Columns.Select((column, at) => at == stored.BytesAt ? NameOf(stored) : $"t.\"{column.Name}\"");
        await using var command = Command($"SELECT {string.Join(", ", columns)} FROM \"{table.Name}\" t ORDER BY {Order(stored)}");
        await using var reader = await command.ExecuteReaderAsync(cancellationToken);
        while (await reader.ReadAsync(cancellationToken))
        {
            var row = table.Columns.Select((column, at) => StoredCells.Read(reader, at, column)).ToArray();
            if (stored.BytesAt >= 0 && row[stored.BytesAt] is string name)
            {
                row[stored.BytesAt] = MemberOf(stored, row, name);
            }

            yield return row;
        }
    }

    public async IAsyncEnumerable<ArchivedFile> FilesAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        foreach (var stored in _tables.Values.Where(table => table.BytesAt >= 0))
        {
            var (_, received) = StoredNames.SqlOf(stored);
            var key = stored.Key.Select(column => $"t.\"{column.Name}\"").ToList();
            var bytes = $"t.\"{stored.Columns[stored.BytesAt].Name}\"";
            await using var command = Command(
                $"SELECT {string.Join(", ", key)}, {NameOf(stored)}, {received}, {bytes} FROM \"{stored.Name}\" t WHERE {bytes} IS NOT NULL ORDER BY {Order(stored)}");
            await using var reader = await command.ExecuteReaderAsync(cancellationToken);
            while (await reader.ReadAsync(cancellationToken))
            {
                var row = stored.Archived.Columns.Take(key.Count).Select((column, at) => StoredCells.Read(reader, at, column)).ToArray();
                yield return new ArchivedFile(
                    MemberOf(stored, row, reader.GetString(key.Count)), reader.GetFieldValue<byte[]>(key.Count + 2), reader.IsDBNull(key.Count + 1) ? null : reader.GetString(key.Count + 1));
            }
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _moment.DisposeAsync();
        await _db.Database.CloseConnectionAsync();
    }

    private DbCommand Command(string sql)
    {
        var command = _db.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        command.Transaction = _moment;
        command.CommandTimeout = 0;
        return command;
    }

    private static string NameOf(StoredTable stored) =>
        $"CASE WHEN t.\"{stored.Columns[stored.BytesAt].Name}\" IS NULL THEN NULL ELSE {StoredNames.SqlOf(stored).Name} END";

    private static string MemberOf(StoredTable stored, object?[] row, string name) => StoredNames.Member(
        stored.Name, string.Join('-', stored.Key.Select((_, at) => ArchivedValue.Write(row[at], stored.Archived.Columns[at]))), name);

    /// <summary>By the key, texts by their letters: the languages that a database sorts by differ.</summary>
    private string Order(StoredTable stored) => string.Join(", ", stored.Key.Select(OrderOf));

    private string OrderOf(IColumn column, int at) =>
        $"t.\"{column.Name}\"{(_db.Database.GetDbConnection() is NpgsqlConnection && _tables[column.Table.Name].Archived.Columns[at].Kind == ColumnKind.Text ? " COLLATE \"C\"" : "")}";
}

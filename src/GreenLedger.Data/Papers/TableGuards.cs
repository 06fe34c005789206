using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Papers;

/// <summary>
/// The triggers of a table whose rows are never changed (the stock ledger), lifted within a transaction while a name is taken out of
/// its free texts: no amount, day or person is touched.
/// </summary>
internal sealed class TableGuards : IAsyncDisposable
{
    private readonly LedgerContext _db;
    private readonly string _table;
    private readonly IReadOnlyList<string> _written;
    private bool _isLifted = true;

    private TableGuards(LedgerContext db, string table, IReadOnlyList<string> written) => (_db, _table, _written) = (db, table, written);

    public static async Task<TableGuards> LiftAsync(LedgerContext db, string table, CancellationToken cancellationToken)
    {
        if (db is PostgresLedgerContext)
        {
            await ExecuteAsync(db, $"ALTER TABLE \"{table}\" DISABLE TRIGGER USER", cancellationToken);
            return new TableGuards(db, table, []);
        }

        var names = await db.Database.SqlQuery<string>($"SELECT name AS Value FROM sqlite_master WHERE type = 'trigger' AND tbl_name = {table}").ToListAsync(cancellationToken);
        var written = await db.Database.SqlQuery<string>($"SELECT sql AS Value FROM sqlite_master WHERE type = 'trigger' AND tbl_name = {table}").ToListAsync(cancellationToken);
        foreach (var name in names)
        {
            await ExecuteAsync(db, $"DROP TRIGGER \"{name}\"", cancellationToken);
        }

        return new TableGuards(db, table, written);
    }

    public async Task PutBackAsync(CancellationToken cancellationToken)
    {
        foreach (var sql in _db is PostgresLedgerContext ? [$"ALTER TABLE \"{_table}\" ENABLE TRIGGER USER"] : _written)
        {
            await ExecuteAsync(_db, sql, cancellationToken);
        }

        _isLifted = false;
    }

    /// <summary>What was not put back goes back with the transaction, which must not be committed then.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_isLifted && _db.Database.CurrentTransaction is { } transaction)
        {
            await transaction.RollbackAsync();
        }
    }

    private static Task<int> ExecuteAsync(LedgerContext db, string sql, CancellationToken cancellationToken) => db.Database.ExecuteSqlRawAsync(sql, cancellationToken);
}

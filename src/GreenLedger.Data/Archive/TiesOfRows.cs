using GreenLedger.Domain;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Archive;

/// <summary>
/// The foreign keys of the tables that an archive fills, loosened while it does: tables that point at each other, and rows at
/// rows of their own table, have no order in which each finds what it points to.
/// </summary>
internal sealed class TiesOfRows
{
    private readonly LedgerContext _db;
    private readonly IReadOnlyList<IForeignKeyConstraint> _ties;

    private TiesOfRows(LedgerContext db, IReadOnlyList<IForeignKeyConstraint> ties) => (_db, _ties) = (db, ties);

    public static TiesOfRows Of(LedgerContext db, IEnumerable<StoredTable> tables) => new(db, [.. tables.SelectMany(table => table.Store.ForeignKeyConstraints)]);

    public async Task LoosenAsync(CancellationToken cancellationToken)
    {
        if (_db is SqliteLedgerContext)
        {
            // Until the transaction ends: sqlite.org/pragma.html#pragma_defer_foreign_keys
            await _db.Database.ExecuteSqlRawAsync("PRAGMA defer_foreign_keys = ON", cancellationToken);
            return;
        }

        await AlterAsync("DEFERRABLE INITIALLY DEFERRED", cancellationToken);
    }

    /// <exception cref="RuleBrokenException">A row points to one that is not there.</exception>
    public async Task TightenAsync(CancellationToken cancellationToken)
    {
        foreach (var tie in _ties)
        {
            var lost = await _db.Database.SqlQueryRaw<long>(LostSql(tie)).SingleAsync(cancellationToken);
            Rule.Require(lost == 0, $"Table {tie.Table.Name}: {(lost == 1 ? "a row points" : $"{lost} rows point")} by {string.Join(", ", tie.Columns.Select(column => column.Name))} to rows of {tie.PrincipalTable.Name} that are not in the archive. Nothing was read back.");
        }

        if (_db is PostgresLedgerContext)
        {
            // With what is still to be checked PostgreSQL alters no table.
            await _db.Database.ExecuteSqlRawAsync("SET CONSTRAINTS ALL IMMEDIATE", cancellationToken);
            await AlterAsync("NOT DEFERRABLE", cancellationToken);
        }
    }

    private async Task AlterAsync(string how, CancellationToken cancellationToken)
    {
        foreach (var tie in _ties)
        {
            var sql = $"ALTER TABLE \"{tie.Table.Name}\" ALTER CONSTRAINT \"{tie.Name}\" {how}";
            await _db.Database.ExecuteSqlRawAsync(sql, cancellationToken);
        }
    }

    private static string LostSql(IForeignKeyConstraint tie)
    {
        var pairs = tie.Columns.Zip(tie.PrincipalColumns, (child, parent) => $"p.\"{parent.Name}\" = c.\"{child.Name}\"");
        var filled = tie.Columns.Select(column => $"c.\"{column.Name}\" IS NOT NULL");
        return $"SELECT COUNT(*) AS \"Value\" FROM \"{tie.Table.Name}\" c WHERE {string.Join(" AND ", filled)} "
            + $"AND NOT EXISTS (SELECT 1 FROM \"{tie.PrincipalTable.Name}\" p WHERE {string.Join(" AND ", pairs)})";
    }
}

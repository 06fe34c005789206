using System.Data.Common;
using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Archive;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace GreenLedger.Data.Archive;

/// <summary>
/// Reads an archive into an empty house, row by row, within the transaction that the context is in: whatever is wrong with it
/// leaves the house as it was.
/// </summary>
public sealed class HouseIntake(LedgerContext db)
{
    private readonly IReadOnlyList<StoredTable> _tables = ArchiveModel.Of(db);
    private int _files;

    /// <summary>Whether nobody has worked here yet: what the ledger itself puts into a new database does not count.</summary>
    public static async Task<bool> IsEmptyAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        return !await db.Houses.AnyAsync(cancellationToken) && !await db.Users.AnyAsync(cancellationToken) && !await db.People.AnyAsync(cancellationToken)
            && !await db.StoredFiles.AnyAsync(cancellationToken) && !await db.Suppliers.AnyAsync(cancellationToken) && !await db.Lots.AnyAsync(cancellationToken);
    }

    /// <exception cref="RuleBrokenException">The house is not empty, or the archive is not whole; the sentence says where.</exception>
    public async Task ReadBackAsync(IArchiveContent archive, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(archive);
        await db.TakeTurnAsync(Turn.Preparing, cancellationToken);
        Rule.Require(await IsEmptyAsync(db, cancellationToken), "This house is in use already: an archive is read back into an empty one only, that is with an empty data folder or database.");
        RequireSameTables(archive);
        var ties = TiesOfRows.Of(db, _tables);
        await ties.LoosenAsync(cancellationToken);
        foreach (var table in _tables)
        {
            var sql = $"DELETE FROM \"{table.Name}\"";
            await db.Database.ExecuteSqlRawAsync(sql, cancellationToken);
        }

        foreach (var table in _tables)
        {
            await FillAsync(table, archive, cancellationToken);
        }

        Rule.Require(_files == archive.Files, $"The archive holds {archive.Files} files, and its tables name {_files} of them.");
        await ties.TightenAsync(cancellationToken);
    }

    private void RequireSameTables(IArchiveContent archive)
    {
        var missing = _tables.Select(table => table.Name).Where(name => !archive.Tables.Contains(name)).ToList();
        var unknown = archive.Tables.Except(_tables.Select(table => table.Name)).ToList();
        Rule.Require(missing.Count == 0, $"The archive has no table {string.Join(", ", missing)}: it is not whole, or another version of the ledger wrote it. Read it back with that version, which then brings the house up to date.");
        Rule.Require(unknown.Count == 0, $"The archive has a table that is not known here, {string.Join(", ", unknown)}: another version of the ledger wrote it. Read it back with that version.");
    }

    private async Task FillAsync(StoredTable table, IArchiveContent archive, CancellationToken cancellationToken)
    {
        var names = string.Join(", ", table.Columns.Concat(table.Unarchived.Select(one => one.Column)).Select(column => $"\"{column.Name}\""));
        var number = 0;
        try
        {
            await using var rows = await RowsAsync(table, names, cancellationToken);
            await foreach (var cells in archive.RowsAsync(table.Archived, cancellationToken))
            {
                number++;
                await PutAsync(rows, table, archive, cells, cancellationToken);
            }

            await rows.EndAsync(cancellationToken);
        }
        catch (RuleBrokenException broken)
        {
            throw new RuleBrokenException($"Table {table.Name}{(number == 0 ? "" : $", row {number}")}: {broken.Message.TrimEnd('.')}. Nothing was read back.");
        }
        catch (DbException refused)
        {
            throw new RuleBrokenException($"Table {table.Name}, row {number} or before: the database refuses it ({refused.Message}). Nothing was read back.");
        }
    }

    private async Task<IntakeRows> RowsAsync(StoredTable table, string names, CancellationToken cancellationToken)
    {
        var columns = table.Columns.Concat(table.Unarchived.Select(one => one.Column)).ToList();
        return db.Database.GetDbConnection() switch
        {
            NpgsqlConnection postgres => new IntakeRows(
                await postgres.BeginBinaryImportAsync($"COPY \"{table.Name}\" ({names}) FROM STDIN (FORMAT BINARY)", cancellationToken), columns),
            SqliteConnection sqlite => new IntakeRows(
                new SqliteRow(sqlite, $"INSERT INTO \"{table.Name}\" ({names}) VALUES ({string.Join(", ", columns.Select(_ => "?"))})")),
            var other => throw new InvalidOperationException($"No way is known to fill a {other.GetType().Name}."),
        };
    }

    private async Task PutAsync(IntakeRows rows, StoredTable table, IArchiveContent archive, string[] cells, CancellationToken cancellationToken)
    {
        var values = new object?[cells.Length];
        for (var at = 0; at < cells.Length; at++)
        {
            var value = ArchivedValue.Read(cells[at], table.Archived.Columns[at]);
            if (at == table.BytesAt && value is string member)
            {
                value = await archive.FileAsync(member, cancellationToken);
                _files++;
            }

            values[at] = value;
        }

        rows.Put(values.Concat(table.Unarchived.Select(one => one.Make())), cancellationToken);
    }
}

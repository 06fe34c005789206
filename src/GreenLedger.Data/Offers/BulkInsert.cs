using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;

namespace GreenLedger.Data.Offers;

/// <summary>
/// Writes many new rows of one table past the change tracker, which a hundred thousand offers would drown: one prepared
/// statement on SQLite, COPY on PostgreSQL. Columns, conversions and names are those of the model. Made once for a list,
/// since the walk from a row to its columns is compiled.
/// </summary>
internal sealed class BulkInsert<T> : IDisposable
    where T : class
{
    private readonly LedgerContext _db;
    private readonly string _table;
    private readonly List<IProperty> _columns;
    private SqliteRow? _sqlite;
    private Action<SqliteRow, T>? _bind;
    private Action<PostgresRow, T>? _copy;

    public BulkInsert(LedgerContext db)
    {
        var entity = db.Model.FindEntityType(typeof(T))!;
        _db = db;
        _table = entity.GetTableName()!;
        _columns = [.. Properties(entity)];
    }

    /// <summary>Inserts within the transaction that the context is in.</summary>
    public async Task InsertAsync(IEnumerable<T> rows, CancellationToken cancellationToken)
    {
        if (_db.Database.GetDbConnection() is NpgsqlConnection postgres)
        {
            await CopyAsync(postgres, rows, cancellationToken);
        }
        else
        {
            Insert((SqliteConnection)_db.Database.GetDbConnection(), rows, cancellationToken);
        }
    }

    public void Dispose() => _sqlite?.Dispose();

    private string Names => string.Join(", ", _columns.Select(column => $"\"{column.GetColumnName()}\""));

    private void Insert(SqliteConnection connection, IEnumerable<T> rows, CancellationToken cancellationToken)
    {
        _sqlite ??= new SqliteRow(connection, $"INSERT INTO \"{_table}\" ({Names}) VALUES ({string.Join(", ", _columns.Select(_ => "?"))})");
        _bind ??= RowWalk.To<SqliteRow, T>(_columns);
        foreach (var row in rows)
        {
            cancellationToken.ThrowIfCancellationRequested();
            _bind(_sqlite, row);
            _sqlite.Insert();
        }
    }

    private async Task CopyAsync(NpgsqlConnection connection, IEnumerable<T> rows, CancellationToken cancellationToken)
    {
        _copy ??= RowWalk.To<PostgresRow, T>(_columns);
        var types = _columns.ConvertAll(column => column.GetRelationalTypeMapping().StoreTypeNameBase);
        await using var importer = await connection.BeginBinaryImportAsync($"COPY \"{_table}\" ({Names}) FROM STDIN (FORMAT BINARY)", cancellationToken);
        var copied = new PostgresRow(importer, types);
        foreach (var row in rows)
        {
            cancellationToken.ThrowIfCancellationRequested();
            copied.Begin();
            _copy(copied, row);
        }

        await importer.CompleteAsync(cancellationToken);
    }

    private static IEnumerable<IProperty> Properties(ITypeBase type) =>
        type.GetProperties().Concat(type.GetComplexProperties().SelectMany(value => Properties(value.ComplexType)));
}

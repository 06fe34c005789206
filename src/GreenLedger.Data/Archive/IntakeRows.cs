using GreenLedger.Data.Offers;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;

namespace GreenLedger.Data.Archive;

/// <summary>Rows on their way into a table: one prepared statement on SQLite, COPY on PostgreSQL.</summary>
internal sealed class IntakeRows : IAsyncDisposable
{
    private readonly SqliteRow? _sqlite;
    private readonly NpgsqlBinaryImporter? _importer;
    private readonly PostgresRow? _postgres;

    public IntakeRows(SqliteRow sqlite) => _sqlite = sqlite;

    public IntakeRows(NpgsqlBinaryImporter importer, List<IColumn> columns)
    {
        _importer = importer;
        _postgres = new PostgresRow(importer, columns.ConvertAll(column => column.StoreTypeMapping.StoreTypeNameBase));
    }

    public void Put(IEnumerable<object?> values, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        _postgres?.Begin();
        foreach (var value in values)
        {
            StoredCells.Write(_sqlite ?? (IRowOut)_postgres!, value);
        }

        _sqlite?.Insert();
    }

    public async Task EndAsync(CancellationToken cancellationToken)
    {
        if (_importer is not null)
        {
            await _importer.CompleteAsync(cancellationToken);
        }
    }

    public async ValueTask DisposeAsync()
    {
        _sqlite?.Dispose();
        if (_importer is not null)
        {
            await _importer.DisposeAsync();
        }
    }
}

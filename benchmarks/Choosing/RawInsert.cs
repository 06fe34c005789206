using System.Data.Common;
using GreenLedger.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace GreenLedger.Benchmarks.Choosing;

/// <summary>One prepared statement for many rows of a table, within the transaction that the context is in.</summary>
internal sealed class RawInsert : IDisposable
{
    private readonly DbCommand _command;

    public RawInsert(LedgerContext db, string table, IReadOnlyList<string> columns)
    {
        _command = db.Database.GetDbConnection().CreateCommand();
        _command.Transaction = db.Database.CurrentTransaction?.GetDbTransaction();
        _command.CommandText = $"INSERT INTO \"{table}\" ({string.Join(", ", columns.Select(column => $"\"{column}\""))}) VALUES ({string.Join(", ", columns.Select((_, at) => "$" + at))})";
        for (var at = 0; at < columns.Count; at++)
        {
            var parameter = _command.CreateParameter();
            parameter.ParameterName = "$" + at;
            _command.Parameters.Add(parameter);
        }
    }

    public void Write(IReadOnlyList<object?> values)
    {
        for (var at = 0; at < values.Count; at++)
        {
            _command.Parameters[at].Value = values[at] ?? DBNull.Value;
        }

        _command.ExecuteNonQuery();
    }

    public void Dispose() => _command.Dispose();
}

using System.Data.Common;
using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace GreenLedger.Data.Offers;

/// <summary>
/// Writes many new rows of one table past the change tracker, which a hundred thousand offers would drown: one prepared
/// statement on SQLite, COPY on PostgreSQL. Columns, conversions and names are those of the model.
/// </summary>
internal static class BulkInsert
{
    /// <summary>Inserts within the transaction that the context is in.</summary>
    public static async Task InsertAsync<T>(this LedgerContext db, IEnumerable<T> rows, CancellationToken cancellationToken)
        where T : class
    {
        var columns = Columns<T>(db);
        var table = db.Model.FindEntityType(typeof(T))!.GetTableName()!;
        if (db.Database.GetDbConnection() is NpgsqlConnection postgres)
        {
            await CopyAsync(postgres, table, columns, rows, cancellationToken);
        }
        else
        {
            InsertPrepared(db, table, columns, rows, cancellationToken);
        }
    }

    private static void InsertPrepared<T>(
        LedgerContext db, string table, IReadOnlyList<ColumnOf<T>> columns, IEnumerable<T> rows, CancellationToken cancellationToken)
    {
        using var command = db.Database.GetDbConnection().CreateCommand();
        command.Transaction = db.Database.CurrentTransaction?.GetDbTransaction();
        command.CommandText = $"INSERT INTO \"{table}\" ({string.Join(", ", columns.Select(column => $"\"{column.Name}\""))}) VALUES ({string.Join(", ", columns.Select((_, at) => "$" + at))})";
        var parameters = columns.Select((_, at) => AddParameter(command, "$" + at)).ToArray();
        foreach (var row in rows)
        {
            cancellationToken.ThrowIfCancellationRequested();
            for (var at = 0; at < parameters.Length; at++)
            {
                parameters[at].Value = columns[at].Value(row) ?? DBNull.Value;
            }

            command.ExecuteNonQuery();
        }
    }

    private static DbParameter AddParameter(DbCommand command, string name)
    {
        var parameter = command.CreateParameter();
        parameter.ParameterName = name;
        command.Parameters.Add(parameter);
        return parameter;
    }

    private static async Task CopyAsync<T>(
        NpgsqlConnection connection, string table, IReadOnlyList<ColumnOf<T>> columns, IEnumerable<T> rows, CancellationToken cancellationToken)
    {
        var names = string.Join(", ", columns.Select(column => $"\"{column.Name}\""));
        await using var copy = await connection.BeginBinaryImportAsync($"COPY \"{table}\" ({names}) FROM STDIN (FORMAT BINARY)", cancellationToken);
        foreach (var row in rows)
        {
            await copy.StartRowAsync(cancellationToken);
            foreach (var column in columns)
            {
                if (column.Value(row) is { } value)
                {
                    await copy.WriteAsync(value, column.StoreType, cancellationToken);
                }
                else
                {
                    await copy.WriteNullAsync(cancellationToken);
                }
            }
        }

        await copy.CompleteAsync(cancellationToken);
    }

    private static List<ColumnOf<T>> Columns<T>(LedgerContext db)
    {
        var entity = db.Model.FindEntityType(typeof(T))!;
        return [.. Properties(entity).Select(property => new ColumnOf<T>(
            property.GetColumnName(), property.GetRelationalTypeMapping().StoreTypeNameBase, Reader<T>(property)))];
    }

    private static IEnumerable<IProperty> Properties(ITypeBase type) =>
        type.GetProperties().Concat(type.GetComplexProperties().SelectMany(value => Properties(value.ComplexType)));

    /// <summary>A compiled walk from the row to the stored value; null where a value on the way is not there.</summary>
    private static Func<T, object?> Reader<T>(IProperty property)
    {
        var row = Expression.Parameter(typeof(T));
        var walk = Expression.Lambda<Func<T, object?>>(Walk(row, Path(property)), row).Compile();
        return property.GetTypeMapping().Converter is { } converter
            ? found => walk(found) is { } value ? converter.ConvertToProvider(value) : null
            : walk;
    }

    private static Stack<string> Path(IProperty property)
    {
        var path = new Stack<string>([property.Name]);
        for (var type = property.DeclaringType; type is IComplexType { ComplexProperty: var value }; type = value.DeclaringType)
        {
            path.Push(value.Name);
        }

        return path;
    }

    private static Expression Walk(Expression from, Stack<string> path)
    {
        if (path.Count == 0)
        {
            return Expression.Convert(from, typeof(object));
        }

        if (Nullable.GetUnderlyingType(from.Type) is not null)
        {
            return Expression.Condition(
                Expression.Property(from, "HasValue"),
                Walk(Expression.Property(from, "Value"), path),
                Expression.Constant(null, typeof(object)));
        }

        return Walk(Expression.Property(from, path.Pop()), path);
    }

    private sealed record ColumnOf<T>(string Name, string StoreType, Func<T, object?> Value);
}

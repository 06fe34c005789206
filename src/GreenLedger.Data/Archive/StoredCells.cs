using System.Data.Common;
using System.Text.Json;
using GreenLedger.Data.Offers;
using GreenLedger.Domain.Archive;

namespace GreenLedger.Data.Archive;

/// <summary>Values of a table as either database gives and takes them.</summary>
internal static class StoredCells
{
    /// <summary>The value of a column of any kind but bytes.</summary>
    public static object? Read(DbDataReader reader, int at, ArchiveColumn column) => reader.IsDBNull(at) ? null : column.Kind switch
    {
        ColumnKind.Text or ColumnKind.Bytes => reader.GetString(at),
        ColumnKind.Whole => reader.GetInt64(at),
        ColumnKind.Exact => reader.GetDecimal(at),
        ColumnKind.Number => reader.GetDouble(at),
        ColumnKind.YesNo => reader.GetBoolean(at),
        ColumnKind.Day => reader.GetFieldValue<DateOnly>(at),
        ColumnKind.Moment => reader.GetDateTime(at),
        ColumnKind.Identity => reader.GetGuid(at),
        // PostgreSQL has lists of its own; SQLite keeps them as JSON.
        ColumnKind.List => typeof(Array).IsAssignableFrom(reader.GetFieldType(at)) ? reader.GetValue(at) : ArchivedValue.Read(reader.GetString(at), column),
        _ => throw new ArgumentOutOfRangeException(nameof(column)),
    };

    public static void Write(IRowOut row, object? value)
    {
        switch (value)
        {
            case null: row.Null(); break;
            case string text: row.Value(text); break;
            case long whole: row.Value(whole); break;
            case decimal exact: row.Value(exact); break;
            case double number: row.Value(number); break;
            case bool yes: row.Value(yes); break;
            case DateOnly day: row.Value(day); break;
            case DateTime moment: row.Value(moment); break;
            case Guid id: row.Value(id); break;
            case byte[] bytes: row.Value(bytes); break;
            case Array list when row is SqliteRow: row.Value(JsonSerializer.Serialize(list, list.GetType())); break;
            case string[] texts: row.Value(texts); break;
            case int[] wholes: row.Value(wholes); break;
            case double[] numbers: row.Value(numbers); break;
            case Guid[] ids: row.Value(ids); break;
            default: throw new ArgumentException($"No way is known to store a {value.GetType().Name}.", nameof(value));
        }
    }
}

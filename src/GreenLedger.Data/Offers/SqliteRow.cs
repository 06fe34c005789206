using System.Globalization;
using System.Text;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace GreenLedger.Data.Offers;

/// <summary>
/// One prepared insertion into SQLite, bound column by column as the provider would store it: UUIDs in capitals, days
/// and moments as text. A command of the provider takes three times as long for a short row.
/// </summary>
internal sealed class SqliteRow : IRowOut, IDisposable
{
    private readonly sqlite3 _database;
    private readonly sqlite3_stmt _statement;
    private byte[] _utf8 = new byte[1024];
    private int _column;

    public SqliteRow(SqliteConnection connection, string sql)
    {
        _database = connection.Handle!;
        SqliteException.ThrowExceptionForRC(raw.sqlite3_prepare_v2(_database, sql, out _statement), _database);
    }

    public void Null() => Check(raw.sqlite3_bind_null(_statement, ++_column));

    public void Value<TValue>(TValue value)
    {
        switch (value)
        {
            case string text:
                Text(text);
                break;
            case Guid id:
                Span<byte> letters = stackalloc byte[36];
                id.TryFormat(letters, out _);
                Ascii.ToUpperInPlace(letters, out _);
                Check(raw.sqlite3_bind_text(_statement, ++_column, letters));
                break;
            case long number:
                Check(raw.sqlite3_bind_int64(_statement, ++_column, number));
                break;
            case int number:
                Check(raw.sqlite3_bind_int64(_statement, ++_column, number));
                break;
            case double number:
                Check(raw.sqlite3_bind_double(_statement, ++_column, number));
                break;
            case decimal exact:
                Text(exact.ToString("0.0###########################", CultureInfo.InvariantCulture));
                break;
            case byte[] { Length: 0 }:
                Check(raw.sqlite3_bind_zeroblob(_statement, ++_column, 0));
                break;
            case byte[] bytes:
                Check(raw.sqlite3_bind_blob(_statement, ++_column, bytes));
                break;
            case bool claim:
                Check(raw.sqlite3_bind_int64(_statement, ++_column, claim ? 1 : 0));
                break;
            case DateOnly day:
                Text(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
                break;
            case DateTime moment:
                Text(moment.ToString(@"yyyy\-MM\-dd HH\:mm\:ss.FFFFFFF", CultureInfo.InvariantCulture));
                break;
            default:
                throw new InvalidOperationException($"No way is known to store a {typeof(TValue).Name} in SQLite.");
        }
    }

    /// <summary>Inserts what was bound, and begins the next row.</summary>
    public void Insert()
    {
        var answer = raw.sqlite3_step(_statement);
        var reset = raw.sqlite3_reset(_statement);
        SqliteException.ThrowExceptionForRC(answer == raw.SQLITE_DONE ? reset : answer, _database);
        _column = 0;
    }

    public void Dispose() => _statement.Dispose();

    private void Text(string text)
    {
        if (text.Length == 0)
        {
            // An empty span would be bound as NULL.
            Check(raw.sqlite3_bind_text(_statement, ++_column, ""));
            return;
        }

        var most = Encoding.UTF8.GetMaxByteCount(text.Length);
        if (most > _utf8.Length)
        {
            _utf8 = new byte[most];
        }

        Check(raw.sqlite3_bind_text(_statement, ++_column, _utf8.AsSpan(0, Encoding.UTF8.GetBytes(text, _utf8))));
    }

    private void Check(int answer) => SqliteException.ThrowExceptionForRC(answer, _database);
}

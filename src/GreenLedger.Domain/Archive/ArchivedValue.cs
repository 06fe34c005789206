using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace GreenLedger.Domain.Archive;

/// <summary>
/// A value of a table as the text of a cell, and back: the same text on every machine and from either database. An empty cell
/// is nothing. Where a column may hold nothing, a text without letters is a lone backslash, and one that begins with a
/// backslash gets another in front.
/// </summary>
public static class ArchivedValue
{
    private const string Moment = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";
    private const string Day = "yyyy-MM-dd";
    private const long TicksOfAMillionth = 10;

    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <param name="value">As a database stores it: text, long, decimal, double, bool, day, moment in UTC, UUID, or an array; null for nothing.</param>
    /// <param name="column">What it is a value of.</param>
    public static string Write(object? value, ArchiveColumn column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return value switch
        {
            null => "",
            string text => column.MayBeEmpty && text is [] or ['\\', ..] ? "\\" + text : text,
            long or int => Convert.ToInt64(value, CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture),
            decimal exact => exact.ToString("0.############################", CultureInfo.InvariantCulture),
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            bool yes => yes ? "true" : "false",
            DateOnly day => day.ToString(Day, CultureInfo.InvariantCulture),
            DateTime moment => Whole(moment).ToString(Moment, CultureInfo.InvariantCulture),
            Guid id => id.ToString("D"),
            Array list => JsonSerializer.Serialize(list, list.GetType(), Readable),
            _ => throw new ArgumentException($"No way is known to write a {value.GetType().Name}.", nameof(value)),
        };
    }

    /// <summary>What <see cref="Write"/> wrote.</summary>
    /// <exception cref="RuleBrokenException">The cell holds no such value; the sentence names the column.</exception>
    public static object? Read(string cell, ArchiveColumn column)
    {
        ArgumentNullException.ThrowIfNull(cell);
        ArgumentNullException.ThrowIfNull(column);
        if (cell.Length == 0 && (column.MayBeEmpty || column.Kind != ColumnKind.Text))
        {
            Rule.Require(column.MayBeEmpty, $"{column.Name} is empty and must not be");
            return null;
        }

        var value = Parsed(cell, column);
        Rule.Require(value is not null, $"{column.Name} is no {column.Type}: “{(cell.Length > 40 ? cell[..40] + "…" : cell)}”");
        return value;
    }

    private static object? Parsed(string cell, ArchiveColumn column) => column.Kind switch
    {
        ColumnKind.Text => column.MayBeEmpty && cell[0] == '\\' ? cell[1..] : cell,
        ColumnKind.Bytes => cell,
        ColumnKind.Whole => long.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) ? whole : null,
        ColumnKind.Exact => decimal.TryParse(cell, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var exact) ? exact : null,
        ColumnKind.Number => double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null,
        ColumnKind.YesNo => cell switch { "true" => true, "false" => false, _ => null },
        ColumnKind.Day => DateOnly.TryParseExact(cell, Day, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null,
        ColumnKind.Moment => DateTime.TryParseExact(cell, Moment, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var moment) ? moment : null,
        ColumnKind.Identity => Guid.TryParseExact(cell, "D", out var id) ? id : null,
        ColumnKind.List => ParsedList(cell, column.Items!.Value),
        _ => throw new ArgumentOutOfRangeException(nameof(column)),
    };

    private static Array? ParsedList(string cell, ColumnKind items)
    {
        try
        {
            return items switch
            {
                ColumnKind.Text => JsonSerializer.Deserialize<string[]>(cell),
                ColumnKind.Whole => JsonSerializer.Deserialize<int[]>(cell),
                ColumnKind.Number => JsonSerializer.Deserialize<double[]>(cell),
                ColumnKind.Identity => JsonSerializer.Deserialize<Guid[]>(cell),
                _ => throw new ArgumentOutOfRangeException(nameof(items)),
            };
        }
        catch (JsonException)
        {
            // Whatever is wrong with the text, the cell holds no list.
            return null;
        }
    }

    private static DateTime Whole(DateTime moment) => new(moment.Ticks - (moment.Ticks % TicksOfAMillionth), DateTimeKind.Utc);
}

using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Layout;

/// <summary>What a column of an exported list holds, which decides its alignment and number format.</summary>
public enum CellKind
{
    Text,
    Number,
    Day,
    Instant,
    YesNo,
}

/// <summary>
/// One column of an exported list: its head with the unit in it, and how a row gives the cell's value. Numbers leave as
/// numbers, days as dates; text stays text, whatever character it starts with.
/// </summary>
public sealed class TableColumn<T>
{
    private TableColumn(string head, CellKind kind, string format, double width, Func<T, object?> value)
    {
        Head = head;
        Kind = kind;
        Format = format;
        Width = width;
        Value = value;
    }

    public string Head { get; }

    public CellKind Kind { get; }

    /// <summary>The number format in the workbook's own notation; empty for text.</summary>
    public string Format { get; }

    /// <summary>In characters of the workbook's standard face.</summary>
    public double Width { get; }

    internal Func<T, object?> Value { get; }

    public static TableColumn<T> Text(string head, Func<T, string?> value, double width = 24) =>
        new(head, CellKind.Text, "", width, value);

    /// <summary>A number with fixed decimals and thousands separators; the unit belongs in the head: <c>"kg"</c>.</summary>
    public static TableColumn<T> Number(string head, Func<T, decimal?> value, int decimals = 2, double width = 14) =>
        new(head, CellKind.Number, decimals == 0 ? "#,##0" : "#,##0." + new string('0', decimals), width, row => value(row));

    public static TableColumn<T> Count(string head, Func<T, long?> value, double width = 10) =>
        new(head, CellKind.Number, "#,##0", width, row => (decimal?)value(row));

    /// <summary>A year stands without a thousands separator.</summary>
    public static TableColumn<T> Year(string head, Func<T, int?> value) =>
        new(head, CellKind.Number, "0", 10, row => (decimal?)value(row));

    public static TableColumn<T> Day(string head, Func<T, DateOnly?> value) =>
        new(head, CellKind.Day, "d mmm yyyy", 14, row => value(row));

    /// <summary>A moment, written in UTC.</summary>
    public static TableColumn<T> Instant(string head, Func<T, DateTimeOffset?> value) =>
        new(head, CellKind.Instant, "d mmm yyyy hh:mm", 20, row => value(row));

    /// <summary>A cell as a list had it: a number where the sender's program held one, else text.</summary>
    public static TableColumn<T> AsReceived(string head, Func<T, Cell> value, double width = 18) =>
        new(head, CellKind.Text, "", width, row => value(row) switch { { Number: { } number } => number, var cell => cell.Text });

    public static TableColumn<T> YesNo(string head, Func<T, bool?> value) =>
        new(head, CellKind.YesNo, "", 10, row => value(row));
}

namespace GreenLedger.Domain.Archive;

/// <summary>One table of the ledger as an archive has it.</summary>
/// <param name="Name">As in the database; its member is <c>tables/Name.csv</c>.</param>
/// <param name="Meaning">What one row is.</param>
/// <param name="Columns">In the order in which they stand, the key first.</param>
public sealed record ArchiveTable(string Name, string Meaning, IReadOnlyList<ArchiveColumn> Columns)
{
    public string Member => $"tables/{Name}.csv";
}

/// <summary>One column of a table in an archive.</summary>
/// <param name="Name">As in the database.</param>
/// <param name="Kind">How its values are written.</param>
/// <param name="Items">How those of a list are written; null where it is none.</param>
/// <param name="MayBeEmpty">Whether a row may have nothing in it.</param>
/// <param name="Unit">What a number counts, such as µg; empty where it counts nothing.</param>
/// <param name="Meaning">What it says, in a sentence.</param>
/// <param name="Reference">The table and column that it points to; empty where it points to none.</param>
public sealed record ArchiveColumn(string Name, ColumnKind Kind, ColumnKind? Items, bool MayBeEmpty, string Unit, string Meaning, string Reference)
{
    /// <summary>Its kind in words.</summary>
    public string Type => Kind == ColumnKind.List ? $"list of {Word(Items!.Value)} (JSON)" : Word(Kind);

    private static string Word(ColumnKind kind) => kind switch
    {
        ColumnKind.Text => "text",
        ColumnKind.Whole => "whole number",
        ColumnKind.Exact => "decimal number",
        ColumnKind.Number => "number",
        ColumnKind.YesNo => "true or false",
        ColumnKind.Day => "day",
        ColumnKind.Moment => "moment in UTC",
        ColumnKind.Identity => "UUID",
        ColumnKind.Bytes => "member of the archive",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}

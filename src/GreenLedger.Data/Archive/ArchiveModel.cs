using GreenLedger.Domain.Archive;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace GreenLedger.Data.Archive;

/// <summary>
/// What an archive holds, read from the model of the database: every table and column is in it unless <see cref="LeftOut"/> names it,
/// so that a new one cannot be forgotten.
/// </summary>
internal static class ArchiveModel
{
    /// <summary>In the order of their names.</summary>
    public static IReadOnlyList<StoredTable> Of(LedgerContext db) =>
        [.. db.Model.GetRelationalModel().Tables.Where(table => !LeftOut.Tables.Contains(table.Name)).OrderBy(table => table.Name, StringComparer.Ordinal).Select(Of)];

    private static StoredTable Of(ITable table)
    {
        var key = table.PrimaryKey?.Columns ?? throw new InvalidOperationException($"{table.Name} has no key by which its rows could be put in order.");
        var columns = key.Concat(table.Columns.Except(key).OrderBy(column => column.Name, StringComparer.Ordinal))
            .ToLookup(column => LeftOut.Columns.ContainsKey($"{table.Name}.{column.Name}"));
        var archived = columns[false].ToList();
        return new StoredTable(
            new ArchiveTable(table.Name, ArchiveWords.Of(table), archived.ConvertAll(Of)),
            archived, [.. columns[true].Select(column => (column, LeftOut.Columns[$"{table.Name}.{column.Name}"]))], table);
    }

    private static ArchiveColumn Of(IColumn column)
    {
        var (kind, items) = KindOf(column);
        return new ArchiveColumn(
            column.Name, kind, items, column.IsNullable, ArchiveWords.UnitOf(column), ArchiveWords.Of(column), ReferenceOf(column));
    }

    private static (ColumnKind Kind, ColumnKind? Items) KindOf(IColumn column)
    {
        var mapping = (column.PropertyMappings is [var first, ..] ? first.TypeMapping : null)
            ?? throw new InvalidOperationException($"No way is known to archive the column {column.Name} of {column.Table.Name}: say one, or leave it out with a reason.");
        return mapping.ElementTypeMapping is { } item && mapping.ClrType != typeof(byte[])
            ? (ColumnKind.List, KindOf(Stored(item), column))
            : (KindOf(Stored(mapping), column), null);
    }

    private static Type Stored(CoreTypeMapping mapping)
    {
        var type = mapping.Converter?.ProviderClrType ?? mapping.ClrType;
        type = Nullable.GetUnderlyingType(type) ?? type;
        return type.IsEnum ? Enum.GetUnderlyingType(type) : type;
    }

    private static ColumnKind KindOf(Type stored, IColumn column) => stored switch
    {
        _ when stored == typeof(string) => ColumnKind.Text,
        _ when stored == typeof(int) || stored == typeof(long) || stored == typeof(short) => ColumnKind.Whole,
        _ when stored == typeof(decimal) => ColumnKind.Exact,
        _ when stored == typeof(double) => ColumnKind.Number,
        _ when stored == typeof(bool) => ColumnKind.YesNo,
        _ when stored == typeof(DateOnly) => ColumnKind.Day,
        _ when stored == typeof(DateTime) => ColumnKind.Moment,
        _ when stored == typeof(Guid) => ColumnKind.Identity,
        _ when stored == typeof(byte[]) => ColumnKind.Bytes,
        _ => throw new InvalidOperationException($"No way is known to archive a {stored.Name}, as in {column.Table.Name}.{column.Name}."),
    };

    private static string ReferenceOf(IColumn column)
    {
        var tie = column.Table.ForeignKeyConstraints.FirstOrDefault(one => one.Columns.Contains(column));
        return tie is null ? "" : $"{tie.PrincipalTable.Name}.{tie.PrincipalColumns[tie.Columns.ToList().IndexOf(column)].Name}";
    }
}

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Papers;

/// <summary>A table of the database with the columns in which somebody's name can stand: texts and lists of texts.</summary>
internal sealed record TextTable(string Name, IReadOnlyList<IColumn> Key, IReadOnlyList<IColumn> Texts)
{
    /// <summary>Every table that has any, by the model, so that a new one cannot be forgotten.</summary>
    public static IReadOnlyList<TextTable> All(LedgerContext db) => [.. db.Model.GetRelationalModel().Tables
        .Select(table => new TextTable(table.Name, table.PrimaryKey!.Columns, [.. table.Columns.Where(column => IsText(column) && !table.PrimaryKey.Columns.Contains(column))]))
        .Where(table => table.Texts.Count > 0).OrderBy(table => table.Name, StringComparer.Ordinal)];

    /// <summary>As the search folds it, else as somebody wrote it.</summary>
    public static bool IsFolded(IColumn column) => column.Name == "SearchText";

    public static int? Longest(IColumn column) => column.PropertyMappings[0].Property.GetMaxLength();

    private static bool IsText(IColumn column)
    {
        if (column.PropertyMappings is not [{ TypeMapping: { } mapping }, ..])
        {
            return false;
        }

        var item = mapping.ElementTypeMapping ?? mapping;
        return (item.Converter?.ProviderClrType ?? item.ClrType) == typeof(string);
    }
}

using GreenLedger.Domain.Archive;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Archive;

/// <summary>A table of the database beside what an archive has of it.</summary>
/// <param name="Archived">Its name, meaning and columns.</param>
/// <param name="Columns">The database's columns, in the same order.</param>
/// <param name="Unarchived">Columns that are left out, with what a row that is read back gets there.</param>
/// <param name="Store">The table in the model.</param>
internal sealed record StoredTable(
    ArchiveTable Archived, IReadOnlyList<IColumn> Columns, IReadOnlyList<(IColumn Column, Func<object?> Make)> Unarchived, ITable Store)
{
    public string Name => Store.Name;

    /// <summary>Where its bytes stand; -1 where it has none.</summary>
    public int BytesAt { get; } = Archived.Columns.ToList().FindIndex(column => column.Kind == ColumnKind.Bytes);

    public IReadOnlyList<IColumn> Key => Store.PrimaryKey!.Columns;
}

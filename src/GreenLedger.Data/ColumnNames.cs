using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data;

/// <summary>
/// Names the columns of values after the property and the unit that is stored: <c>Weight.Micrograms</c> of a lot's
/// <c>NetWeight</c> is the column <c>NetWeightMicrograms</c>. Rows with a <c>Version</c> are guarded by it.
/// </summary>
internal static class ColumnNames
{
    public static void Apply(IMutableModel model)
    {
        foreach (var entity in model.GetEntityTypes())
        {
            if (entity.FindProperty("Version") is { } version && version.ClrType == typeof(int))
            {
                version.IsConcurrencyToken = true;
            }

            foreach (var property in entity.GetComplexProperties())
            {
                Name(property, property.Name);
            }
        }
    }

    private static void Name(IMutableComplexProperty value, string path)
    {
        foreach (var property in value.ComplexType.GetProperties())
        {
            property.SetColumnName(path + property.Name);
        }

        foreach (var nested in value.ComplexType.GetComplexProperties())
        {
            Name(nested, path + nested.Name);
        }
    }
}

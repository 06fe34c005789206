using System.Globalization;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace GreenLedger.Data.Papers;

/// <summary>Finds the record that a changed entity is part of, among what is loaded.</summary>
internal sealed class Wholes(ChangeTracker tracker)
{
    private Dictionary<(string Kind, string Id), EntityEntry>? _loaded;

    /// <summary>The whole's kind and identity, and the whole itself where it is loaded.</summary>
    public (EntityEntry? Whole, string Kind, string Id) Of(EntityEntry entry)
    {
        var part = entry;
        while (RecordKinds.WholeOf(part.Metadata) is { } tie)
        {
            var kind = tie.PrincipalEntityType.ClrType.Name;
            var id = Text(tie.Properties.Select(property => part.Property(property.Name).CurrentValue ?? part.Property(property.Name).OriginalValue));
            if (!Loaded().TryGetValue((kind, id), out var whole))
            {
                return (null, kind, id);
            }

            part = whole;
        }

        return (part, part.Metadata.ClrType.Name, IdOf(part));
    }

    public static string IdOf(EntityEntry entry) =>
        Text(entry.Metadata.FindPrimaryKey()!.Properties.Select(property => entry.Property(property.Name).CurrentValue));

    private static string Text(IEnumerable<object?> keys) =>
        string.Join('/', keys.Select(key => Convert.ToString(key, CultureInfo.InvariantCulture)));

    private Dictionary<(string Kind, string Id), EntityEntry> Loaded() =>
        _loaded ??= tracker.Entries()
            .Where(entry => RecordKinds.IsRecorded(entry.Metadata))
            .DistinctBy(entry => (entry.Metadata.ClrType.Name, IdOf(entry)))
            .ToDictionary(entry => (entry.Metadata.ClrType.Name, IdOf(entry)));
}

using GreenLedger.Domain;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Papers;

/// <summary>What the records are called that members of the history point to.</summary>
internal sealed class RecordNames(LedgerContext db)
{
    /// <summary>The kind that an identity is of; null for anything else.</summary>
    public static Type? KindOf(object? value) =>
        value?.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(Id<>) ? type.GetGenericArguments()[0] : null;

    /// <summary>The name of each identity; those of rooms that the reader may not open have none.</summary>
    public async Task<IReadOnlyDictionary<object, string>> OfAsync(
        IEnumerable<object> ids, Func<string, bool> mayRead, CancellationToken cancellationToken)
    {
        var names = new Dictionary<object, string>();
        foreach (var group in ids.Distinct().GroupBy(id => KindOf(id)!))
        {
            if (RecordKinds.RoomOf(db.Model, group.Key.Name) is { } room && (room == "People" || mayRead(room))
                && RecordKinds.Find(db.Model, group.Key.Name) is { } type && RecordKinds.NameOf(type) is { } name)
            {
                await ((Task)typeof(RecordNames).GetMethod(nameof(AddAsync), System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Instance)!
                    .MakeGenericMethod(group.Key).Invoke(this, [group.ToList(), name.Name, names, cancellationToken])!);
            }
        }

        return names;
    }

    private async Task AddAsync<T>(List<object> ids, string name, Dictionary<object, string> names, CancellationToken cancellationToken)
        where T : class
    {
        var asked = ids.Cast<Id<T>>().ToList();
        var found = await db.Set<T>().AsNoTracking()
            .Where(record => asked.Contains(EF.Property<Id<T>>(record, "Id")))
            .Select(record => new { Id = EF.Property<Id<T>>(record, "Id"), Name = EF.Property<string>(record, name) })
            .ToListAsync(cancellationToken);
        foreach (var record in found)
        {
            names[record.Id] = record.Name;
        }
    }
}

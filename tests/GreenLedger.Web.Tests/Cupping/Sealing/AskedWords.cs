using System.Collections.Concurrent;
using System.Reflection;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>
/// What is told to the routes: what belongs to the first coffee of a table, then what else the ledger holds. A value that it
/// does not know and that a route needs is an error, so that no new route goes unasked.
/// </summary>
internal sealed class AskedWords(HouseFixture house, SealedTable table)
{
    private const int MostOthers = 5;
    private static readonly string[] Searches = ["q", "query", "text", "search"];

    private const int MostAddresses = 40;

    private readonly ConcurrentDictionary<Type, IReadOnlyList<string>> _ids = [];
    private readonly SealedCup _cup = table.Cups[0];
    private readonly HashSet<string> _telling = [.. table.Cups[0].Ids, table.Cups[0].Label, table.Cups[0].Reference, table.Cups[0].Code, $"{table.Id}"];
    private IReadOnlyList<Dictionary<string, string>> _records = [];

    private static IReadOnlyList<Dictionary<string, string>> Nothing => [new(StringComparer.OrdinalIgnoreCase)];

    /// <summary>What some route needs and nobody here knows.</summary>
    public ConcurrentDictionary<string, bool> Unknown { get; } = [];

    /// <summary>Whether this is of the table or its coffee, and of nothing else.</summary>
    public bool IsTelling(IReadOnlyDictionary<string, string> values) =>
        values.Values.Any(_telling.Contains) && values.Values.All(value => _telling.Contains(value) || !Guid.TryParse(value, out _));

    /// <summary>Which values a route is asked with: each of what it needs, what tells of the coffee first.</summary>
    public async Task<IReadOnlyList<Dictionary<string, string>>> NeededAsync(AskedRoute route)
    {
        var values = route.Values.Where(one => one.IsNeeded).ToList();
        IReadOnlyList<Dictionary<string, string>> needed = values.Exists(one => one.Name == "id")
            ? values.Exists(one => one.Name == "kind") ? await RecordsAsync() : values.Exists(one => one.Name == "about") ? About() : Nothing
            : Nothing;
        foreach (var value in values.Where(one => !needed[0].ContainsKey(one.Name)).ToList())
        {
            if (await OfAsync(value) is not { } known)
            {
                Unknown.TryAdd($"{route.Name} needs a {value.Name}: say in AskedWords what it may be.", true);
                return [];
            }

            needed = [.. needed.SelectMany(before => known.Select(one => With(before, value.Name, one))).Take(MostAddresses)];
        }

        return [.. needed.OrderByDescending(IsTelling)];
    }

    /// <summary>With what it takes besides, each by itself: words, and what tells of the coffee.</summary>
    public async Task<IReadOnlyList<Dictionary<string, string>>> BesidesAsync(AskedRoute route, Dictionary<string, string> needed, bool onlySearches)
    {
        var all = new List<Dictionary<string, string>>();
        foreach (var value in route.Values.Where(one => !one.IsNeeded && (!onlySearches || Searches.Contains(one.Name.ToLowerInvariant()))))
        {
            all.AddRange((await OfAsync(value) ?? [])
                .Where(word => AskedValue.Single(value.Type) == typeof(string) || _telling.Contains(word))
                .Select(word => With(needed, value.Name, word)));
        }

        return all;
    }

    /// <summary>With the first that is known of all identities that an act takes besides.</summary>
    public async Task<Dictionary<string, string>> WithIdsAsync(AskedRoute route, Dictionary<string, string> needed)
    {
        foreach (var value in route.Values.Where(one => !one.IsNeeded && AskedValue.Single(one.Type).IsGenericType))
        {
            needed = await OfAsync(value) is { Count: > 0 } known ? With(needed, value.Name, known[0]) : needed;
        }

        return needed;
    }

    /// <summary>The first record that this name of a body is about: <c>decisionId</c>, a decision; a bare <c>id</c> the coffee.</summary>
    public async Task<string?> IdForAsync(string name)
    {
        if (name.Equals("id", StringComparison.OrdinalIgnoreCase))
        {
            return _cup.Lot;
        }

        var entity = name.EndsWith("Id", StringComparison.OrdinalIgnoreCase)
            ? typeof(Id<>).Assembly.GetTypes().FirstOrDefault(type => type.Name.Equals(name[..^2], StringComparison.OrdinalIgnoreCase) && type is { IsClass: true, IsAbstract: false })
            : null;
        return entity is null || !await house.FromLedgerAsync(db => Task.FromResult(db.Model.FindEntityType(entity) is not null)) ? null : await IdsAsync(entity) is [var first, ..] ? first : null;
    }

    /// <summary>What papers are on.</summary>
    private Dictionary<string, string>[] About() => [.. new[] { ("sample", _cup.Sample), ("lot", _cup.Lot), ("offer", _cup.Offer) }
        .Select(one => new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase) { ["about"] = one.Item1, ["id"] = one.Item2 })];

    private static Dictionary<string, string> With(Dictionary<string, string> values, string name, string value) =>
        new(values, StringComparer.OrdinalIgnoreCase) { [name] = value };

    /// <summary>The records whose history has lines and that are of the coffee, and the table itself.</summary>
    private async Task<IReadOnlyList<Dictionary<string, string>>> RecordsAsync() => _records = _records.Count > 0 ? _records : await house.FromLedgerAsync(async db =>
    {
        var records = await db.Changes.AsNoTracking().Select(line => new { line.RecordKind, line.RecordId }).Distinct().ToListAsync();
        var lines = records.Where(one => _telling.Contains(one.RecordId)).Select(one => (one.RecordKind, one.RecordId));
        return (IReadOnlyList<Dictionary<string, string>>)[.. lines.Append((nameof(CuppingSession), $"{table.Id}")).Distinct()
            .Select(record => new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase) { ["kind"] = record.Item1, ["id"] = record.Item2 })];
    });

    private async Task<IReadOnlyList<string>?> OfAsync(AskedValue value)
    {
        var type = AskedValue.Single(value.Type);
        if (type.IsGenericType)
        {
            return await IdsAsync(type.GetGenericArguments()[0]);
        }

        if (type == typeof(Guid))
        {
            return [_cup.Sample, _cup.Lot, _cup.Offer, .. (await IdsAsync(typeof(Domain.Papers.Attachment))).TakeLast(1), .. (await IdsAsync(typeof(Domain.Papers.Note))).TakeLast(1)];
        }

        return type.IsEnum ? Enum.GetNames(type) : type == typeof(bool) ? ["true"] : type == typeof(string) ? Words(value.Name) : type == typeof(int) ? ["1"] : null;
    }

    private string[]? Words(string name) => name.ToLowerInvariant().Split('.')[^1] switch
    {
        "q" or "query" or "text" or "search" => [_cup.Code, _cup.Label, table.Word],
        "label" or "labelcode" => [_cup.Label, "NOSUCH"],
        "reference" or "lot" or "key" => [_cup.Reference, _cup.Lot],
        "blindcode" => [_cup.Code],
        "code" => [_cup.Code, "404"],
        "supplier" => [_cup.Names[0]],
        "country" => ["PE"],
        "about" => ["lot", "offer", "sample"],
        "kind" => ["sample", "lot", nameof(CuppingSession)],
        "documentname" => ["v1"],
        "currency" => ["USD"],
        "scheme" => ["sca-washed"],
        "table" => [.. Web.Summaries.ExtractTables.All.Select(table => table.Name)],
        "format" => ["csv", "xlsx"],
        "secret" => [SealedHouse.Calendar],
        _ => null,
    };

    private async Task<IReadOnlyList<string>> IdsAsync(Type entity)
    {
        if (!_ids.TryGetValue(entity, out var ids))
        {
            var read = typeof(AskedWords).GetMethod(nameof(ReadAsync), BindingFlags.Static | BindingFlags.NonPublic)!.MakeGenericMethod(entity);
            var all = await house.FromLedgerAsync(db => (Task<IReadOnlyList<string>>)read.Invoke(null, [db])!);
            ids = [.. all.Where(_telling.Contains), .. all.Where(id => !_telling.Contains(id)).OrderDescending(StringComparer.Ordinal).Take(MostOthers)];
            _ids[entity] = ids;
        }

        return ids;
    }

    private static async Task<IReadOnlyList<string>> ReadAsync<T>(LedgerContext db)
        where T : class => [.. (await db.Set<T>().AsNoTracking().Select(one => EF.Property<Id<T>>(one, "Id")).ToListAsync()).Select(id => $"{id}")];
}

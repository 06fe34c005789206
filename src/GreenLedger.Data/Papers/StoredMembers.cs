using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Papers;

/// <summary>
/// Reads the members of a history line back into values by the model of today. A member that the model no longer has
/// is shown as it was written.
/// </summary>
internal sealed class StoredMembers(IModel model)
{
    /// <summary>The members of both sides, the record's own first, then those of its parts.</summary>
    public IEnumerable<HistoryMember> Of(string kind, string? before, string? after)
    {
        var (one, other) = (Parse(before), Parse(after));
        var type = RecordKinds.Find(model, kind) as IEntityType;
        var own = Keys(one, other).Where(key => !key.Contains('|')).ToList();
        foreach (var member in Members(type, null, own, one, other))
        {
            yield return member;
        }

        foreach (var part in Keys(one, other).Where(key => key.Contains('|')))
        {
            var (was, became) = (one[part] as JsonObject ?? [], other[part] as JsonObject ?? []);
            var words = part.Split('|');
            var partType = RecordKinds.Find(model, char.ToUpperInvariant(words[0][0]) + words[0][1..]) as IEntityType;
            var name = string.Join(' ', new[] { RecordKinds.Words(words[0]), words[1] }.Where(word => word.Length > 0));
            foreach (var member in Members(partType, name, [.. Keys(was, became)], was, became))
            {
                yield return member;
            }
        }
    }

    private static JsonObject Parse(string? json) => json is null ? [] : JsonNode.Parse(json) as JsonObject ?? [];

    private static IEnumerable<string> Keys(JsonObject one, JsonObject other) =>
        one.Select(pair => pair.Key).Concat(other.Select(pair => pair.Key)).Distinct();

    private static IEnumerable<HistoryMember> Members(
        IEntityType? type, string? part, List<string> keys, JsonObject before, JsonObject after)
    {
        var left = new HashSet<string>(keys);
        foreach (var property in type?.GetProperties() ?? [])
        {
            if (left.Remove(Key(property)))
            {
                yield return new HistoryMember(part, RecordKinds.Words(Plain(property.Name)), Read(property, before), Read(property, after));
            }
        }

        foreach (var value in type?.GetComplexProperties() ?? [])
        {
            var columns = value.ComplexType.GetProperties().ToList();
            if (columns.Any(column => left.Contains(Key(column))))
            {
                left.ExceptWith(columns.Select(Key));
                yield return new HistoryMember(part, RecordKinds.Words(value.Name), Read(value, columns, before), Read(value, columns, after));
            }
        }

        foreach (var key in left)
        {
            yield return new HistoryMember(part, RecordKinds.Words(key), before[key]?.ToString(), after[key]?.ToString());
        }
    }

    private static string Key(IProperty property) => JsonNamingPolicy.CamelCase.ConvertName(property.GetColumnName());

    /// <summary>A member that points to another record is called by what it points to.</summary>
    private static string Plain(string name) =>
        name.Length > 2 && name.EndsWith("Id", StringComparison.Ordinal) ? name[..^2] : name;

    private static object? Read(IProperty property, JsonObject side)
    {
        var json = side[Key(property)];
        var type = Nullable.GetUnderlyingType(property.ClrType) ?? property.ClrType;
        return json switch
        {
            null => null,
            JsonArray list => string.Join(", ", list.Select(item => item?.ToString())),
            _ when type.IsEnum => Enum.TryParse(type, json.ToString(), ignoreCase: true, out var word) ? word : json.ToString(),
            _ => Value(property, type, json),
        };
    }

    private static object? Value(IProperty property, Type type, JsonNode json)
    {
        try
        {
            return property.GetTypeMapping().Converter is { } converter
                ? converter.ConvertFromProvider(json.Deserialize(converter.ProviderClrType))
                : json.Deserialize(type);
        }
        catch (Exception unreadable) when (unreadable is JsonException or FormatException or InvalidCastException)
        {
            return json.ToString(); // Written when the member was of another type: shown as it was.
        }
    }

    /// <summary>A value made of several columns is made again by its constructor, whose parameters have their names.</summary>
    private static object? Read(IComplexProperty value, List<IProperty> columns, JsonObject side)
    {
        if (columns.All(column => side[Key(column)] is null))
        {
            return null;
        }

        var type = Nullable.GetUnderlyingType(value.ClrType) ?? value.ClrType;
        var maker = type.GetConstructors().First(one => one.GetParameters().Length == columns.Count);
        return maker.Invoke([.. maker.GetParameters().Select(parameter => Argument(parameter, columns, side))]);
    }

    private static object? Argument(ParameterInfo parameter, List<IProperty> columns, JsonObject side) =>
        Read(columns.First(column => column.Name.Equals(parameter.Name, StringComparison.OrdinalIgnoreCase)), side);
}

using System.Collections;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Papers;

/// <summary>
/// Members of an entity as the history keeps them: under the names of their columns, which carry the unit
/// (<c>netWeightMicrograms</c>), with exactly the values that are stored.
/// </summary>
internal static class Members
{
    /// <summary>Every member that has a value.</summary>
    public static JsonObject All(EntityEntry entry, bool asBefore) =>
        Write(Values(entry), asBefore, leaveOutEmpty: true);

    /// <summary>The members that differ; a value made of several columns stands whole. Both null where nothing differs.</summary>
    public static (JsonObject? Before, JsonObject? After) Changed(EntityEntry entry)
    {
        var changed = Values(entry)
            .GroupBy(member => member.Value)
            .Where(group => group.Any(Differs))
            .SelectMany(group => group)
            .ToList();
        return changed.Count == 0 ? (null, null) : (Write(changed, asBefore: true), Write(changed, asBefore: false));
    }

    private static JsonObject Write(IEnumerable<Member> members, bool asBefore, bool leaveOutEmpty = false)
    {
        var json = new JsonObject();
        foreach (var member in members)
        {
            var value = asBefore
                ? member.WasNull ? null : Json(member.Property, member.Entry.OriginalValue)
                : member.IsNull ? null : Json(member.Property, member.Entry.CurrentValue);
            if (!leaveOutEmpty || value is not (null or JsonArray { Count: 0 }))
            {
                json[JsonNamingPolicy.CamelCase.ConvertName(member.Property.GetColumnName())] = value;
            }
        }

        return json;
    }

    private static IEnumerable<Member> Values(EntityEntry entry)
    {
        var tie = RecordKinds.WholeOf(entry.Metadata)?.Properties ?? [];
        foreach (var property in entry.Metadata.GetProperties())
        {
            if (!property.IsShadowProperty() && !property.IsPrimaryKey() && !tie.Contains(property) && !RecordKinds.IsSilent(property))
            {
                yield return new Member(property.Name, property, entry.Property(property));
            }
        }

        foreach (var value in entry.Metadata.GetComplexProperties().Where(value => !value.IsCollection))
        {
            var members = value.ComplexType.GetProperties().Select(property => (property, entry.ComplexProperty(value).Property(property))).ToList();
            var isNull = value.IsNullable && value.PropertyInfo?.GetValue(entry.Entity) is null;
            var wasNull = value.IsNullable && members.All(member => IsDefault(member.Item2.OriginalValue));
            foreach (var (property, member) in members)
            {
                yield return new Member(value.Name, property, member, wasNull, isNull);
            }
        }
    }

    /// <summary>The tracker reads a value that is not there as zeros; an optional value of nothing but zeros counts as not there.</summary>
    private static bool IsDefault(object? value) =>
        value is null || (value.GetType().IsValueType && value.Equals(Activator.CreateInstance(value.GetType())));

    private static bool Differs(Member member) =>
        member.Entry.IsModified && !member.Property.GetValueComparer().Equals(member.Entry.OriginalValue, member.Entry.CurrentValue);

    private static JsonNode? Json(IProperty property, object? value) => value switch
    {
        null => null,
        Enum word => string.Join(", ", word.ToString().Split(", ").Select(JsonNamingPolicy.CamelCase.ConvertName)),
        string text => text,
        IEnumerable list => new JsonArray([.. list.Cast<object?>().Select(item => JsonSerializer.SerializeToNode(item))]),
        _ => JsonSerializer.SerializeToNode(property.GetTypeMapping().Converter is { } converter ? converter.ConvertToProvider(value) : value),
    };

    /// <param name="Value">The member as the code has it, of which the property may be one column.</param>
    private sealed record Member(string Value, IProperty Property, PropertyEntry Entry, bool WasNull = false, bool IsNull = false);
}

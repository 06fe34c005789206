using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace GreenLedger.Web.Display;

/// <summary>One field on which the typed and the stored version of a record differ.</summary>
public sealed partial record Difference(string Field, string Yours, string Theirs)
{
    /// <summary>The fields that differ in the refused records, and the version that is stored now.</summary>
    internal static async Task<(IReadOnlyList<Difference> Differences, int? StoredVersion)> BetweenAsync(
        DbUpdateConcurrencyException faster, CancellationToken cancellationToken)
    {
        var differences = new List<Difference>();
        int? version = null;
        foreach (var entry in faster.Entries)
        {
            var stored = await entry.GetDatabaseValuesAsync(cancellationToken);
            if (stored is null)
            {
                differences.Add(new Difference("The record", "changed by you", "deleted meanwhile"));
                continue;
            }

            differences.AddRange(Compare(entry, stored));
            version ??= stored.TryGetValue<int>("Version", out var found) ? found : null;
        }

        return (differences, version);
    }

    /// <summary>A member's name as words: <c>ShowsPounds</c> is "Shows pounds".</summary>
    internal static string Words(string member) =>
        member.Length == 0 ? "" : member[0] + WordStart().Replace(member[1..], match => " " + match.Value.ToLowerInvariant());

    private static IEnumerable<Difference> Compare(EntityEntry entry, PropertyValues stored)
    {
        var yours = entry.CurrentValues.ToObject();
        var theirs = stored.ToObject();
        var members = entry.Metadata.GetProperties().Select(property => property.PropertyInfo)
            .Concat(entry.Metadata.GetComplexProperties().Select(property => property.PropertyInfo))
            .OfType<PropertyInfo>()
            .Where(member => member.Name is not ("Version" or "Id"));
        foreach (var member in members)
        {
            var (mine, stands) = (Text(member.GetValue(yours)), Text(member.GetValue(theirs)));
            if (mine != stands)
            {
                yield return new Difference(Words(member.Name), mine, stands);
            }
        }
    }

    private static string Text(object? value) => value switch
    {
        null => "—",
        true => "yes",
        false => "no",
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    [GeneratedRegex("[A-Z]")]
    private static partial Regex WordStart();
}

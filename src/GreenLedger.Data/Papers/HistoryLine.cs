using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace GreenLedger.Data.Papers;

/// <summary>
/// What one save did to one record. The members of a part stand in an object of their own, under
/// <c>kind|name|identity</c>.
/// </summary>
internal sealed class HistoryLine(string kind, string id, EntityEntry? whole)
{
    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    private readonly JsonObject _before = [];
    private readonly JsonObject _after = [];

    public bool SaysSomething => Act != ChangeAct.Changed || _before.Count > 0 || _after.Count > 0;

    private ChangeAct Act => whole?.State switch
    {
        EntityState.Added => ChangeAct.Added,
        EntityState.Deleted => ChangeAct.Removed,
        _ => ChangeAct.Changed,
    };

    public void Take(EntityEntry entry)
    {
        var (before, after) = entry.State switch
        {
            EntityState.Added => (null, Members.All(entry, asBefore: false)),
            EntityState.Deleted => (Members.All(entry, asBefore: true), null),
            _ => Members.Changed(entry),
        };
        Put(_before, entry, before);
        Put(_after, entry, after);
    }

    public Change Close(Id<Person>? by, DateTimeOffset at) => new(
        kind, id, whole is null ? "" : NameOf(whole), Act, by, at,
        Act == ChangeAct.Added ? null : _before.ToJsonString(Readable),
        Act == ChangeAct.Removed ? null : _after.ToJsonString(Readable));

    private static string NameOf(EntityEntry entry) =>
        RecordKinds.NameOf(entry.Metadata) is { } name ? Convert.ToString(entry.Property(name.Name).CurrentValue, CultureInfo.InvariantCulture) ?? "" : "";

    private void Put(JsonObject side, EntityEntry entry, JsonObject? members)
    {
        if (members is null)
        {
            return;
        }

        if (entry.Entity == whole?.Entity)
        {
            foreach (var (name, value) in members.ToList())
            {
                members.Remove(name);
                side[name] = value;
            }
        }
        else
        {
            side[$"{JsonNamingPolicy.CamelCase.ConvertName(entry.Metadata.ClrType.Name)}|{NameOf(entry)}|{Wholes.IdOf(entry)}"] = members;
        }
    }
}

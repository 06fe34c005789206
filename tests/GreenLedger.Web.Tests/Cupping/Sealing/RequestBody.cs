using System.Net.Http.Json;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>A body that a route of the API takes, filled with what belongs to a sealed table.</summary>
internal sealed class RequestBody(SealedTable table, AskedWords words)
{
    private readonly SealedCup _cup = table.Cups[0];

    /// <summary>A list that names the sealed coffees where a route reads a file; nothing where it takes nothing.</summary>
    public async Task<HttpContent?> OfAsync(Type? body) => body is null ? null
        : body == typeof(IFormFile) || typeof(IFormFileCollection).IsAssignableFrom(body) || body == typeof(IFormCollection) ? Form()
        : JsonContent.Create(await ValueAsync(body, "", 0));

    private MultipartFormDataContent Form()
    {
        var lines = table.Cups.SelectMany(cup => new[] { $"{cup.Label};84", $"{cup.Reference};84", $"{cup.Names[2]};84" });
        var file = new ByteArrayContent(Encoding.UTF8.GetBytes("Sample;Total\n" + string.Join('\n', lines)));
        return new MultipartFormDataContent { { file, "file", "list.csv" }, { new StringContent(_cup.Names[0]), "supplier" } };
    }

    private async Task<object?> ValueAsync(Type type, string name, int depth)
    {
        var one = AskedValue.Single(type);
        if (type.IsGenericType && type.GetGenericArguments().Length == 2)
        {
            return new Dictionary<string, object>();
        }

        if (one != type && typeof(System.Collections.IEnumerable).IsAssignableFrom(type))
        {
            return one == typeof(string) ? Words(name) : new[] { await ValueAsync(one, name, depth + 1) };
        }

        return one == typeof(string) ? Word(name)
            : one == typeof(bool) ? false
            : one == typeof(Guid) ? await words.IdForAsync(name) ?? $"{Guid.NewGuid()}"
            : one == typeof(DateOnly) ? "2026-11-26"
            : one.IsEnum ? 0
            : AskedValue.CanBeTold(one) ? one.IsPrimitive || one == typeof(decimal) ? 1 : table.Id.ToString()
            : depth > 4 || one.Namespace?.StartsWith("GreenLedger", StringComparison.Ordinal) != true ? null
            : await MembersAsync(one, depth);
    }

    private async Task<Dictionary<string, object?>> MembersAsync(Type type, int depth)
    {
        var members = new Dictionary<string, object?>();
        foreach (var part in type.GetConstructors().MaxBy(way => way.GetParameters().Length)!.GetParameters())
        {
            members[part.Name!] = await ValueAsync(part.ParameterType, part.Name!, depth + 1);
        }

        return members;
    }

    private string Word(string name) => name.ToLowerInvariant() switch
    {
        "label" or "labelcode" or "sample" => _cup.Label,
        "lot" or "offer" or "reference" => _cup.Reference,
        "code" => _cup.Code,
        "supplier" => _cup.Names[0],
        "currency" => "EUR",
        "form" => "100-point",
        "outcome" => "buy",
        "rules" => "House",
        "name" => "Weight certificate",
        _ => "something",
    };

    private IEnumerable<string> Words(string name) => table.Cups.Select(cup => name.ToLowerInvariant() switch
    {
        "samples" or "labels" => cup.Label,
        "codes" => cup.Code,
        _ => cup.Reference,
    }).Distinct();
}

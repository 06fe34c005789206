using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>The lists in tests/inputs as suppliers send them, and what expected.json beside them says must come out.</summary>
internal static class ReceivedLists
{
    private static readonly Lazy<JsonDocument> All = new(() => JsonDocument.Parse(File.ReadAllBytes(PathOf("expected.json"))));

    public static TheoryData<string> Names() => [.. All.Value.RootElement.EnumerateObject().Select(list => list.Name)];

    public static JsonElement Expected(string name) => All.Value.RootElement.GetProperty(name);

    public static string PathOf(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var inputs = Path.Combine(folder.FullName, "inputs");
            if (File.Exists(Path.Combine(inputs, "expected.json")))
            {
                return Path.Combine(inputs, name);
            }
        }

        throw new InvalidOperationException("The folder tests/inputs is missing.");
    }

    /// <summary>Runs the check where the file states this; a list states only what it is about.</summary>
    public static void Where(this JsonElement expected, string name, Action<JsonElement> check)
    {
        if (expected.TryGetProperty(name, out var value))
        {
            check(value);
        }
    }

    public static int SetAside(JsonElement expected) => expected.TryGetProperty("set_aside", out var rows) ? rows.EnumerateObject().Count() : 0;

    /// <summary>Loads and stores a list as a script does.</summary>
    public static async Task<JsonElement> LoadAsync(HttpClient script, string name)
    {
        using var content = new MultipartFormDataContent
        {
            { new ByteArrayContent(await File.ReadAllBytesAsync(PathOf(name))), "file", name },
            { new StringContent("true"), "commit" },
        };
        var answer = await script.PostAsync(new Uri("/api/offers/import", UriKind.Relative), content);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, await answer.Content.ReadAsStringAsync());
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }
}

using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace GreenLedger.Benchmarks.Cupping;

/// <summary>A change that the server said it has.</summary>
internal sealed record Acknowledged(string Code, Guid Key, int Version, string Field, string Value);

/// <summary>One cupper's phone: a change a second, sent again under the same key until it is taken, to one node after the other.</summary>
internal sealed class Phone(IReadOnlyList<HttpClient> nodes, FullTable table, int number)
{
    private const int ChangesOnOneSheet = 20;

    private static readonly string[] Fields = ["fragrance-aroma", "flavor", "aftertaste", "acidity", "body", "balance", "overall"];

    private readonly Dictionary<string, int> _versions = [];

    public List<Acknowledged> Taken { get; } = [];

    /// <summary>From the press to the answer that the change is stored, tries included.</summary>
    public List<double> Milliseconds { get; } = [];

    /// <summary>Times that a change was sent once more.</summary>
    public int Again { get; private set; }

    /// <summary>Answers that no phone alone on its sheet should get.</summary>
    public int Refused { get; private set; }

    public async Task CupAsync(TimeSpan duration)
    {
        // Phones do not press in step with one another.
        await Task.Delay(number * 1000 / table.Cuppers.Count);
        var watch = Stopwatch.StartNew();
        for (var press = 0; press < duration.TotalSeconds; press++)
        {
            var early = TimeSpan.FromSeconds(press) - watch.Elapsed;
            if (early > TimeSpan.Zero)
            {
                await Task.Delay(early);
            }

            await PressAsync(press);
        }
    }

    private async Task PressAsync(int press)
    {
        var code = table.Codes[press / ChangesOnOneSheet % table.Codes.Count];
        var field = "mark." + Fields[press % Fields.Length];
        var value = (6m + (press % 17 * 0.25m)).ToString(CultureInfo.InvariantCulture);
        var key = Guid.NewGuid();
        var watch = Stopwatch.StartNew();
        for (var tries = 0; ; tries++)
        {
            var (status, version) = await SendAsync(nodes[(press + number + tries) % nodes.Count], code, key, field, value);
            if (status == HttpStatusCode.OK)
            {
                _versions[code] = version;
                Taken.Add(new Acknowledged(code, key, version, field, value));
                Milliseconds.Add(watch.Elapsed.TotalMilliseconds);
                return;
            }

            if (status is HttpStatusCode.Conflict or HttpStatusCode.UnprocessableEntity or HttpStatusCode.NotFound or HttpStatusCode.Unauthorized)
            {
                Refused++;
                return;
            }

            Again++;
            await Task.Delay(200);
        }
    }

    private async Task<(HttpStatusCode? Status, int Version)> SendAsync(HttpClient node, string code, Guid key, string field, string value)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/cupping/sessions/{table.Session}/sheets/{code}/changes")
        {
            Content = JsonContent.Create(new { key, version = _versions.GetValueOrDefault(code), values = new Dictionary<string, string> { [field] = value } }),
        };
        request.Headers.Authorization = new("Bearer", table.Cuppers[number].Token);
        try
        {
            using var answer = await node.SendAsync(request);
            return (answer.StatusCode, answer.IsSuccessStatusCode ? (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("version").GetInt32() : 0);
        }
        catch (Exception failure) when (failure is HttpRequestException or TaskCanceledException)
        {
            return (null, 0);
        }
    }
}

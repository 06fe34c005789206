using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>Buying rules, written by scripts by the rules of the page.</summary>
public sealed class RulesApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Rules_are_written_read_written_anew_and_put_away()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        object Rules(string name, decimal high, int version = 0) => new { name, version, lowCost = 4m, highCost = high, leastScore = 84.5m, highestMoisture = 12m, certificates = new[] { "organic" }, earliestCropYear = "2025/26" };

        var added = await script.PostAsJsonAsync("/api/choosing/rules", Rules("By script", 12m), Stop);
        var address = added.Headers.Location!.OriginalString;
        var taken = await script.PostAsJsonAsync("/api/choosing/rules", Rules("By script", 12m), Stop);
        var wrong = await script.PostAsJsonAsync("/api/choosing/rules", Rules("Upside down", 3m), Stop);
        var read = JsonNode.Parse(await script.GetStringAsync(address, Stop))!;
        var body = read["rules"]!.AsObject();
        body["leastScore"] = 85m;
        var changed = await script.PutAsJsonAsync(address, body, Stop);
        var late = await script.PutAsJsonAsync(address, body, Stop);
        await script.PostAsync(new Uri(address + "/put-away", UriKind.Relative), null, Stop);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (added.StatusCode, taken.StatusCode, wrong.StatusCode));
        Assert.Equal((60m, 90m, 12m, "organic", "2025/26"), ((decimal)body["weightScore"]!, (decimal)body["highScore"]!, (decimal)body["highestMoisture"]!, (string)body["certificates"]![0]!, (string)body["earliestCropYear"]!));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict), (changed.StatusCode, late.StatusCode));
        var after = await script.GetFromJsonAsync<JsonElement>(address, Stop);
        Assert.Equal((2, 85m, false), (after.GetProperty("revision").GetInt32(), after.GetProperty("rules").GetProperty("leastScore").GetDecimal(), after.GetProperty("isInUse").GetBoolean()));
        Assert.DoesNotContain("By script", await script.GetStringAsync("/api/choosing/rules", Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_only_reads_writes_no_rules()
    {
        using var viewer = await house.ScriptAsync(Role.Viewer);

        var refused = await viewer.PostAsJsonAsync("/api/choosing/rules", new { name = "Mine", lowCost = 4m, highCost = 12m }, Stop);

        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
    }
}

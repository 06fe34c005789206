using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class ResultApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_result_answers_profiles_duplicates_agreement_and_pairs()
    {
        var table = await ClosedTable.CloseAsync(house);

        var result = await ReadAsync(Role.Cupper, $"/api/cupping/sessions/{table.SessionId}/result");

        // 7 × 8.00 + 30 and 7 × 8.25 + 30; both cuppers repeat 1.75 apart, s = 1.75 ÷ √2 = 1.2374.
        var repeated = result.GetProperty("hiddenDuplicates").EnumerateArray().ToList();
        Assert.Contains(repeated, one => one.GetProperty("scores").EnumerateArray().Select(score => score.GetDecimal()).SequenceEqual([86.00m, 87.75m]));
        Assert.Equal(1.2374, result.GetProperty("repeatability").GetProperty("deviation").GetDouble(), 4);
        Assert.Equal("401", Assert.Single(result.GetProperty("references").EnumerateArray()).GetString());
        Assert.Equal(3.50, Assert.Single(result.GetProperty("pairwise").GetProperty("pairs").EnumerateArray()).GetProperty("difference").GetDouble(), 9);
        Assert.Equal(2, result.GetProperty("profiles")[0].GetProperty("words")[0].GetProperty("cuppers").GetInt32());
        Assert.Equal(JsonValueKind.Null, result.GetProperty("weighing").ValueKind);
    }

    [Fact]
    public async Task An_open_session_has_no_result()
    {
        var table = await Table.LayOutAsync(house);
        var script = await house.ScriptAsync(Role.LeadCupper);

        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync(new Uri($"/api/cupping/sessions/{table.SessionId}/result", UriKind.Relative), Stop)).StatusCode);
    }

    [Fact]
    public async Task A_record_is_answered_to_its_cupper_and_to_the_lead_cupper_only()
    {
        var table = await ClosedTable.CloseAsync(house);
        var address = $"/api/cupping/cuppers/{table.Cupper}/record";

        var mine = await ReadAsync(Role.Cupper, "/api/cupping/my-record");
        var led = await ReadAsync(Role.LeadCupper, address);

        Assert.Equal(mine.ToString(), led.ToString());
        Assert.Contains(mine.GetProperty("sessions").EnumerateArray(), session => session.GetProperty("sessionId").GetGuid() == table.SessionId.Value);
        foreach (var role in new[] { Role.Viewer, Role.Cupper, Role.Buyer, Role.Administrator })
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(role)).GetAsync(new Uri(address, UriKind.Relative), Stop)).StatusCode);
        }
    }

    [Fact]
    public async Task Closing_with_a_stated_repeatability_answers_the_rule_and_each_weight()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        await leader.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", Table.Marks("8.00"));

        var closed = await leader.SendFormAsync($"/Cupping/Close/{table.SessionId}", new Dictionary<string, string> { ["StatedRepeatability"] = "0.75" });

        Assert.Equal(HttpStatusCode.Redirect, closed.StatusCode);
        var weighing = (await ReadAsync(Role.Cupper, $"/api/cupping/sessions/{table.SessionId}/result")).GetProperty("weighing");
        Assert.Contains("worse than 0.75 points", weighing.GetProperty("rule").GetString(), StringComparison.Ordinal);
        var weight = Assert.Single(weighing.GetProperty("cuppers").EnumerateArray());
        Assert.Equal(1, weight.GetProperty("weight").GetDouble());
        Assert.Contains("10 are needed to judge", weight.GetProperty("reason").GetString(), StringComparison.Ordinal);
        Assert.Contains("(0.75 ÷ own)²", (await leader.ReadAsync($"/Cupping/Result/{table.SessionId}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    private async Task<JsonElement> ReadAsync(Role role, string address)
    {
        var answer = await (await house.ScriptAsync(role)).GetAsync(new Uri(address, UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}

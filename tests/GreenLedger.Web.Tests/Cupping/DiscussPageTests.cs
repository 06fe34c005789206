using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class DiscussPageTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_discussed_score_is_shown_beside_the_panels_with_who_and_why()
    {
        var table = await ClosedTable.CloseAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);

        var answer = await leader.SendFormAsync($"/Cupping/Discuss/{table.SessionId}/{table.Other}", Typed("83.75", "One cup was cold"));

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await leader.ReadAsync($"/Cupping/Result/{table.SessionId}");
        var row = page.QuerySelector("[aria-label='Discussed scores'] tbody tr")!.TextContent;
        // The panel's own is 7 × 7.50 + 30 from both cuppers.
        Assert.Contains("83.75", row, StringComparison.Ordinal);
        Assert.Contains("82.50", row, StringComparison.Ordinal);
        Assert.Contains("One cup was cold", row, StringComparison.Ordinal);
        Assert.Contains("the shortlist ranks by the fitted score", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_reason_nothing_is_written_and_what_was_typed_stays()
    {
        var table = await ClosedTable.CloseAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);

        var page = await TestBrowser.PageAsync(await leader.SendFormAsync($"/Cupping/Discuss/{table.SessionId}/{table.Other}", Typed("83.75", "")));

        Assert.Contains("Why the talk came to this score is missing", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("83.75", page.QuerySelector("#Input_Score")!.GetAttribute("value"));
        Assert.Null((await leader.ReadAsync($"/Cupping/Result/{table.SessionId}")).QuerySelector("[aria-label='Discussed scores']"));
    }

    [Fact]
    public async Task The_API_writes_it_down_too_and_answers_the_whole_result()
    {
        var table = await ClosedTable.CloseAsync(house);
        var script = await house.ScriptAsync(Role.LeadCupper);

        var answer = await script.PostAsJsonAsync(new Uri($"/api/cupping/sessions/{table.SessionId}/discussed", UriKind.Relative), new { code = "403", score = 83.75m, reason = "One cup was cold" }, Stop);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var result = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var discussed = Assert.Single(result.GetProperty("discussed").EnumerateArray());
        Assert.Equal(("403", 83.75m), (discussed.GetProperty("code").GetString(), discussed.GetProperty("score").GetDecimal()));
        var sample = result.GetProperty("samples").EnumerateArray().Single(sample => sample.GetProperty("code").GetString() == "403");
        Assert.Equal(82.50m, sample.GetProperty("fitted").GetDecimal());
    }

    private static Dictionary<string, string> Typed(string score, string reason) => new() { ["Input.Score"] = score, ["Input.Reason"] = reason };
}

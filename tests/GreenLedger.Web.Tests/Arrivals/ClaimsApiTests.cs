using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Arrivals;

public sealed class ClaimsApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_claim_is_opened_noted_settled_and_read_back()
    {
        var lot = await ArrivedLot.FillAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);

        var opened = await SendAsync(script, $"{lot.Arrival}/claims", new { on = "2026-11-20", grounds = new[] { "weight", "cup" }, sharePercent = 3 }, HttpStatusCode.Created);
        var id = opened.GetProperty("id").GetString()!;
        await SendAsync(script, $"claims/{id}/notes", new { side = "toSeller", on = "2026-11-20", text = "Letter sent." }, HttpStatusCode.OK);
        await SendAsync(script, $"claims/{id}/settle", new { outcome = "allowance", on = "2026-11-25", amount = new { amount = 2000, currency = "USD" } }, HttpStatusCode.OK);

        var read = await script.GetFromJsonAsync<JsonElement>(new Uri($"/api/arrivals/claims/{id}", UriKind.Relative), Stop);
        // Handbook, trade 8, example G: 639.09; 3 % of 133,243.06 are 3,997.29, worked by hand.
        Assert.Equal([3997.29m, 639.09m], read.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("amount").GetProperty("amount").GetDecimal()).OrderDescending());
        Assert.Equal(4636.38m, read.GetProperty("amount").GetProperty("amount").GetDecimal());
        Assert.Equal(-1.75, read.GetProperty("evidence").GetProperty("cup").GetProperty("difference").GetDouble(), 9); // 7 × 0.25
        Assert.Equal("Letter sent.", read.GetProperty("notes")[0].GetProperty("text").GetString());
        Assert.Equal("allowance", read.GetProperty("outcome").GetString());
        // Worked by hand: (134,554.93 − 2,000) ÷ 18,790 = 7.054547.
        Assert.Equal(7.0545m, Math.Round(read.GetProperty("costEffect").GetProperty("afterPerKg").GetDecimal(), 4));
        var listed = await script.GetFromJsonAsync<JsonElement>(new Uri($"/api/arrivals/claims?arrivalId={lot.Arrival}&open=false", UriKind.Relative), Stop);
        Assert.Equal(id, Assert.Single(listed.EnumerateArray()).GetProperty("id").GetString());
        using var letter = PdfDocument.Open(await script.GetByteArrayAsync(new Uri($"/api/arrivals/claims/{id}/letter", UriKind.Relative), Stop));
        Assert.Contains(read.GetProperty("ref").GetString()!, letter.GetPage(1).Text, StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, (await SendAsync(script, $"claims/{id}/reopen", new { reason = "Entered too early." }, HttpStatusCode.OK)).GetProperty("outcome").ValueKind);
    }

    [Fact]
    public async Task What_may_not_be_done_is_refused_with_the_pages_sentence_and_changes_nothing()
    {
        var lot = await ArrivedLot.FillAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);

        var unshown = await SendAsync(script, $"{lot.Arrival}/claims", new { on = "2026-11-20", grounds = new[] { "physicalLimits" } }, HttpStatusCode.UnprocessableEntity);
        var late = await SendAsync(script, $"{lot.Arrival}/claims", new { on = "2026-11-25", grounds = new[] { "cup" } }, HttpStatusCode.UnprocessableEntity);
        var nobody = await SendAsync(script, $"{Guid.NewGuid()}/claims", new { on = "2026-11-25", grounds = new[] { "cup" } }, HttpStatusCode.NotFound);

        Assert.Contains("Nothing shows physical limits as a ground.", unshown.ToString(), StringComparison.Ordinal);
        Assert.Contains("A deadline is past", late.ToString(), StringComparison.Ordinal);
        Assert.Equal(404, nobody.GetProperty("status").GetInt32());
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Claims.CountAsync(claim => claim.ArrivalId == lot.Arrival, Stop)));

        var id = (await SendAsync(script, $"{lot.Arrival}/claims", new { on = "2026-11-25", grounds = new[] { "weight" } }, HttpStatusCode.Created)).GetProperty("id").GetString();
        var again = await SendAsync(script, $"{lot.Arrival}/claims", new { on = "2026-11-25", grounds = new[] { "weight" } }, HttpStatusCode.UnprocessableEntity);
        var wordless = await SendAsync(script, $"claims/{id}/settle", new { outcome = "withdrawn", on = "2026-11-25" }, HttpStatusCode.UnprocessableEntity);
        Assert.Contains("names weight already", again.ToString(), StringComparison.Ordinal);
        Assert.Contains("What was agreed or decided is missing", wordless.ToString(), StringComparison.Ordinal);
    }

    private static async Task<JsonElement> SendAsync(HttpClient script, string path, object body, HttpStatusCode expected)
    {
        var answer = await script.PostAsJsonAsync(new Uri($"/api/arrivals/{path}", UriKind.Relative), body, Stop);
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(answer.StatusCode == expected, $"{(int)answer.StatusCode} {text}");
        return JsonDocument.Parse(text).RootElement;
    }
}

using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Samples;

/// <summary>A day that nobody states is the house's, while UTC has another.</summary>
public sealed class HouseDaysTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Kiribati's Line Islands are 14 hours ahead of UTC and American Samoa is 11 behind (IANA time zone database): in one of them it is another day.</summary>
    [Fact]
    public async Task What_is_received_asked_for_and_graded_today_is_so_by_the_houses_day()
    {
        await house.OpenHouseAsync();
        var isAhead = DateTimeOffset.UtcNow.Hour >= 11;
        await house.InLedgerAsync(async db =>
        {
            (await db.Houses.SingleAsync(Stop)).ReadClocksIn(isAhead ? "Pacific/Kiritimati" : "Pacific/Pago_Pago");
            db.Add(new Lot("FAR-1", "Atoll Blend"));
            await db.SaveChangesAsync(Stop);
        });
        var today = DateOnly.FromDateTime(DateTimeOffset.UtcNow.AddHours(isAhead ? 14 : -11).DateTime);
        Assert.NotEqual(DateOnly.FromDateTime(DateTimeOffset.UtcNow.DateTime), today);
        var buyer = await house.ScriptAsync(Role.Buyer);

        var sample = await PostAsync(buyer, "/api/samples", new { lot = "FAR-1", weightGrams = 350 });
        var label = sample.GetProperty("labelCode").GetString();
        var asked = await PostAsync(buyer, "/api/samples/requests", new { lots = new[] { "FAR-1" }, supplier = (string?)null });
        await PostAsync(buyer, $"/api/samples/{asked[0].GetProperty("labelCode").GetString()}/send", new { courier = "Air courier" });
        var grade = await PostAsync(buyer, "/api/grading/grades", new { labelCode = label, moisturePercent = 11.0 });

        Assert.Equal($"{today:yyyy-MM-dd}", sample.GetProperty("receivedOn").GetString());
        Assert.Equal($"{today:yyyy-MM-dd}", grade.GetProperty("gradedOn").GetString());
        var expected = await house.FromLedgerAsync(db => db.Samples.SingleAsync(one => one.AskedOn != null, Stop));
        Assert.Equal((today, today), (expected.AskedOn!.Value, expected.SentOn!.Value));
        var way = await buyer.GetFromJsonAsync<JsonElement>($"/api/samples/{label}/way", Stop);
        Assert.Equal(0, way.GetProperty("way").EnumerateArray().Single(stop => stop.GetProperty("step").GetString() == "graded").GetProperty("waitingDays").GetInt32());
    }

    private static async Task<JsonElement> PostAsync(HttpClient script, string address, object body)
    {
        var answer = await script.PostAsJsonAsync(address, body, Stop);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}

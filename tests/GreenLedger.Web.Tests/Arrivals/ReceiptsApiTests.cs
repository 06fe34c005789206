using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Arrivals;

public sealed class ReceiptsApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_lot_is_received_once_and_more_than_was_shipped_needs_a_reason()
    {
        var lot = await ArrivedLot.FillAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);
        var more = new { shipmentLotId = lot.AfloatLot.Value, receipt = new { receivedOn = "2026-11-02", bags = 276, landedKg = 18900 } };

        var refused = await SendAsync(script, "", more, HttpStatusCode.UnprocessableEntity);
        var before = await house.FromLedgerAsync(db => db.Arrivals.CountAsync(arrival => arrival.ShipmentLotId == lot.AfloatLot, Stop));
        var taken = await SendAsync(script, "", new { more.shipmentLotId, receipt = new { more.receipt.receivedOn, more.receipt.bags, more.receipt.landedKg, odour = "diesel", odourBags = 3, temperatureCelsius = 21.5, note = "One bag of the first part." } }, HttpStatusCode.Created);
        var again = await SendAsync(script, "", more, HttpStatusCode.UnprocessableEntity);

        Assert.Contains("say why in the note", refused.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, before);
        Assert.Equal("3 with odour: diesel", taken.GetProperty("receipt").GetProperty("faults")[0].GetString());
        Assert.Equal(21.5m, taken.GetProperty("receipt").GetProperty("temperatureCelsius").GetDecimal());
        // Handbook, trade, check value 66: 75 kg of 18,975 are within the franchise.
        Assert.False(taken.GetProperty("weight").GetProperty("isShort").GetBoolean());
        Assert.Contains("received already", again.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stored_arrival_tells_both_verdicts_and_a_correction_needs_a_reason()
    {
        var lot = await ArrivedLot.FillAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);
        var right = new { receivedOn = "2026-10-29", bags = 274, landedKg = 18900, wetBags = 2, sealIntact = true };

        var read = await script.GetFromJsonAsync<JsonElement>(new Uri($"/api/arrivals/{lot.Arrival}", UriKind.Relative), Stop);
        var refused = await SendAsync(script, $"/{lot.Arrival}/corrections", new { receipt = right, reason = "" }, HttpStatusCode.UnprocessableEntity);
        var corrected = await SendAsync(script, $"/{lot.Arrival}/corrections", new { receipt = right, reason = "The scales were read wrong." }, HttpStatusCode.OK);
        var listed = await script.GetFromJsonAsync<JsonElement>(new Uri("/api/arrivals?search=cerro", UriKind.Relative), Stop);

        // Handbook, trade 8, example G; the cup 7 × 0.25 points below; 28 days from 26 October (trade, check value 36's rule).
        Assert.Equal((90.125m, 639.09m), (read.GetProperty("weight").GetProperty("refundedKg").GetDecimal(), read.GetProperty("weight").GetProperty("worth").GetProperty("amount").GetDecimal()));
        Assert.Equal(-1.75, read.GetProperty("cup").GetProperty("difference").GetDouble(), 9);
        Assert.Equal("2026-11-23", read.GetProperty("deadlines")[1].GetProperty("lastDay").GetString());
        Assert.Equal(["cup", "weight", "condition"], read.GetProperty("groundsShown").EnumerateArray().Select(ground => ground.GetString()));
        Assert.Contains("reason for the correction is missing", refused.ToString(), StringComparison.Ordinal);
        Assert.Equal(18_790m, corrected.GetProperty("earlier")[0].GetProperty("was").GetProperty("landedKg").GetDecimal());
        Assert.False(corrected.GetProperty("weight").GetProperty("isShort").GetBoolean());
        Assert.Contains(listed.EnumerateArray(), row => row.GetProperty("id").GetGuid() == lot.Arrival.Value);
    }

    private static async Task<JsonElement> SendAsync(HttpClient script, string path, object body, HttpStatusCode expected)
    {
        var answer = await script.PostAsJsonAsync(new Uri("/api/arrivals" + path, UriKind.Relative), body, Stop);
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(answer.StatusCode == expected, $"{(int)answer.StatusCode} {text}");
        return JsonDocument.Parse(text).RootElement;
    }
}

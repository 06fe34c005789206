using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Arrivals;

public sealed class ArrivalCalculatorsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly string[] Discharge = ["discharge"], DischargeAndClearance = ["discharge", "clearance"];

    // Handbook quality.md section 4.8: six cuppers on the pre-shipment sample and on the arrival.
    private static readonly decimal[] Approved = [85.25m, 84.75m, 85.50m, 84.50m, 85.00m, 85.25m];
    private static readonly decimal[] Arrival = [84.75m, 84.25m, 85.00m, 84.25m, 84.50m, 85.25m];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_handbooks_pair_in_one_session_matches()
    {
        var reply = await PostAsync("verdict", new { approved = Panel(Approved), arrival = Panel(Arrival), tolerance = 1.00, inOneSession = true });

        // Handbook quality.md section 4.8, paired: −0.375, 90 % interval −0.547068 to −0.202932.
        var cup = reply.GetProperty("cup");
        Assert.Equal("matches", reply.GetProperty("outcome").GetString());
        Assert.Equal("oneSession", cup.GetProperty("meeting").GetString());
        Assert.Equal(-0.375, cup.GetProperty("difference").GetDouble(), 9);
        Assert.Equal(-0.547068, cup.GetProperty("lower").GetDouble(), 6);
        Assert.Equal(-0.202932, cup.GetProperty("upper").GetDouble(), 6);
        Assert.Equal("The arrival matches: it cupped 0.38 points below the approved sample.", cup.GetProperty("sentences")[0].GetString());
    }

    [Fact]
    public async Task The_same_sheets_in_two_sessions_are_held_together_by_what_is_stated()
    {
        var sessions = new { approved = Panel(Approved), arrival = Panel(Arrival, "other"), tolerance = 1.00, betweenSessions = (double?)0 };

        var level = (await PostAsync("verdict", sessions)).GetProperty("cup");
        var unknown = (await PostAsync("verdict", sessions with { betweenSessions = null })).GetProperty("cup");

        // Handbook quality.md section 4.8, Welch: p 0.0097272 at D = 1.00.
        Assert.Equal(0.0097272, level.GetProperty("matchesP").GetDouble(), 7);
        Assert.Equal(9.894118, level.GetProperty("degreesOfFreedom").GetDouble(), 6);
        Assert.Equal("undecided", unknown.GetProperty("outcome").GetString());
        Assert.Equal(JsonValueKind.Null, unknown.GetProperty("lower").ValueKind);
    }

    [Fact]
    public async Task The_reference_in_both_sessions_takes_off_their_shift()
    {
        var reply = await PostAsync("verdict", new
        {
            approved = Panel([85m, 86m, 85.5m]),
            referenceWithApproved = Panel([83m, 83.75m, 83.5m]),
            arrival = Panel([83.5m, 84.25m, 84.25m]),
            referenceWithArrival = Panel([81.5m, 82.5m, 82.25m]),
            tolerance = 1,
        });

        // Worked by hand: −1.5 less the reference's −1 1/3.
        Assert.Equal("heldByReference", reply.GetProperty("cup").GetProperty("meeting").GetString());
        Assert.Equal(-1.0 / 6, reply.GetProperty("cup").GetProperty("difference").GetDouble(), 9);
        Assert.Equal(-4.0 / 3, reply.GetProperty("cup").GetProperty("shift").GetDouble(), 9);
    }

    [Fact]
    public async Task Other_coffees_of_the_session_help_to_know_its_error()
    {
        var pair = new { approved = Panel([86m, 85m, 85.5m]), arrival = Panel([85.5m, 85m, 84.75m]), tolerance = 1, inOneSession = true, others = (object[]?)null };
        object[] others = [.. Panel([83m, 82.25m, 82.5m]).Concat(Panel([88m, 87m, 87.5m])).Select((sheet, at) => new { sample = at < 3 ? "X" : "Y", cupper = sheet.Cupper, score = sheet.Score })];

        var alone = (await PostAsync("verdict", pair)).GetProperty("cup");
        var among = (await PostAsync("verdict", pair with { others = others })).GetProperty("cup");

        // (coffees − 1) × (cuppers − 1): 1 × 2 and 3 × 2.
        Assert.Equal((2, 6), (alone.GetProperty("degreesOfFreedom").GetDouble(), among.GetProperty("degreesOfFreedom").GetDouble()));
    }

    [Fact]
    public async Task An_undecided_verdict_says_what_would_likely_decide()
    {
        var reply = await PostAsync("verdict", new { approved = Panel([86m, 85m, 85.5m, 86.25m]), arrival = Panel([85.25m, 84.75m, 84.25m, 86.25m]), tolerance = 1, inOneSession = true });

        // As in QualityVerdictTests, by R 4.2.
        Assert.Equal("undecided", reply.GetProperty("outcome").GetString());
        Assert.Equal((12, 24), (reply.GetProperty("cup").GetProperty("cuppersNeeded").GetInt32(), reply.GetProperty("cup").GetProperty("sheetsNeeded").GetInt32()));
    }

    [Fact]
    public async Task Each_measured_value_is_held_against_its_own_limit()
    {
        var reply = await PostAsync("verdict", new
        {
            approved = Panel(Approved),
            arrival = Panel(Arrival),
            tolerance = 1,
            inOneSession = true,
            approvedMeasured = new { moisturePercent = 10.8, retainedPercent = 97 },
            arrivalMeasured = new { moisturePercent = 12.6, waterActivity = 0.58, retainedPercent = 96 },
            limits = new { waterActivityBelow = 0.70, screen = 16, leastRetainedPercent = 95 },
        });

        // ICO Resolution 420: 12.6 % is above 12.5 % (handbook quality.md, check value 7).
        Assert.Equal("short", reply.GetProperty("outcome").GetString());
        Assert.Equal("The arrival is short of what was agreed in moisture (12.6 %, limit 8 to 12.5 %).", reply.GetProperty("sentence").GetString());
        Assert.Equal([false, true, true], reply.GetProperty("limits").EnumerateArray().Select(limit => limit.GetProperty("passed").GetBoolean()));
    }

    [Fact]
    public async Task The_handbooks_weight_claim_with_its_arithmetic_and_days()
    {
        var reply = await PostAsync("weight-claim", new
        {
            shippedKg = 18975,
            landedKg = 18790,
            franchisePercent = 0.5,
            price = new { amount = 3.2165, currency = "USD", unit = "lb" },
            agreedKg = 18975,
            tolerancePercent = 3,
            moistureShippedPercent = 11.5,
            moistureLandedPercent = 10.8,
            deadlines = new[] { new { what = "Weighing", events = Discharge, days = 21 }, new { what = "Claim on quality", events = DischargeAndClearance, days = 15 } },
            happened = new { discharge = "2026-03-03", clearance = "2026-03-09" },
        });

        // Handbook, trade 8, example G and check values 36, 37, 65, 67, 68.
        Assert.Equal((185m, 0.975m, 94.875m, 90.125m), (Number(reply, "lossKg"), Number(reply, "lossPercent"), Number(reply, "franchiseKg"), Number(reply, "refundedKg")));
        Assert.Equal((639.09m, "USD"), (Number(reply.GetProperty("worth"), "amount"), reply.GetProperty("worth").GetProperty("currency").GetString()));
        Assert.True(reply.GetProperty("shippedAsAgreed").GetBoolean());
        Assert.Equal((18405.75m, 19544.25m), (Number(reply, "leastAgreedKg"), Number(reply, "mostAgreedKg")));
        Assert.Equal((0m, 0m), (Number(reply, "beyondAgreedKg"), Number(reply.GetProperty("beyondAgreedWorth"), "amount")));
        Assert.Equal(148.907m, Math.Round(Number(reply, "dryingKg"), 3));
        Assert.Equal(["2026-03-24", "2026-03-24"], reply.GetProperty("deadlines").EnumerateArray().Select(deadline => deadline.GetProperty("lastDay").GetString()));
    }

    [Theory]
    [InlineData("verdict", """{ "approved": [], "arrival": [{ "cupper": "A", "score": 84 }], "tolerance": 1 }""", "approved", HttpStatusCode.UnprocessableEntity)]
    [InlineData("verdict", """{ "approved": [null], "arrival": [{ "cupper": "A", "score": 84 }], "tolerance": 1 }""", "cupper", HttpStatusCode.UnprocessableEntity)]
    [InlineData("verdict", """{ "approved": [{ "cupper": "A", "score": 840 }], "arrival": [{ "cupper": "A", "score": 84 }], "tolerance": 1 }""", "score", HttpStatusCode.UnprocessableEntity)]
    [InlineData("verdict", """{ "approved": [{ "cupper": "A", "score": 84 }], "arrival": [{ "cupper": "A", "score": 84 }], "tolerance": -1 }""", "tolerance", HttpStatusCode.UnprocessableEntity)]
    [InlineData("verdict", """{ "approved": [{ "cupper": "A", "score": 84 }], "arrival": [{ "cupper": "A", "score": 84 }], "tolerance": 1, "inOneSession": true, "others": [null] }""", "others", HttpStatusCode.UnprocessableEntity)]
    [InlineData("verdict", """{ "approved": [{ "cupper": "A", "score": 84 }], "arrival": [{ "cupper": "A", "score": 84 }], "tolerance": 1, "arrivalMeasured": { "moisturePercent": 0 } }""", "moisture", HttpStatusCode.UnprocessableEntity)]
    [InlineData("weight-claim", """{ "shippedKg": 0, "landedKg": 1, "franchisePercent": 0.5, "price": { "amount": 3, "currency": "USD", "unit": "lb" } }""", "shipped", HttpStatusCode.UnprocessableEntity)]
    [InlineData("weight-claim", """{ "shippedKg": 100, "landedKg": 99, "franchisePercent": 0.5 }""", "price", HttpStatusCode.UnprocessableEntity)]
    [InlineData("weight-claim", """{ "shippedKg": 100, "landedKg": 99, "franchisePercent": 0.5, "price": { "amount": 3, "currency": "USD", "unit": "lb" }, "deadlines": [{ "what": "Weighing", "days": 3 }] }""", "events", HttpStatusCode.UnprocessableEntity)]
    [InlineData("weight-claim", """{ "shippedKg": "much", "landedKg": 99, "franchisePercent": 0.5 }""", "shippedKg", HttpStatusCode.BadRequest)]
    public async Task What_cannot_be_is_refused_with_its_field(string calculator, string body, string field, HttpStatusCode status)
    {
        var script = await house.ScriptAsync(Role.Viewer);

        var answer = await script.PostAsync(new Uri($"/api/arrivals/calculate/{calculator}", UriKind.Relative), new StringContent(body, null, "application/json"), Stop);

        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(field, await answer.Content.ReadAsStringAsync(Stop), StringComparison.OrdinalIgnoreCase);
    }

    private static IEnumerable<Sheet> Panel(decimal[] scores, string cupper = "Cupper") => scores.Select((score, at) => new Sheet($"{cupper} {at + 1}", score));

    private static decimal Number(JsonElement reply, string name) => reply.GetProperty(name).GetDecimal();

    private async Task<JsonElement> PostAsync(string calculator, object request)
    {
        var script = await house.ScriptAsync(Role.Viewer);
        var answer = await script.PostAsJsonAsync($"/api/arrivals/calculate/{calculator}", request, Stop);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }

    private sealed record Sheet(string Cupper, decimal Score);
}

using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Settings;

/// <summary>What pages of contracts, shipments, arrivals and due let a house say of itself, by a script.</summary>
public sealed class HouseHabitsApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/api/arrivals/habits", "tolerancePoints", 1.5, 11, "The tolerance lies between 0 and 10 points.")]
    [InlineData("/api/due/habits", "mailHour", 9, 24, "The hour lies between 0 and 23.")]
    public async Task Habits_are_read_changed_refused_out_of_range_and_not_overwritten_by_an_older_version(string address, string field, double right, double wrong, string sentence)
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        var first = await ReadAsync(script, address);

        var changed = await PutAsync(script, address, first, field, right, HttpStatusCode.OK);
        await PutAsync(script, address, changed, field, right + 0.5 > 9 ? 8 : 2, HttpStatusCode.OK);
        await PutAsync(script, address, changed, field, right, HttpStatusCode.Conflict);
        var refused = await PutAsync(script, address, await ReadAsync(script, address), field, wrong, HttpStatusCode.UnprocessableEntity);

        Assert.Equal((decimal)right, changed[field]!.GetValue<decimal>());
        Assert.Equal(sentence, refused["detail"]!.GetValue<string>());
        Assert.Equal(right + 0.5 > 9 ? 8m : 2m, (await ReadAsync(script, address))[field]!.GetValue<decimal>());
    }

    [Fact]
    public async Task A_standard_form_is_added_once_changed_and_put_away()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        var form = new { name = "House terms", edition = "2026", franchisePercent = 0.5, tolerancePercent = 3, qualityClaimDays = 28 };

        var added = await SendAsync(script, HttpMethod.Post, "/api/contracts/forms", form, HttpStatusCode.Created);
        var again = await SendAsync(script, HttpMethod.Post, "/api/contracts/forms", form, HttpStatusCode.UnprocessableEntity);
        var away = await SendAsync(script, HttpMethod.Put, $"/api/contracts/forms/{added!["id"]}", new { name = "House terms", edition = "2026", qualityClaimDays = 30, weighWithinDays = 15, weighFrom = "availability", isInUse = false, version = added["version"]!.GetValue<int>() }, HttpStatusCode.OK);

        Assert.Equal("There is such a form in this edition already: state another edition.", again!["detail"]!.GetValue<string>());
        Assert.Equal((30, false), (away!["qualityClaimDays"]!.GetValue<int>(), away["isInUse"]!.GetValue<bool>()));
        Assert.Equal((15, "availability"), (away["weighWithinDays"]!.GetValue<int>(), away["weighFrom"]!.GetValue<string>()));
        Assert.Contains("from availability", (await (await house.BrowserAsync(Role.Buyer)).ReadAsync("/Contracts/Forms")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Single((await ReadAsync(script, "/api/contracts/forms")).AsArray(), one => one!["name"]!.GetValue<string>() == "House terms");
    }

    [Fact]
    public async Task A_closing_day_is_added_once_and_taken_away_and_the_counts_are_the_buyers()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        var day = new { market = "arabica", on = "2031-06-11", name = "Snow" }; // a Wednesday

        var added = await SendAsync(script, HttpMethod.Post, "/api/contracts/calendar/closing-days", day, HttpStatusCode.Created);
        var again = await SendAsync(script, HttpMethod.Post, "/api/contracts/calendar/closing-days", day, HttpStatusCode.UnprocessableEntity);
        var with = await ReadAsync(script, "/api/contracts/calendar");
        await SendAsync(script, HttpMethod.Delete, $"/api/contracts/calendar/closing-days/{added!["id"]}", null, HttpStatusCode.NoContent);
        var days = with["days"]!.DeepClone();
        days["marginDays"] = 5;
        var counted = await SendAsync(script, HttpMethod.Put, "/api/contracts/calendar", days, HttpStatusCode.OK);

        Assert.Equal("This closing day is in the table already.", again!["detail"]!.GetValue<string>());
        Assert.Contains(with["closingDays"]!.AsArray(), one => one!["name"]!.GetValue<string>() == "Snow");
        Assert.DoesNotContain(counted!["closingDays"]!.AsArray(), one => one!["name"]!.GetValue<string>() == "Snow");
        Assert.Equal(5, counted["days"]!["marginDays"]!.GetValue<int>());
    }

    [Fact]
    public async Task A_document_rule_is_added_refused_for_a_country_that_is_none_and_put_away()
    {
        using var script = await house.ScriptAsync(Role.Buyer);

        var refused = await SendAsync(script, HttpMethod.Post, "/api/shipments/document-rules", new { name = "Fumigation record", position = 900, origins = "BRA" }, HttpStatusCode.UnprocessableEntity);
        var added = await SendAsync(script, HttpMethod.Post, "/api/shipments/document-rules", new { name = "Fumigation record", position = 900, origins = "BR" }, HttpStatusCode.Created);
        await SendAsync(script, HttpMethod.Put, $"/api/shipments/document-rules/{added!["id"]}", new { name = "Fumigation record", position = 900, origins = "BR", isInUse = false, version = added["version"]!.GetValue<int>() }, HttpStatusCode.OK);

        Assert.Contains("is no country code", refused!["detail"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.False(Assert.Single((await ReadAsync(script, "/api/shipments/document-rules")).AsArray(), one => one!["name"]!.GetValue<string>() == "Fumigation record")!["isInUse"]!.GetValue<bool>());
    }

    [Fact]
    public async Task A_calendar_address_is_made_told_once_and_works_until_it_is_revoked()
    {
        using var script = await house.ScriptAsync(Role.Cupper);
        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync(new Uri("/api/myself/calendar", UriKind.Relative), Stop)).StatusCode);

        var first = (await SendAsync(script, HttpMethod.Post, "/api/myself/calendar", null, HttpStatusCode.Created))!["address"]!.GetValue<string>();
        var second = (await SendAsync(script, HttpMethod.Post, "/api/myself/calendar", null, HttpStatusCode.Created))!["address"]!.GetValue<string>();
        using var program = house.CreateClient();
        var (old, read) = (await program.GetAsync(new Uri(first), Stop), await program.GetAsync(new Uri(second), Stop));
        var told = (await ReadAsync(script, "/api/myself/calendar")).ToJsonString();
        await SendAsync(script, HttpMethod.Delete, "/api/myself/calendar", null, HttpStatusCode.NoContent);

        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.OK, HttpStatusCode.NotFound), (old.StatusCode, read.StatusCode, (await program.GetAsync(new Uri(second), Stop)).StatusCode));
        Assert.DoesNotContain(second.Split('/')[^1], told, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync(new Uri("/api/myself/calendar", UriKind.Relative), Stop)).StatusCode);
    }

    private static async Task<JsonNode> ReadAsync(HttpClient script, string address) => JsonNode.Parse(await script.GetStringAsync(new Uri(address, UriKind.Relative), Stop))!;

    private static async Task<JsonNode> PutAsync(HttpClient script, string address, JsonNode before, string field, double value, HttpStatusCode expected)
    {
        var body = before.DeepClone();
        body[field] = JsonValue.Create((decimal)value);
        return (await SendAsync(script, HttpMethod.Put, address, body, expected))!;
    }

    private static async Task<JsonNode?> SendAsync(HttpClient script, HttpMethod method, string address, object? body, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(method, new Uri(address, UriKind.Relative)) { Content = body is null ? null : JsonContent.Create(body) };
        var answer = await script.SendAsync(request, Stop);
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(answer.StatusCode == expected, $"{(int)answer.StatusCode} {text}");
        return text.Length == 0 ? null : JsonNode.Parse(text);
    }
}

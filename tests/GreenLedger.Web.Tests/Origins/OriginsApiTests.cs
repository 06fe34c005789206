using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Origins;

/// <summary>Producers, countries, methods and their calendar, written by scripts by the rules of the pages.</summary>
public sealed class OriginsApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_producer_is_added_read_and_changed()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        using var viewer = await house.ScriptAsync(Role.Viewer);

        var added = await script.PostAsJsonAsync("/api/origins/producers", new { name = "Finca Clara", kind = "farm", countryCode = "CO", altitudeFromM = 1500 }, Stop);
        var refused = await viewer.PostAsJsonAsync("/api/origins/producers", new { name = "Finca Otra", kind = "farm" }, Stop);
        var one = await added.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var address = added.Headers.Location!.OriginalString;
        var version = (await script.GetFromJsonAsync<JsonElement>(address, Stop)).GetProperty("version").GetInt32();
        var high = await script.PutAsJsonAsync(address, new { name = "Finca Clara", kind = "farm", countryCode = "CO", altitudeFromM = 5000, version }, Stop);
        var changed = await script.PutAsJsonAsync(address, new { name = "Finca Clara Alta", kind = "farm", countryCode = "CO", region = "Huila", altitudeFromM = 1500, altitudeToM = 1800, version }, Stop);
        var late = await script.PutAsJsonAsync(address, new { name = "Finca Tarde", kind = "farm", version }, Stop);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Forbidden), (added.StatusCode, refused.StatusCode));
        Assert.Equal(("Finca Clara", 1500, 1500), (one.GetProperty("name").GetString(), one.GetProperty("altitudeFromM").GetInt32(), one.GetProperty("altitudeToM").GetInt32()));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK, HttpStatusCode.Conflict), (high.StatusCode, changed.StatusCode, late.StatusCode));
        Assert.Equal("Finca Clara Alta", (await script.GetFromJsonAsync<JsonElement>(address, Stop)).GetProperty("name").GetString());
        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync(new Uri($"/api/origins/producers/{Guid.Empty}", UriKind.Relative), Stop)).StatusCode);
    }

    [Fact]
    public async Task A_process_method_is_added_and_changed_and_one_word_names_one_method()
    {
        using var script = await house.ScriptAsync(Role.Buyer);

        var added = await script.PostAsJsonAsync("/api/origins/process-methods", new { name = "Cold washed", family = "washed", synonyms = new[] { "lavado frio" } }, Stop);
        var one = await added.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var twice = await script.PostAsJsonAsync("/api/origins/process-methods", new { name = "Another", family = "washed", synonyms = new[] { "Lavado Frío" } }, Stop);
        var changed = await script.PutAsJsonAsync($"/api/origins/process-methods/{one.GetProperty("id").GetString()}", new { name = "cold washed", family = "washed", synonyms = new[] { "lavado helado" }, version = one.GetProperty("version").GetInt32() }, Stop);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK), (added.StatusCode, twice.StatusCode, changed.StatusCode));
        Assert.Equal("lavado helado", (await changed.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("synonyms")[0].GetString());
    }

    /// <summary>Handbook, trade 5.2: Colombia's main harvest is October to February; the habits of the house ship 3 months after its first and 4 after its last month (from memory, no source).</summary>
    [Fact]
    public async Task The_calendar_follows_the_harvest_that_is_stated()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        await script.PostAsJsonAsync("/api/origins/countries", new { code = "ZZ", name = "Nowhere", cropYearStartMonth = 10, harvestFromMonth = 10, harvestToMonth = 2 }, Stop);
        var twice = await script.PostAsJsonAsync("/api/origins/countries", new { code = "zz", name = "Nowhere again" }, Stop);
        Assert.Equal(("1 2 10 11 12", "1 2 3 4 5 6"), await MonthsAsync(script));

        var version = (await script.GetFromJsonAsync<JsonElement>("/api/origins/countries", Stop)).EnumerateArray().Single(one => one.GetProperty("code").GetString() == "ZZ").GetProperty("version").GetInt32();
        var changed = await script.PutAsJsonAsync("/api/origins/countries/zz/harvest", new { cropYearStartMonth = 4, harvestFromMonth = 5, harvestToMonth = 5, version }, Stop);
        var strange = await script.PutAsJsonAsync("/api/origins/countries/zz/harvest", new { harvestFromMonth = 13, version = version + 1 }, Stop);
        var described = await script.PutAsJsonAsync("/api/origins/countries/ZZ", new { name = "Nowhere", harvestFromMonth = 5, harvestToMonth = 5, usualBagKg = 0, version = version + 1 }, Stop);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK, HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (twice.StatusCode, changed.StatusCode, strange.StatusCode, described.StatusCode));
        Assert.Equal(("5", "8 9"), await MonthsAsync(script));
    }

    private static async Task<(string Harvest, string Ships)> MonthsAsync(HttpClient script)
    {
        var months = (await script.GetFromJsonAsync<JsonElement>("/api/stock/calendar", Stop)).EnumerateArray().Single(one => one.GetProperty("code").GetString() == "ZZ").GetProperty("months").EnumerateArray().ToList();
        Assert.Equal(12, months.Count);
        string Of(string what) => string.Join(' ', months.Where(month => month.GetProperty(what).GetBoolean()).Select(month => month.GetProperty("month").GetInt32()).Order());
        return (Of("isHarvest"), Of("ships"));
    }
}
